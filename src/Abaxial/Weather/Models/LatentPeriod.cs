using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>
/// How much of the latent period of <em>Phytophthora infestans</em> a day completes. The curve is the project's judgement: a beta response through the published
/// 68 h (BR-1 on potato) and 93.3 h (US-1 on tomato) at 22 °C; the two are the band. Or it is the one that the user supplies.
/// </summary>
public sealed class LatentPeriod : IWeatherModel
{
    /// <summary>The shortest published latent period at 22 °C, hours (Maziero, Maffia and Mizubuti 2009, Plant Disease 93:459-466).</summary>
    public const double ShortestHours = 68;

    /// <summary>The longest published at 22 °C, hours. Same source.</summary>
    public const double LongestHours = 93.3;

    // Judgement: hardly any growth at 3 °C and none at 30 °C; the best temperature is the published one.
    private static readonly InfectionParameters Curve = new(3, 22, 30, 1, double.PositiveInfinity);

    public string Id => "latent-period";

    public ModelCard Card { get; } = new(
        "A curve of the project through Maziero, Maffia and Mizubuti 2009, Plant Disease 93:459-466",
        Confidence.Judgement,
        [new Threshold("latent-completed", ThresholdOf.Sum, 1, Confidence.Judgement)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>How fast the latent period passes at a temperature, as a share of the fastest: 1 at 22 °C, 0 at 3 °C and below and at 30 °C and above.</summary>
    public static double Pace(double celsius) => Curve.Response(celsius);

    /// <summary>The share of the latent period that passes in an hour, by a table of latent periods: between two temperatures on a straight line of the shares, 0 outside.</summary>
    public static double ShareByTable(double celsius, ImmutableArray<(double Celsius, double Hours)> table)
    {
        for (int i = 1; i < table.Length; i++)
        {
            var (low, lowHours) = table[i - 1];
            var (high, highHours) = table[i];
            if (celsius >= low && celsius <= high) return (1 / lowHours) + (((1 / highHours) - (1 / lowHours)) * (celsius - low) / (high - low));
        }

        return 0;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        var table = input.Settings.Pathogen?.LatentPeriods ?? [];
        return [.. input.Windows.Select(window =>
        {
            var inputs = ledger.Of(window);
            if (ledger.Gap(window) is { } gap) return new ModelDay(window.Day, null, inputs) { Notes = [gap] };
            var temperatures = input.Temperatures[window.Start..window.End];
            double sum = 0;
            foreach (double celsius in temperatures) sum += table.IsEmpty ? Pace(celsius) : ShareByTable(celsius, table);
            return table.IsEmpty
                ? new ModelDay(window.Day, sum * 2 / (ShortestHours + LongestHours), inputs) { Band = (sum / LongestHours, sum / ShortestHours) }
                : new ModelDay(window.Day, sum, inputs);
        })];
    }
}
