namespace Abaxial.Weather;

/// <summary>What can be odd about a reading.</summary>
public enum FlagKind
{
    /// <summary>Outside what can be; the value is not used.</summary>
    Range,

    /// <summary>Humidity a little above 100 %; read as 100.</summary>
    Capped,

    /// <summary>A greater change than weather makes; the value is used.</summary>
    Step,

    /// <summary>The value stands still for too long; it is used.</summary>
    Persistence,

    /// <summary>Two values of one hour contradict each other; they are used.</summary>
    Consistency,

    /// <summary>Humidity stays low through hours of rain: the sensor is suspect and makes false safety; the value is used.</summary>
    DryInRain,

    /// <summary>Two readings of one hour: the last in the file counts.</summary>
    Duplicate,
}

/// <summary>Something odd about one reading.</summary>
/// <param name="Kind">What.</param>
/// <param name="Column">The column; null where it is the whole row.</param>
/// <param name="Hour">The place of the hour.</param>
/// <param name="Value">The value as it was read; NaN where it is the whole row.</param>
public readonly record struct Flag(FlagKind Kind, Column? Column, int Hour, double Value);

/// <summary>The words of the flags.</summary>
public static class FlagWords
{
    /// <summary>The word of a kind of flag, as answers write it.</summary>
    public static string Word(this FlagKind kind) => kind switch
    {
        FlagKind.Range => "range",
        FlagKind.Capped => "capped",
        FlagKind.Step => "step",
        FlagKind.Persistence => "persistence",
        FlagKind.Consistency => "consistency",
        FlagKind.DryInRain => "dry-in-rain",
        _ => "duplicate",
    };
}
