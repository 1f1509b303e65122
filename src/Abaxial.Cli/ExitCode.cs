namespace Abaxial.Cli;

/// <summary>What the program tells the one who called it.</summary>
internal static class ExitCode
{
    /// <summary>All was done; for <c>weigh</c>: every case was answered.</summary>
    public const int Done = 0;

    /// <summary>A fault of the program.</summary>
    public const int Fault = 1;

    /// <summary>Some cases were refused; for the knowledge commands: problems, or trials that fail.</summary>
    public const int SomeRefused = 2;

    /// <summary>Usage, or a file that cannot be read.</summary>
    public const int Usage = 64;

    /// <summary>The clinic cannot listen where it was told to.</summary>
    public const int Unavailable = 69;
}
