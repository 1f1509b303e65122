using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>The criteria in use in Britain from 2017: two days in a row with no hour below 10 °C and six humid hours.</summary>
public sealed class Hutton : IWeatherModel
{
    /// <summary>Not below, °C.</summary>
    public const double LeastCelsius = 10;

    /// <summary>Hours of each day with humidity of 90 % or more.</summary>
    public const int Hours = 6;

    public string Id => "hutton";

    public ModelCard Card { get; } = new(
        "Dancey, Skelsey and Cooke, James Hutton Institute, project reports 2014-2017",
        Confidence.Seen,
        [new Threshold("hutton-period", ThresholdOf.Value, 1, Confidence.Seen)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>Whether a day counts.</summary>
    public static bool Counts(double lowestCelsius, int humidHours) => lowestCelsius >= LeastCelsius && humidHours >= Hours;

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return TwoDayRules.Of(input, Needs, input.Windows, isStrict: false, (before, today) =>
            Counts(before.LowestCelsius, before.HumidHours) && Counts(today.LowestCelsius, today.HumidHours) ? 1 : 0);
    }
}
