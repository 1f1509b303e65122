using System.Collections.Concurrent;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// Everything that could be wrong with a plant of one host: every cause alone, every two causes together, and none of those listed. Hypotheses are numbered: first the
/// causes, then the pairs (first cause rising, then second), last the one that is not listed.
/// </summary>
internal sealed class Hypotheses
{
    private readonly double[] pairFactors;
    private readonly SeenTables seen;
    private readonly ConcurrentDictionary<(Question Question, int State), double[]> staying = new();

    public Hypotheses(HostTable table)
    {
        Table = table;
        CauseCount = table.Causes.Length;
        int pairs = CauseCount * (CauseCount - 1) / 2;
        Count = CauseCount + pairs + 1;
        First = new int[Count];
        Second = new int[Count];
        pairFactors = new double[pairs];
        RowStart = new int[CauseCount];
        int next = CauseCount;
        for (int a = 0; a < CauseCount; a++)
        {
            First[a] = Second[a] = a;
            RowStart[a] = next;
            for (int b = a + 1; b < CauseCount; b++)
            {
                First[next] = a;
                Second[next] = b;
                pairFactors[next - CauseCount] = FactorOf(table.Causes[a], table.Causes[b], table.Knowledge.Document.Pairs);
                next++;
            }
        }

        First[next] = Second[next] = CauseCount;
        Subject = table.IndexOf(table.Knowledge.Subject);
        seen = new SeenTables(table);
    }

    public HostTable Table { get; }

    public int CauseCount { get; }

    public int Count { get; }

    /// <summary>The place of late blight among the causes of this host.</summary>
    public int Subject { get; }

    /// <summary>The number of the hypothesis that is not listed.</summary>
    public int NotListed => Count - 1;

    /// <summary>By hypothesis, its first cause; for a cause alone (or not listed) the same as <see cref="Second"/>.</summary>
    public int[] First { get; }

    public int[] Second { get; }

    /// <summary>By cause, the number of the first pair in which it stands first.</summary>
    public int[] RowStart { get; }

    /// <summary>
    /// By hypothesis, the chance that a state is not there: two causes together lack it only where both do (noisy-or). Kept once worked out: it depends on the tables alone.
    /// </summary>
    public double[] Staying(Question question, int state) => staying.GetOrAdd((question, state), key => StayingOf(key.Question, key.State));

    public bool Holds(int hypothesis, int cause) => First[hypothesis] == cause || Second[hypothesis] == cause;

    /// <summary>The prior of every hypothesis; sums to one.</summary>
    /// <param name="causeWeights">By cause, its prior alone; sums to one.</param>
    /// <param name="causeFactors">By cause, the factor from weather and neighbours.</param>
    public double[] Priors(ReadOnlySpan<double> causeWeights, ReadOnlySpan<double> causeFactors)
    {
        var priors = new double[Count];
        causeWeights.CopyTo(priors);
        Lanes.Multiply(priors.AsSpan(0, CauseCount), causeFactors);
        pairFactors.CopyTo(priors, CauseCount);
        for (int a = 0; a < CauseCount; a++)
        {
            var row = priors.AsSpan(RowStart[a], CauseCount - a - 1);
            Lanes.Multiply(row, priors.AsSpan(a + 1, row.Length));
            Lanes.Scale(row, priors[a]);
        }

        priors[NotListed] = Table.Knowledge.Document.NotListed;
        double sum = 0;
        foreach (double prior in priors) sum += prior;
        Lanes.Scale(priors, 1 / sum);
        return priors;
    }

    /// <summary>How often a clinic sees each cause alone, for the case's system, stage and month; sums to one.</summary>
    public double[] CauseWeights(Case weighed, bool flat)
    {
        var weights = new double[CauseCount];
        if (flat)
        {
            weights.AsSpan().Fill(1.0 / CauseCount);
            return weights;
        }

        seen.Weights.CopyTo(weights, 0);
        if (weighed.System is not null) Lanes.Multiply(weights, seen.BySystem[weighed.System]);
        if (weighed.Stage is not null && !StoredTwice(weighed)) Lanes.Multiply(weights, seen.ByStage[weighed.Stage]);
        if (weighed is { Noticed: { } day, Place: { } place })
        {
            // The tables are of the northern hemisphere; south of the equator the seasons are half a year apart.
            Lanes.Multiply(weights, seen.ByMonth[(day.Month - 1 + (place.Latitude < 0 ? 6 : 0)) % 12]);
        }

        double sum = 0;
        foreach (double weight in weights) sum += weight;
        Lanes.Scale(weights, 1 / sum);
        return weights;
    }

    private double[] StayingOf(Question question, int state)
    {
        var values = new double[Count];
        for (int h = 0; h < Count; h++)
        {
            values[h] = 1 - question.Chance(First[h], state);
            if (First[h] != Second[h]) values[h] *= 1 - question.Chance(Second[h], state);
        }

        return values;
    }

    /// <summary>Storage and harvested say the same thing of a sample; the system's multiplier counts.</summary>
    private bool StoredTwice(Case weighed)
    {
        var only = Table.Knowledge.Document.OnlyOrgan;
        return weighed is { System: { } system, Stage: { } stage } && only.Systems.ContainsKey(system) && only.Stages.ContainsKey(stage);
    }

    private static double FactorOf(Cause a, Cause b, PairsDocument pairs)
    {
        foreach (var pair in pairs.ByCause)
        {
            if (pair.Causes.Contains(a.Id, StringComparer.Ordinal) && pair.Causes.Contains(b.Id, StringComparer.Ordinal)) return pair.Factor;
        }

        foreach (var pair in pairs.ByKind)
        {
            if ((pair.Kinds[0] == a.Kind && pair.Kinds[1] == b.Kind) || (pair.Kinds[0] == b.Kind && pair.Kinds[1] == a.Kind)) return pair.Factor;
        }

        return pairs.Otherwise;
    }
}
