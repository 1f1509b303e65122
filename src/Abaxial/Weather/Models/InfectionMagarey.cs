using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>The generic infection model (Magarey, Sutton and Thayer 2005): hours wet over hours needed, for parameters that the user supplies.</summary>
public sealed class InfectionMagarey : IWeatherModel
{
    public string Id => "infection-magarey";

    public ModelCard Card { get; } = new(
        "Magarey, Sutton and Thayer 2005, Phytopathology 95:92-100",
        Confidence.Memory,
        [new Threshold("infection-possible", ThresholdOf.Value, 1, Confidence.Memory)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Wetness];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return settings.Pathogen?.Infection is null ? "pathogen" : null;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var parameters = input.Settings.Pathogen?.Infection ?? throw new ArgumentException("The settings hold no parameters of infection.", nameof(input));
        var ledger = new HourLedger(input, Needs);
        var wet = input.Wetness.ToArray();
        for (int hour = 0; hour < wet.Length; hour++)
        {
            if (ledger.IsMissing(hour)) wet[hour] = HourState.Unknown;
        }

        var spells = Joined(Run.In(wet), wet, parameters.JoiningHours, input.Settings.Is("infection-magarey.at-d50", "joined"));
        var byLast = spells.ToDictionary(spell => spell.Whole.Last);
        return PeriodDays.Of(input, ledger, [.. spells.Select(spell => spell.Whole)], run => Share(byLast[run.Last]), isSum: false, run => Note(byLast[run.Last]));

        double Share(Spell spell) => spell.WetHours / parameters.HoursNeeded(spell.MeanOf(input.Temperatures, wet));

        DayNote? Note(Spell spell) => double.IsFinite(parameters.HoursNeeded(spell.MeanOf(input.Temperatures, wet))) ? null : DayNote.Of("no-infection");
    }

    /// <summary>Wet spells that few enough dry hours part count as one; an unknown hour parts them for good.</summary>
    private static List<Spell> Joined(ImmutableArray<Run> runs, HourState[] wet, double joiningHours, bool joinsAtLimit)
    {
        var spells = new List<Spell>();
        foreach (var run in runs)
        {
            int dry = spells.Count > 0 ? run.Start - spells[^1].Whole.Last - 1 : 0;
            bool isNear = spells.Count > 0 && (joinsAtLimit ? dry <= joiningHours : dry < joiningHours);
            if (isNear && !wet.AsSpan(run.Start - dry, dry).Contains(HourState.Unknown))
            {
                var before = spells[^1];
                spells[^1] = new Spell(new Run(before.Whole.Start, run.Last - before.Whole.Start + 1, before.Whole.IsCut || run.IsCut), before.WetHours + run.Length);
            }
            else
            {
                spells.Add(new Spell(run, run.Length));
            }
        }

        return spells;
    }

    /// <summary>A wet period with the short dry breaks in it.</summary>
    private sealed record Spell(Run Whole, int WetHours)
    {
        public double MeanOf(ReadOnlySpan<double> temperatures, HourState[] wet)
        {
            double sum = 0;
            for (int hour = Whole.Start; hour <= Whole.Last; hour++) sum += wet[hour] == HourState.Yes ? temperatures[hour] : 0;
            return Exact.Mean(sum, WetHours);
        }
    }
}
