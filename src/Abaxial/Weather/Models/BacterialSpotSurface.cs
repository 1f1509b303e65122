using System.Collections.Immutable;
using Abaxial.Statistics;

namespace Abaxial.Weather.Models;

/// <summary>Severity of bacterial spot of tomato from the length of a wet period and its temperature, 0 to 1, by an equation fitted to inoculations.</summary>
public sealed class BacterialSpotSurface : IWeatherModel
{
    private const double LeastCelsius = 8, MostCelsius = 32;
    private const double TestedFromCelsius = 15, TestedToCelsius = 30;
    private const int TestedFromHours = 6, TestedToHours = 48;

    public string Id => "bacterial-spot-surface";

    public ModelCard Card { get; } = new("Tomato bacterial spot, Xanthomonas spp., Summa Phytopathologica", Confidence.Seen, []);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Wetness];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>Severity after a wet period.</summary>
    /// <param name="celsius">Its mean temperature, °C; 0 is given at 8 and below and at 32 and above.</param>
    /// <param name="wetHours">Its length, hours.</param>
    public static double Severity(double celsius, double wetHours)
    {
        if (!(celsius > LeastCelsius && celsius < MostCelsius)) return 0;
        double warmth = PlainMath.Exp((2.4855647 * PlainMath.Log(celsius - LeastCelsius)) + (0.7091962 * PlainMath.Log(MostCelsius - celsius)));
        return 0.0001538 * warmth * (0.64289 / (1 + (21.26122 * PlainMath.Exp(-0.12435 * wetHours))));
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        var wet = input.Wetness.ToArray();
        for (int hour = 0; hour < wet.Length; hour++)
        {
            if (ledger.IsMissing(hour)) wet[hour] = HourState.Unknown;
        }

        return PeriodDays.Of(input, ledger, Run.In(wet), run => Severity(input.MeanOf(run), run.Length), isSum: false, run => IsTested(input.MeanOf(run), run.Length) ? null : DayNote.Of("outside-tested"));
    }

    private static bool IsTested(double celsius, int hours) =>
        celsius is >= TestedFromCelsius and <= TestedToCelsius && hours is >= TestedFromHours and <= TestedToHours;
}
