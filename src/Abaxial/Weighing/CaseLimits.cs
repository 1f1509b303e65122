namespace Abaxial.Weighing;

/// <summary>How much a case file may hold.</summary>
public static class CaseLimits
{
    /// <summary>Bytes of one case: 1 MiB.</summary>
    public const int Bytes = 1 << 20;

    /// <summary>Looks of one case.</summary>
    public const int Looks = 1_000;

    /// <summary>Levels of objects and arrays within each other; the case itself is the first.</summary>
    public const int Depth = 32;

    /// <summary>Problems that one refusal names.</summary>
    public const int Problems = 50;

    /// <summary>Hours that a look may have stood in a moist chamber.</summary>
    public const double ChamberHours = 1_000;

    /// <summary>What is said of a case that holds too much, whoever finds it out.</summary>
    public static CaseReading TooLong { get; } = CaseReading.Refuse([new CaseProblem("", $"more than {Bytes} bytes", [$"at most {Bytes} bytes"])]);
}
