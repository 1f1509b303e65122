using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Days that are compared two by two: the lowest temperature of each and its humid hours.</summary>
internal static class TwoDayRules
{
    /// <summary>What a rule says of two days in a row.</summary>
    /// <param name="input">The record.</param>
    /// <param name="needs">Temperature and humidity.</param>
    /// <param name="windows">The days.</param>
    /// <param name="isStrict">Whether humidity must be above 90 %, not at it.</param>
    /// <param name="valueOf">The value, from the day before and the day itself.</param>
    public static ImmutableArray<ModelDay> Of(ModelInput input, ImmutableArray<Column> needs, ImmutableArray<DayWindow> windows, bool isStrict, Func<Mild, Mild, double> valueOf)
    {
        var humid = ConditionHours.Of(input, double.NegativeInfinity, 90, isStrict);
        var ledger = new HourLedger(input, needs);
        var days = ImmutableArray.CreateBuilder<ModelDay>(windows.Length);
        Mild before = default;
        foreach (var window in windows)
        {
            var today = new Mild(Lowest(input.Temperatures, window), ConditionHours.CountIn(humid, window));
            days.Add(ledger.Gap(window, StationRecord.HoursOfDay) is { } gap
                ? new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] }
                : new ModelDay(window.Day, valueOf(before, today), ledger.Of(window)));
            before = today;
        }

        return days.ToImmutable();
    }

    private static double Lowest(ReadOnlySpan<double> temperatures, DayWindow window)
    {
        double lowest = double.PositiveInfinity;
        for (int hour = Math.Max(window.Start, 0); hour < Math.Min(window.End, temperatures.Length); hour++) lowest = Math.Min(lowest, temperatures[hour]);
        return lowest;
    }
}

/// <summary>A day's lowest temperature, °C, and its humid hours.</summary>
internal readonly record struct Mild(double LowestCelsius, int HumidHours);
