using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>
/// Looks for readings that cannot be, or hardly can be. Every finding is kept as a flag. Values that cannot be are not used; the others stay as they are.
/// </summary>
public static class QualityControl
{
    /// <summary>The record with what was found, and with impossible values missing.</summary>
    /// <param name="record">An hourly record; a daily one comes back with impossible values missing and no flags but those.</param>
    public static StationRecord Check(StationRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var flags = record.Flags.ToBuilder();
        if (record.Daily is { } daily) return record with { Daily = DailyRange(daily, flags), Flags = flags.ToImmutable() };

        var hours = record.Hours;
        foreach (var column in Columns.All.Where(hours.Has)) hours = Range(hours, column, flags);
        Steps(hours, flags);
        Persistence(hours, flags);
        Consistency(hours, flags);
        DryInRain(hours, flags);
        return record with { Hours = hours, Flags = flags.ToImmutable() };
    }

    private static HourTable Range(HourTable hours, Column column, ImmutableArray<Flag>.Builder flags)
    {
        var range = QualityLimits.Of(column);
        double[]? changed = null;
        var values = hours.Of(column);
        for (int hour = 0; hour < values.Length; hour++)
        {
            double value = values[hour];
            if (double.IsNaN(value) || (value >= range.Least && value <= range.Most)) continue;
            changed ??= values.ToArray();
            bool isPlay = column == Column.Humidity && value > range.Most && value <= QualityLimits.HumidityPlay;
            changed[hour] = isPlay ? range.Most : double.NaN;
            flags.Add(new Flag(isPlay ? FlagKind.Capped : FlagKind.Range, column, hour, value));
        }

        return changed is null ? hours : hours.With(column, changed);
    }

    private static DailyTable DailyRange(DailyTable daily, ImmutableArray<Flag>.Builder flags)
    {
        var low = daily.LowestCelsius.ToArray();
        var high = daily.HighestCelsius.ToArray();
        var rain = daily.RainMillimetres.ToArray();
        Clear(low, QualityLimits.Of(Column.Temperature), Column.Temperature, flags);
        Clear(high, QualityLimits.Of(Column.Temperature), Column.Temperature, flags);
        Clear(rain, new QualityLimits.Range(0, 2 * QualityLimits.Of(Column.Rain).Most), Column.Rain, flags);
        for (int day = 0; day < low.Length; day++)
        {
            if (!(low[day] > high[day])) continue;
            flags.Add(new Flag(FlagKind.Consistency, Column.Temperature, day * StationRecord.HoursOfDay, low[day]));
            low[day] = high[day] = double.NaN; // Which of the two is wrong cannot be told.
        }

        return new DailyTable([.. low], [.. high], [.. rain]);
    }

    private static void Clear(double[] days, QualityLimits.Range range, Column column, ImmutableArray<Flag>.Builder flags)
    {
        for (int day = 0; day < days.Length; day++)
        {
            if (!(days[day] < range.Least) && !(days[day] > range.Most)) continue;
            flags.Add(new Flag(FlagKind.Range, column, day * StationRecord.HoursOfDay, days[day]));
            days[day] = double.NaN;
        }
    }

    private static void Steps(HourTable hours, ImmutableArray<Flag>.Builder flags)
    {
        Steps(hours, Column.Temperature, QualityLimits.TemperatureSteps, flags);
        Steps(hours, Column.DewPoint, QualityLimits.DewPointSteps, flags);
        Steps(hours, Column.Humidity, [(1, QualityLimits.HumidityStep)], flags);
    }

    /// <summary>Each value is held against the one before it in the record, at the limit for the hours between them.</summary>
    private static void Steps(HourTable hours, Column column, ImmutableArray<(int Hours, double Most)> limits, ImmutableArray<Flag>.Builder flags)
    {
        var values = hours.Of(column);
        int before = -1;
        for (int hour = 0; hour < values.Length; hour++)
        {
            if (double.IsNaN(values[hour])) continue;
            if (before >= 0 && LimitFor(hour - before, limits) is { } most && Exact.Rounded(Math.Abs(values[hour] - values[before])) > most)
            {
                flags.Add(new Flag(FlagKind.Step, column, hour, values[hour]));
            }

            before = hour;
        }
    }

    private static double? LimitFor(int between, ImmutableArray<(int Hours, double Most)> limits)
    {
        foreach (var (hours, most) in limits)
        {
            if (between <= hours) return most;
        }

        return null;
    }

    private static void Persistence(HourTable hours, ImmutableArray<Flag>.Builder flags)
    {
        Still(hours, Column.Temperature, (least, most) => most - least <= QualityLimits.StillCelsius, flags);
        Still(hours, Column.DewPoint, (least, most) => most - least <= QualityLimits.StillCelsius, flags);
        Still(hours, Column.Humidity, (least, most) => most < QualityLimits.NearSaturation && most - least < QualityLimits.StillHumidity, flags);
        Still(hours, Column.Wind, (least, most) => least > QualityLimits.Calm && most - least < QualityLimits.StillWind, flags);
    }

    /// <summary>Flags the hour that closes so many hours without enough change; one flag a stretch.</summary>
    private static void Still(HourTable hours, Column column, Func<double, double, bool> isStill, ImmutableArray<Flag>.Builder flags)
    {
        var values = hours.Of(column);
        bool wasStill = false;
        for (int last = QualityLimits.StillHours - 1; last < values.Length; last++)
        {
            double least = double.PositiveInfinity, most = double.NegativeInfinity;
            foreach (double value in values.Slice(last - QualityLimits.StillHours + 1, QualityLimits.StillHours))
            {
                least = Math.Min(least, value); // A missing value makes both NaN, and no comparison holds.
                most = Math.Max(most, value);
            }

            bool still = isStill(Exact.Rounded(least), Exact.Rounded(most));
            if (still && !wasStill) flags.Add(new Flag(FlagKind.Persistence, column, last, values[last]));
            wasStill = still;
        }
    }

    private static void Consistency(HourTable hours, ImmutableArray<Flag>.Builder flags)
    {
        var temperatures = hours.Of(Column.Temperature);
        var dewPoints = hours.Of(Column.DewPoint);
        var humidities = hours.Of(Column.Humidity);
        if (temperatures.IsEmpty || dewPoints.IsEmpty) return;
        for (int hour = 0; hour < temperatures.Length; hour++)
        {
            if (dewPoints[hour] > temperatures[hour])
            {
                flags.Add(new Flag(FlagKind.Consistency, Column.DewPoint, hour, dewPoints[hour]));
                continue;
            }

            if (humidities.IsEmpty || double.IsNaN(temperatures[hour]) || double.IsNaN(dewPoints[hour])) continue;
            double expected = Psychrometrics.HumidityPercent(temperatures[hour], dewPoints[hour]);
            if (Math.Abs(humidities[hour] - expected) > QualityLimits.HumidityDisagreement) flags.Add(new Flag(FlagKind.Consistency, Column.Humidity, hour, humidities[hour]));
        }
    }

    /// <summary>Every hour of a rain of three hours or more through which humidity stays under 95 % is flagged.</summary>
    private static void DryInRain(HourTable hours, ImmutableArray<Flag>.Builder flags)
    {
        var rains = hours.Of(Column.Rain);
        var humidities = hours.Of(Column.Humidity);
        if (rains.IsEmpty || humidities.IsEmpty) return;
        for (int start = 0; start < rains.Length;)
        {
            if (!(rains[start] > 0))
            {
                start++;
                continue;
            }

            int end = start;
            bool isDry = true;
            for (; end < rains.Length && rains[end] > 0; end++) isDry &= humidities[end] < QualityLimits.NearSaturation;
            for (int hour = start; isDry && end - start >= QualityLimits.RainHours && hour < end; hour++)
            {
                flags.Add(new Flag(FlagKind.DryInRain, Column.Humidity, hour, humidities[hour]));
            }

            start = end;
        }
    }
}
