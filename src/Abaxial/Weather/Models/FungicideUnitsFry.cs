using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>
/// Fungicide units (Fry, Apple and Bruhn 1983): how rain and time wear a deposit of chlorothalonil away, summed since the last spray. The table is for
/// chlorothalonil alone and is never read for another material.
/// </summary>
public sealed class FungicideUnitsFry : IWeatherModel
{
    /// <summary>A class of days since the spray, and the units that are given from so many whole millimetres on.</summary>
    /// <param name="FromDays">The first day.</param>
    /// <param name="ToDays">The last day.</param>
    /// <param name="Steps">Millimetres and the units from there on.</param>
    public sealed record Row(int FromDays, int ToDays, ImmutableArray<(int Millimetres, int Units)> Steps);

    /// <summary>The table, from memory: no print was seen.</summary>
    public static ImmutableArray<Row> Table { get; } =
    [
        new(1, 1, [(0, 1), (1, 4), (2, 5), (5, 6), (9, 7)]),
        new(2, 2, [(0, 1), (1, 3), (2, 4), (5, 5), (9, 6)]),
        new(3, 3, [(0, 1), (1, 3), (3, 4), (6, 5)]),
        new(4, 5, [(0, 1), (1, 3), (4, 4), (9, 5)]),
        new(6, 9, [(0, 1), (1, 3), (5, 4)]),
        new(10, 14, [(0, 1), (1, 2), (2, 3), (9, 4)]),
        new(15, int.MaxValue, [(0, 1), (1, 2), (9, 3)]),
    ];

    public string Id => "fungicide-units-fry";

    public ModelCard Card { get; } = new(
        "Fry, Apple and Bruhn 1983, Phytopathology 73:1054-1059",
        Confidence.Memory,
        [
            new Threshold("fungicide-units", ThresholdOf.SinceSpray, 15, Confidence.Memory) { Cultivar = CultivarClass.Susceptible },
            new Threshold("fungicide-units", ThresholdOf.SinceSpray, 20, Confidence.Memory) { Cultivar = CultivarClass.Moderate },
            new Threshold("fungicide-units", ThresholdOf.SinceSpray, 25, Confidence.Memory) { Cultivar = CultivarClass.Resistant },
        ]);

    public ImmutableArray<Column> Needs { get; } = [Column.Rain];

    public bool ReadsDaily => true;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>The units of one day.</summary>
    /// <param name="daysSinceSpray">Days since the spray: 1 is the day after it.</param>
    /// <param name="rainMillimetres">The day's rain, mm; rounded to whole millimetres, halves up.</param>
    public static int Units(int daysSinceSpray, double rainMillimetres)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(daysSinceSpray, 1);
        double rain = Exact.HalfUp(rainMillimetres);
        var row = Table.First(row => daysSinceSpray >= row.FromDays && daysSinceSpray <= row.ToDays);
        return row.Steps.Last(step => rain >= step.Millimetres).Units;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        var days = ImmutableArray.CreateBuilder<ModelDay>(input.Windows.Length);
        DateOnly? last = null;
        double sum = 0;
        bool isTold = true;
        for (int i = 0; i < input.Windows.Length; i++)
        {
            var window = input.Windows[i];
            var spray = input.Settings.Sprayed.Where(day => day <= window.Day).Select(day => (DateOnly?)day).LastOrDefault();
            if (spray != last)
            {
                sum = 0;
                last = spray;
                isTold = spray >= input.Windows[0].Day.AddDays(-1); // Days before the record begin untold.
            }

            days.Add(Day(window, input.Summaries[i].RainMillimetres));
        }

        return days.ToImmutable();

        ModelDay Day(DayWindow window, double rain)
        {
            var inputs = ledger.Of(window);
            if (last is not { } sprayed) return new ModelDay(window.Day, null, inputs) { Notes = [DayNote.Of("no-spray")] };
            int since = window.Day.DayNumber - sprayed.DayNumber;
            var gap = since == 0 ? null : ledger.Gap(window);
            isTold &= gap is null;
            if (!isTold) return new ModelDay(window.Day, null, inputs) { Notes = [gap ?? DayNote.Of("spray-untold")] };
            double added = since == 0 ? 0 : Units(since, rain);
            sum += added;
            return new ModelDay(window.Day, sum, inputs) { Added = added };
        }
    }
}
