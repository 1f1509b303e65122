using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Smith's period (1956): two days in a row, each ending at 09:00 UTC, with no hour below 10 °C and eleven humid hours.</summary>
public sealed class Smith : IWeatherModel
{
    /// <summary>Not below, °C.</summary>
    public const double LeastCelsius = 10;

    /// <summary>Humid hours of each day.</summary>
    public const int Hours = 11;

    private const int DayEndsUtc = 9;
    private const double NearMiss = 0.5;

    public string Id => "smith";

    public ModelCard Card { get; } = new(
        "Smith 1956, Plant Pathology 5:83-87",
        Confidence.Restated,
        [new Threshold("smith-period", ThresholdOf.Value, 1, Confidence.Restated)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>What two days in a row are: 1 a period, 0.5 a near miss (ten hours where eleven are asked for, on one day or both), 0 neither.</summary>
    public static double Value(double lowestBefore, int hoursBefore, double lowest, int hours, int askedBefore = Hours)
    {
        if (!(lowestBefore >= LeastCelsius && lowest >= LeastCelsius)) return 0;
        if (hoursBefore >= askedBefore && hours >= Hours) return 1;
        return hoursBefore >= Hours - 1 && hours >= Hours - 1 ? NearMiss : 0;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);

        // The first row after 09:00 UTC opens a day; in zones of half hours that is not at 10:00 UTC sharp.
        int opens = (int)Math.Floor(DayEndsUtc + (input.Record.OffsetMinutes / 60.0)) + 1;
        var windows = DayWindow.EndingBefore(input.Record, ((opens % 24) + 24) % 24);
        int askedBefore = input.Settings.Is("smith.hours", "10-then-11") ? Hours - 1 : Hours;
        return TwoDayRules.Of(input, Needs, windows, input.Settings.Is("smith.humidity", "above-90"), (before, today) =>
            Value(before.LowestCelsius, before.HumidHours, today.LowestCelsius, today.HumidHours, askedBefore));
    }
}
