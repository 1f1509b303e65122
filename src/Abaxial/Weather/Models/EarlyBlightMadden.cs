using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>
/// Early blight of tomato (Madden, Pennypacker and MacNab 1978): severity of a day from its wet hours and their temperature. The paper's second rating waits for
/// its table: the cells could not be verified.
/// </summary>
public sealed class EarlyBlightMadden : IWeatherModel
{
    /// <summary>A class of temperature in whole °C, and the wet hours from which 1, 2, 3 and 4 are given.</summary>
    /// <param name="FromCelsius">The lowest whole degree.</param>
    /// <param name="ToCelsius">The highest.</param>
    /// <param name="Hours">Hours from which each value is given.</param>
    public sealed record Row(int FromCelsius, int ToCelsius, ImmutableArray<int> Hours);

    /// <summary>The table, from memory; below 13 °C and above 29 °C the severity is 0.</summary>
    public static ImmutableArray<Row> Table { get; } =
    [
        new(13, 17, [7, 16, 21]),
        new(18, 20, [4, 9, 16, 23]),
        new(21, 25, [3, 6, 13, 21]),
        new(26, 29, [4, 9, 16, 23]),
    ];

    public string Id => "early-blight-madden";

    public ModelCard Card { get; } = new(
        "Madden, Pennypacker and MacNab 1978, Phytopathology 68:1354-1358",
        Confidence.Memory,
        [new Threshold("early-blight-start", ThresholdOf.Sum, 35, Confidence.Restated)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Wetness];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>The severity of a day.</summary>
    /// <param name="wetHours">Wet hours.</param>
    /// <param name="celsius">Their temperature, °C; rounded to whole degrees, halves up.</param>
    /// <returns>0 to 4.</returns>
    public static int Severity(int wetHours, double celsius)
    {
        double whole = Exact.HalfUp(celsius);
        foreach (var row in Table)
        {
            if (whole >= row.FromCelsius && whole <= row.ToCelsius) return row.Hours.Count(hours => wetHours >= hours);
        }

        return 0;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        bool isMidrange = input.Settings.Is("early-blight-madden.temperature", "midrange");
        return [.. input.Windows.Select(window =>
        {
            if (ledger.Gap(window) is { } gap) return new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] };
            var (hours, mean) = WetHours.In(input.Temperatures, input.Wetness, window);
            double celsius = isMidrange ? Midrange(input.Temperatures, input.Wetness, window) : mean;
            return new ModelDay(window.Day, hours == 0 ? 0 : Severity(hours, celsius), ledger.Of(window));
        })];
    }

    /// <summary>Half of the lowest and the highest temperature of the wet hours together: the paper measured these two.</summary>
    private static double Midrange(ReadOnlySpan<double> temperatures, ReadOnlySpan<HourState> wet, DayWindow window)
    {
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (int hour = window.Start; hour < window.End; hour++)
        {
            if (wet[hour] != HourState.Yes) continue;
            lowest = Math.Min(lowest, temperatures[hour]);
            highest = Math.Max(highest, temperatures[hour]);
        }

        return Exact.Rounded((lowest + highest) / 2);
    }
}
