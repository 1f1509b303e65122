using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>
/// What one station measured, in SI units, hour after hour in the station's standard time. The hours stand in whole days of 24; an hour's place is the clock
/// hour that its reading's time falls in.
/// </summary>
public sealed record StationRecord
{
    /// <summary>Hours of a day.</summary>
    public const int HoursOfDay = 24;

    /// <summary>What the station is called.</summary>
    public required string Station { get; init; }

    /// <summary>The time zone as it was named, such as <c>UTC</c>, <c>Europe/Dublin</c> or <c>+05:30</c>.</summary>
    public string Zone { get; init; } = "UTC";

    /// <summary>Minutes that the station's standard time is ahead of UTC.</summary>
    public int OffsetMinutes { get; init; }

    /// <summary>Degrees north; null where it was not said.</summary>
    public double? Latitude { get; init; }

    /// <summary>Degrees east; null where it was not said.</summary>
    public double? Longitude { get; init; }

    /// <summary>The clock hour of a day's first row: 0, or 1 in files whose days run from 1 to 24.</summary>
    public int FirstClockHour { get; init; }

    /// <summary>The days, in the record's order.</summary>
    public required ImmutableArray<DateOnly> Days { get; init; }

    /// <summary>The readings, 24 a day; without columns in a daily record.</summary>
    public required HourTable Hours { get; init; }

    /// <summary>A day's figures where the record is a daily one; null otherwise.</summary>
    public DailyTable? Daily { get; init; }

    /// <summary>The place of the first hour with a row.</summary>
    public int First { get; init; }

    /// <summary>The place of the last hour with a row.</summary>
    public int Last { get; init; }

    /// <summary>Rows that were read.</summary>
    public long Rows { get; init; }

    /// <summary>What is odd about the readings.</summary>
    public ImmutableArray<Flag> Flags { get; init; } = [];

    /// <summary>When a reading was, in the station's standard time.</summary>
    /// <param name="hour">The place of the hour.</param>
    public DateTime TimeOf(int hour) => Days[hour / HoursOfDay].ToDateTime(TimeOnly.MinValue).AddHours((hour % HoursOfDay) + FirstClockHour);
}

/// <summary>The figures of whole days, one a day of the record; <see cref="double.NaN"/> is missing.</summary>
/// <param name="LowestCelsius">The day's lowest temperature, °C.</param>
/// <param name="HighestCelsius">The day's highest temperature, °C.</param>
/// <param name="RainMillimetres">The day's rain; empty where the station does not measure it.</param>
public sealed record DailyTable(ImmutableArray<double> LowestCelsius, ImmutableArray<double> HighestCelsius, ImmutableArray<double> RainMillimetres);
