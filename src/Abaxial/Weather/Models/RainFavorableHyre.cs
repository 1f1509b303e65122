using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Rain-favourable days (Hyre 1954): five days not too hot, ten days wet enough, and no cold morning.</summary>
public sealed class RainFavorableHyre : IWeatherModel
{
    public const string ModelId = "rain-favorable-hyre";

    /// <summary>The mean of five days must be below, °C (restated; 78 °F).</summary>
    public const double BelowMeanCelsius = 25.5;

    /// <summary>The rain of ten days must reach, mm (restated as 3.0 cm).</summary>
    public const double RainMillimetres = 30;

    /// <summary>A day with a lower minimum is unfavourable, °C (restated; 45 °F).</summary>
    public const double LowestCelsius = 7.2;

    private const int MeanDays = 5;
    private const int RainDays = 10;

    public string Id => ModelId;

    public ModelCard Card { get; } = new(
        "Hyre 1954, Plant Disease Reporter 38:245-253",
        Confidence.Restated,
        [
            new Threshold("favorable-ten", ThresholdOf.DaysInARow, 10, Confidence.Memory) { FirstSeen = (7, 14), Convention = ("rain-favorable-hyre.ten-days", "consecutive") },
            new Threshold("favorable-ten", ThresholdOf.Sum, 10, Confidence.Restated) { FirstSeen = (7, 14), Convention = ("rain-favorable-hyre.ten-days", "accumulated") },
        ]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Rain];

    public bool ReadsDaily => true;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>Whether a day is favourable.</summary>
    /// <param name="meansCelsius">The means of five days, the day itself the last, °C.</param>
    /// <param name="rainsMillimetres">The rains of ten days, the day itself the last, mm.</param>
    /// <param name="lowestCelsius">The lowest temperature of the day, °C.</param>
    public static bool IsFavorable(ReadOnlySpan<double> meansCelsius, ReadOnlySpan<double> rainsMillimetres, double lowestCelsius)
    {
        double mean = 0, rain = 0;
        foreach (double celsius in meansCelsius) mean += celsius;
        foreach (double millimetres in rainsMillimetres) rain += millimetres;
        return Exact.Mean(mean, meansCelsius.Length) < BelowMeanCelsius && Exact.Rounded(rain) >= RainMillimetres && lowestCelsius >= LowestCelsius;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var temperature = new HourLedger(input, [Column.Temperature]);
        var rain = new HourLedger(input, [Column.Rain]);
        var both = new HourLedger(input, Needs);
        double[] means = [.. input.Summaries.Select(day => day.MeanCelsius)];
        double[] waters = [.. input.Summaries.Select(day => day.WaterMillimetres)];
        var days = ImmutableArray.CreateBuilder<ModelDay>(input.Windows.Length);
        for (int i = 0; i < input.Windows.Length; i++)
        {
            var window = input.Windows[i];
            var inputs = both.Of(window);
            var gap = both.Gap(window)
                ?? rain.Gap(window, (RainDays - 1) * StationRecord.HoursOfDay)
                ?? temperature.Gap(window, (MeanDays - 1) * StationRecord.HoursOfDay);
            days.Add(gap is not null
                ? new ModelDay(window.Day, null, inputs) { Notes = [gap] }
                : new ModelDay(window.Day, IsFavorable(means.AsSpan(i - MeanDays + 1, MeanDays), waters.AsSpan(i - RainDays + 1, RainDays), input.Summaries[i].LowestCelsius) ? 1 : 0, inputs));
        }

        return days.ToImmutable();
    }
}
