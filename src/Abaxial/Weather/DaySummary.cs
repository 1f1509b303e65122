using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>The figures of one day. What cannot be told, because an hour is missing, is NaN.</summary>
/// <param name="LowestCelsius">The lowest temperature, °C.</param>
/// <param name="HighestCelsius">The highest temperature, °C.</param>
/// <param name="MeanCelsius">The mean of the hours; in daily records half of lowest and highest together.</param>
/// <param name="WaterMillimetres">Rain, with irrigation where it is recorded, mm.</param>
/// <param name="RainMillimetres">Rain alone, mm.</param>
public readonly record struct DaySummary(double LowestCelsius, double HighestCelsius, double MeanCelsius, double WaterMillimetres, double RainMillimetres)
{
    /// <summary>The figures of each window, from the hours or from the daily record.</summary>
    public static ImmutableArray<DaySummary> Of(StationRecord record, ImmutableArray<DayWindow> windows)
    {
        ArgumentNullException.ThrowIfNull(record);
        return record.Daily is { } daily
            ? [.. windows.Select(window => OfDay(daily, window.Start / StationRecord.HoursOfDay))]
            : [.. windows.Select(window => OfHours(record.Hours, window))];
    }

    private static DaySummary OfDay(DailyTable daily, int day)
    {
        double low = daily.LowestCelsius[day], high = daily.HighestCelsius[day];
        double rain = daily.RainMillimetres.IsEmpty ? double.NaN : daily.RainMillimetres[day];
        return new DaySummary(low, high, Exact.Rounded((low + high) / 2), rain, rain);
    }

    private static DaySummary OfHours(HourTable hours, DayWindow window)
    {
        if (window.Start < 0 || window.End > hours.Count) return new DaySummary(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        double low = double.PositiveInfinity, high = double.NegativeInfinity, sum = 0;
        var temperatures = hours.Has(Column.Temperature) ? hours.Of(Column.Temperature)[window.Start..window.End] : [double.NaN];
        foreach (double celsius in temperatures)
        {
            low = Math.Min(low, celsius);
            high = Math.Max(high, celsius);
            sum += celsius;
        }

        double rain = Sum(hours, Column.Rain, window);
        double irrigation = 0;
        if (hours.Has(Column.Irrigation))
        {
            foreach (double water in hours.Of(Column.Irrigation)[window.Start..window.End]) irrigation += double.IsNaN(water) ? 0 : water;
        }

        return new DaySummary(low, high, Exact.Mean(sum, temperatures.Length), Exact.Rounded(rain + irrigation), rain);
    }

    private static double Sum(HourTable hours, Column column, DayWindow window)
    {
        if (!hours.Has(column)) return double.NaN;
        double sum = 0;
        foreach (double value in hours.Of(column)[window.Start..window.End]) sum += value;
        return Exact.Rounded(sum);
    }
}
