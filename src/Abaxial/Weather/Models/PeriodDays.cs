using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Books what periods of hours are worth on the days in which they end.</summary>
internal static class PeriodDays
{
    /// <summary>A day's value from the periods that end in it; null where an hour of the day is missing.</summary>
    /// <param name="input">The record.</param>
    /// <param name="ledger">What is missing.</param>
    /// <param name="runs">The periods, in order.</param>
    /// <param name="valueOf">What one is worth.</param>
    /// <param name="isSum">Whether the day has the sum of its periods; otherwise it has the greatest.</param>
    /// <param name="noteOf">What to remark of a period.</param>
    public static ImmutableArray<ModelDay> Of(ModelInput input, HourLedger ledger, ImmutableArray<Run> runs, Func<Run, double> valueOf, bool isSum, Func<Run, DayNote?>? noteOf = null)
    {
        var days = ImmutableArray.CreateBuilder<ModelDay>(input.Windows.Length);
        int next = 0;
        foreach (var window in input.Windows)
        {
            double value = 0;
            var notes = new List<DayNote>();
            for (; next < runs.Length && runs[next].Last < window.End; next++)
            {
                var run = runs[next];
                if (run.Last < window.Start) continue;
                double worth = valueOf(run);
                value = isSum ? value + worth : Math.Max(value, worth);
                if (run.IsCut) Add(notes, DayNote.Of("period-cut"));
                if (noteOf?.Invoke(run) is { } note) Add(notes, note);
            }

            days.Add(ledger.Gap(window) is { } gap
                ? new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] }
                : new ModelDay(window.Day, value, ledger.Of(window)) { Notes = [.. notes] });
        }

        return days.ToImmutable();
    }

    private static void Add(List<DayNote> notes, DayNote note)
    {
        if (!notes.Exists(known => known.Key == note.Key)) notes.Add(note);
    }
}
