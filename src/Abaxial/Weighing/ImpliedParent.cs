using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// A character that nobody recorded although looks were made that mean something only where it was answered in some way. However many they are, together they tell
/// once that it is as each of them needs.
/// </summary>
internal sealed class ImpliedParent
{
    private readonly Question question;
    private readonly List<(Strand Child, int[] States)> needs = [];

    private ImpliedParent(Question question) => this.question = question;

    /// <summary>The organ of the looks that imply it; null where they hang on none.</summary>
    public string? Organ => needs[0].Child.Organ;

    /// <summary>All parents that a case's looks imply.</summary>
    public static List<ImpliedParent> Of(CaseReadings readings, HostTable table)
    {
        var implied = new List<ImpliedParent>();
        foreach (var strand in readings.Strands)
        {
            foreach (var one in strand.Readings)
            {
                var (parent, states) = CaseReadings.Needs(strand.Character, one.Question.Facet);
                if (parent is null || readings.Counted.Exists(look => look.Look.Character == parent)) continue;
                var question = table.Find(parent);
                var entry = implied.Find(other => other.question == question);
                if (entry is null) implied.Add(entry = new ImpliedParent(question));
                entry.needs.Add((strand, [.. states.Order()]));
            }
        }

        return implied;
    }

    public bool IsToldBy(Strand strand) => needs.Exists(need => need.Child == strand);

    /// <summary>By hypothesis, the chance that every need is met by a state that is there.</summary>
    /// <param name="left">Looks that are left out; null for none.</param>
    /// <param name="hypotheses">The hypotheses.</param>
    public double[] Likelihood(IReadOnlyCollection<Strand>? left, Hypotheses hypotheses)
    {
        var met = new double[hypotheses.Count];
        met.AsSpan().Fill(1);
        var open = LeastSets(needs.Where(need => left?.Contains(need.Child) != true).Select(need => need.States));
        while (open.Count > 0)
        {
            var together = TakeConnected(open);
            Lanes.Multiply(met, AllMet(together, hypotheses));
        }

        return met;
    }

    /// <summary>The needs that no narrower one contains, each once.</summary>
    private static List<int[]> LeastSets(IEnumerable<int[]> sets)
    {
        var least = new List<int[]>();
        foreach (var set in sets.OrderBy(set => set.Length))
        {
            if (!least.Exists(narrower => narrower.All(set.Contains))) least.Add(set);
        }

        return least;
    }

    /// <summary>Takes out the first need with all that share states with it, directly or through others: they are not independent of each other.</summary>
    private static List<int[]> TakeConnected(List<int[]> open)
    {
        List<int[]> together = [open[0]];
        open.RemoveAt(0);
        for (int i = 0; i < together.Count; i++)
        {
            var sharing = open.FindAll(other => other.Any(together[i].Contains));
            together.AddRange(sharing);
            open.RemoveAll(sharing.Contains);
        }

        return together;
    }

    /// <summary>One less the chance that some need is not met (by inclusion and exclusion; nearly always there is one need).</summary>
    private double[] AllMet(List<int[]> sets, Hypotheses hypotheses)
    {
        var met = new double[hypotheses.Count];
        met.AsSpan().Fill(1);
        for (int chosen = 1; chosen < 1 << sets.Count; chosen++)
        {
            int sign = 1;
            var unmet = new SortedSet<int>();
            for (int i = 0; i < sets.Count; i++)
            {
                if ((chosen >> i & 1) == 0) continue;
                unmet.UnionWith(sets[i]);
                sign = -sign;
            }

            var none = new double[hypotheses.Count];
            none.AsSpan().Fill(sign);
            foreach (int state in unmet) Lanes.Multiply(none, hypotheses.Staying(question, state));
            Lanes.Add(met, none);
        }

        return met;
    }
}
