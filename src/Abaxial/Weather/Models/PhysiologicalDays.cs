using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Physiological days of potato (Sands, Hackett and Nix 1979), 0 to 10 a day.</summary>
public sealed class PhysiologicalDays : IWeatherModel
{
    public string Id => "physiological-days";

    public ModelCard Card { get; } = new(
        "Sands, Hackett and Nix 1979, Field Crops Research 2:309-331",
        Confidence.Memory,
        [new Threshold("early-blight-spores", ThresholdOf.Sum, 300, Confidence.Restated)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature];

    public bool ReadsDaily => true;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>P-days of a day.</summary>
    /// <param name="lowestCelsius">The day's lowest temperature, °C.</param>
    /// <param name="highestCelsius">The day's highest temperature, °C.</param>
    /// <param name="atFahrenheitPoints">Whether the cardinal points are 45, 70 and 86 °F; otherwise 7, 21 and 30 °C.</param>
    public static double Of(double lowestCelsius, double highestCelsius, bool atFahrenheitPoints = false)
    {
        double low = lowestCelsius, high = highestCelsius;
        return ((5 * Growth(low, atFahrenheitPoints))
            + (8 * Growth(((2 * low) + high) / 3, atFahrenheitPoints))
            + (8 * Growth((low + (2 * high)) / 3, atFahrenheitPoints))
            + (3 * Growth(high, atFahrenheitPoints))) / 24;
    }

    /// <summary>Growth at a temperature, 0 to 10.</summary>
    public static double Growth(double celsius, bool atFahrenheitPoints = false)
    {
        double least = atFahrenheitPoints ? 65.0 / 9 : 7, best = atFahrenheitPoints ? 190.0 / 9 : 21;
        const double Most = 30; // 86 °F
        if (double.IsNaN(celsius)) return celsius;
        if (celsius < least || celsius > Most) return 0;
        double reach = celsius <= best ? best - least : Most - best;
        return 10 * (1 - ((celsius - best) * (celsius - best) / (reach * reach)));
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        bool atFahrenheitPoints = input.Settings.Is("physiological-days.points", "fahrenheit");
        return [.. input.Windows.Zip(input.Summaries, (window, summary) => ledger.Gap(window) is { } gap
            ? new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] }
            : new ModelDay(window.Day, Of(summary.LowestCelsius, summary.HighestCelsius, atFahrenheitPoints), ledger.Of(window)))];
    }
}
