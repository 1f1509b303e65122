using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Priors;

/// <summary>Days of infection among the days before a trouble was noticed: a day's wet hours over the hours that its temperatures need, at most one a day.</summary>
/// <param name="Low">With every hour that cannot be told as dry.</param>
/// <param name="High">With every hour that cannot be told as wet at the best temperature; so also where the humidity sensor is suspect, as it makes false safety.</param>
/// <param name="Measured">Hours with every value that was read, none of them filled in.</param>
/// <param name="Suspect">Hours that were called dry by a humidity that stayed low through rain.</param>
/// <param name="Hours">All hours of the days.</param>
public readonly record struct InfectionDays(double Low, double High, int Measured, int Suspect, int Hours)
{
    /// <summary>Days that are looked back on, the one on which the trouble was noticed among them.</summary>
    public const int Days = 21;

    /// <summary>Counts the days of one response.</summary>
    /// <param name="input">The record and the settings.</param>
    /// <param name="noticed">The last day.</param>
    /// <param name="response">How infection answers to wetness and temperature.</param>
    public static InfectionDays Of(ModelInput input, DateOnly noticed, InfectionResponse response)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(response);
        ReadOnlySpan<HourState> wet = response.WetBy == WetBy.Humidity ? ConditionHours.Of(input, double.NegativeInfinity, InfectionResponse.HumidPercent) : input.Wetness;
        var temperatures = input.Temperatures;
        var windows = input.Windows.Where(window => window.Day > noticed.AddDays(-Days) && window.Day <= noticed).ToImmutableArray();
        var suspect = input.Record.Flags.Where(flag => flag.Kind == FlagKind.DryInRain).Select(flag => flag.Hour).ToHashSet();
        double low = 0, high = Days - windows.Length;
        int measured = 0, doubted = 0;
        foreach (var window in windows)
        {
            double told = 0, open = 0;
            for (int hour = window.Start; hour < window.End; hour++)
            {
                bool isIn = hour >= 0 && hour < temperatures.Length;
                var state = isIn ? wet[hour] : HourState.Unknown;
                double celsius = isIn ? temperatures[hour] : double.NaN;
                if (state == HourState.Yes && !double.IsNaN(celsius)) told += 1 / response.HoursNeeded(celsius);
                else if (state != HourState.No || suspect.Contains(hour)) open += 1 / response.LeastHours;
                if (state == HourState.No && suspect.Contains(hour)) doubted++;
                if (isIn && state != HourState.Unknown && !double.IsNaN(celsius) && !IsFilled(input.Record.Hours, hour)) measured++;
            }

            low += Math.Min(1, Exact.Rounded(told));
            high += Math.Min(1, Exact.Rounded(told + open));
        }

        return new InfectionDays(Exact.Rounded(low), Exact.Rounded(high), measured, doubted, Days * StationRecord.HoursOfDay);
    }

    private static bool IsFilled(HourTable hours, int hour) => IsEstimate(hours.EstimatedOf(Column.Temperature), hour) || IsEstimate(hours.EstimatedOf(Column.Humidity), hour);

    private static bool IsEstimate(ReadOnlySpan<bool> estimated, int hour) => !estimated.IsEmpty && estimated[hour];
}
