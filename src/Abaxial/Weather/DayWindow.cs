using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>Twenty-four hours that a model calls a day.</summary>
/// <param name="Start">The place of its first hour; below zero where the day began before the record's first day.</param>
/// <param name="Day">The date that it bears.</param>
public readonly record struct DayWindow(int Start, DateOnly Day)
{
    /// <summary>The place after its last hour.</summary>
    public int End => Start + StationRecord.HoursOfDay;

    /// <summary>The days that start at a clock hour and bear the date of their start.</summary>
    /// <param name="record">The record; only days with an hour between its first and last row are given.</param>
    /// <param name="clockHour">0 to 23, in the station's standard time.</param>
    public static ImmutableArray<DayWindow> StartingAt(StationRecord record, int clockHour)
    {
        ArgumentNullException.ThrowIfNull(record);

        // A day that starts at 0 is the day that the record prints, also where its rows run from 1 to 24.
        int shift = clockHour == 0 ? 0 : clockHour - record.FirstClockHour;
        return Of(record, shift, isNamedByEnd: false);
    }

    /// <summary>The days that start at a clock hour and bear the date of their end.</summary>
    /// <inheritdoc cref="StartingAt"/>
    public static ImmutableArray<DayWindow> EndingBefore(StationRecord record, int clockHour)
    {
        ArgumentNullException.ThrowIfNull(record);
        int shift = (clockHour - record.FirstClockHour + StationRecord.HoursOfDay) % StationRecord.HoursOfDay;
        return Of(record, shift, isNamedByEnd: true);
    }

    /// <summary>A day whose date is not among the record's is never whole; it is left out.</summary>
    private static ImmutableArray<DayWindow> Of(StationRecord record, int shift, bool isNamedByEnd)
    {
        var windows = ImmutableArray.CreateBuilder<DayWindow>(record.Days.Length + 1);
        int named = isNamedByEnd && shift > 0 ? 1 : 0;
        for (int day = -1; day < record.Days.Length; day++)
        {
            int start = (day * StationRecord.HoursOfDay) + shift;
            bool hasRows = start <= record.Last && start + StationRecord.HoursOfDay > record.First;
            if (hasRows && day + named >= 0 && day + named < record.Days.Length) windows.Add(new DayWindow(start, record.Days[day + named]));
        }

        return windows.ToImmutable();
    }
}
