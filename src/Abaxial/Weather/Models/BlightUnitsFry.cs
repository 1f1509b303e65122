using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Blight units (Fry, Apple and Bruhn 1983): what the humid hours of a day are worth, by their mean temperature and the cultivar's class.</summary>
public sealed class BlightUnitsFry : IWeatherModel
{
    /// <summary>A class of temperature in whole °C, and for each cultivar class the units that are given from so many hours on.</summary>
    /// <param name="FromCelsius">The lowest whole degree.</param>
    /// <param name="ToCelsius">The highest.</param>
    /// <param name="Steps">For susceptible, moderate, resistant: hours and the units from there on.</param>
    public sealed record Row(int FromCelsius, int ToCelsius, ImmutableArray<ImmutableArray<(int Hours, int Units)>> Steps);

    /// <summary>The table, from memory: no print was seen. Below 3 °C and above 27 °C there are no units.</summary>
    public static ImmutableArray<Row> Table { get; } =
    [
        new(23, 27, [[(7, 1), (10, 2), (13, 3), (16, 4), (19, 5)], [(10, 1), (19, 2)], [(16, 1)]]),
        new(13, 22, [[(7, 5), (10, 6), (13, 7)], [(7, 1), (8, 2), (9, 3), (10, 4), (11, 5), (13, 6)], [(7, 1), (8, 2), (9, 3), (10, 4), (13, 5)]]),
        new(8, 12, [[(7, 1), (8, 2), (10, 3), (11, 4), (13, 5), (16, 6)], [(7, 1), (10, 2), (13, 3), (16, 4), (19, 5)], [(10, 1), (13, 2), (16, 3)]]),
        new(3, 7, [[(10, 1), (13, 2), (16, 3), (19, 4)], [(13, 1)], [(19, 1)]]),
    ];

    public string Id => "blight-units-fry";

    public ModelCard Card { get; } = new(
        "Fry, Apple and Bruhn 1983, Phytopathology 73:1054-1059",
        Confidence.Memory,
        [
            new Threshold("blight-units", ThresholdOf.SinceSpray, 30, Confidence.Memory) { Cultivar = CultivarClass.Susceptible },
            new Threshold("blight-units", ThresholdOf.SinceSpray, 35, Confidence.Memory) { Cultivar = CultivarClass.Moderate },
            new Threshold("blight-units", ThresholdOf.SinceSpray, 40, Confidence.Memory) { Cultivar = CultivarClass.Resistant },
        ]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return settings.Cultivar is null ? "cultivar" : null;
    }

    /// <summary>Blight units of humid hours.</summary>
    /// <param name="hours">Hours with humidity of 90 % or more; more than 24 count as 24.</param>
    /// <param name="meanCelsius">Their mean temperature, °C; rounded to whole degrees, halves up.</param>
    /// <param name="cultivar">The cultivar's class.</param>
    public static int Units(int hours, double meanCelsius, CultivarClass cultivar)
    {
        double celsius = Exact.HalfUp(meanCelsius);
        int units = 0;
        foreach (var row in Table)
        {
            if (!(celsius >= row.FromCelsius && celsius <= row.ToCelsius)) continue;
            foreach (var step in row.Steps[(int)cultivar])
            {
                if (hours >= step.Hours) units = step.Units;
            }
        }

        return units;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var cultivar = input.Settings.Cultivar ?? throw new ArgumentException("The settings name no class of cultivar.", nameof(input));
        var humid = ConditionHours.Of(input, double.NegativeInfinity, 90);
        var ledger = new HourLedger(input, Needs);
        if (input.Settings.Is("blight-units-fry.hours", "period"))
        {
            return PeriodDays.Of(input, ledger, Run.In(humid), run => Units(run.Length, input.MeanOf(run), cultivar), isSum: true);
        }

        return [.. input.Windows.Select(window =>
        {
            if (ledger.Gap(window) is { } gap) return new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] };
            var (hours, mean) = WetHours.In(input.Temperatures, humid, window);
            return new ModelDay(window.Day, Units(hours, mean, cultivar), ledger.Of(window));
        })];
    }
}
