using Abaxial.Knowledge;
using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>How well the leading hypothesis fits the looks: single readings that it finds improbable, and all of them together.</summary>
internal sealed class Fit
{
    private const double Step = 0.1; // of the grid of surprise, in natural logarithms

    private readonly Posterior posterior;
    private readonly Hypotheses hypotheses;
    private readonly ReadingModel model;
    private readonly FitDocument limits;
    private readonly int leading;
    private readonly List<double[]> surprises = [];
    private readonly List<double> observed = [];

    public Fit(Posterior posterior, ReadingModel model)
    {
        this.posterior = posterior;
        this.model = model;
        hypotheses = posterior.Hypotheses;
        limits = hypotheses.Table.Knowledge.Document.Fit;
        for (int h = 1; h < hypotheses.Count; h++)
        {
            if (posterior.Probability[h] > posterior.Probability[leading]) leading = h;
        }

        foreach (var counted in posterior.Readings.Counted.Except(posterior.Readings.SetAside)) Judge(counted);
        JudgeUnreportedOrgans();
    }

    public List<Conflict> Unexpected { get; } = [];

    /// <summary>Whether what it would itself predict for the same looks is so improbable as what was read in fewer than one case in a hundred.</summary>
    public bool IsMisfit => ChanceOfSuchSurprise() < limits.MisfitBelow;

    /// <summary>Looks that differ, and looks whose parent was answered otherwise.</summary>
    public static IEnumerable<Conflict> Disagreements(CaseReadings readings)
    {
        foreach (var group in readings.Counted.GroupBy(look => (look.Look.Character, look.Look.Facet)))
        {
            var first = group.First().Look;
            if (first.Character.IsMeasured || group.All(look => look.Look.States.SequenceEqual(first.States))) continue;
            yield return new Conflict([.. group.SelectMany(look => look.Places).Order()], ConflictReason.ReadingsDiffer, null);
        }

        foreach (var group in readings.SetAside.GroupBy(look => look.Look.Character))
        {
            var (parent, _) = CaseReadings.Needs(group.Key, group.First().Look.Facet);
            var places = group.Concat(readings.Counted.Where(look => look.Look.Character == parent)).SelectMany(look => look.Places);
            yield return new Conflict([.. places.Distinct().Order()], ConflictReason.ParentSaysOtherwise, null);
        }
    }

    private void Judge(CountedLook counted)
    {
        var look = counted.Look;
        var question = hypotheses.Table.Find(look.Character, look.Facet);
        if (look.Character.IsMeasured)
        {
            double tail = Tail(question, look, out double z);
            if (tail < limits.TailBelow) Unexpected.Add(new Conflict(counted.Places, ConflictReason.Unexpected, tail));
            AddMeasured(z);
            return;
        }

        double before = observed.Sum();
        double least = question.IsStateWise ? AddStates(look, question) : AddOneState(look, question);
        double surprise = observed.Sum() - before;
        if (PlainMath.Exp(least - surprise) < limits.UnexpectedBelow) Unexpected.Add(new Conflict(counted.Places, ConflictReason.Unexpected, PlainMath.Exp(-surprise)));
    }

    /// <summary>Adds a look read state by state; gives the surprise of its most likely reading.</summary>
    private double AddStates(Look look, Question question)
    {
        double least = 0;
        var noise = model.NoiseOf(look.Character, look.How, look.By, look.Facet);
        foreach (int state in question.States)
        {
            var (detects, falsely) = posterior.Readings.Detection(look, state, noise);
            double there = Chance(question, state);
            double named = 1 - ((1 - falsely) * (1 - (there * detects)));
            named = Math.Clamp(named, 1e-6, 1 - 1e-6);
            least -= PlainMath.Log(Math.Max(named, 1 - named));
            Add([named, 1 - named], look.States.Contains(state) ? 0 : 1);
        }

        return least;
    }

    private double AddOneState(Look look, Question question)
    {
        var states = question.States;
        var noise = model.NoiseOf(look.Character, look.How, look.By, look.Facet);
        double stray = noise.Error / (states.Length - 1);
        double[] reads = [.. states.Select(state => stray + (Chance(question, state) * (1 - noise.Error - stray)))];
        Add(reads, states.IndexOf(look.States[0]));
        return -PlainMath.Log(reads.Max());
    }

    /// <summary>The chance of a state under the leading hypothesis: of an organ, over which of its causes attack it.</summary>
    private double Chance(Question question, int state)
    {
        int a = hypotheses.First[leading], b = hypotheses.Second[leading];
        bool stateWise = question.IsStateWise;
        double ofA = question.Chance(a, state), ofB = question.Chance(b, state);
        double both = stateWise ? 1 - ((1 - ofA) * (1 - ofB)) : 0.5 * (ofA + ofB);
        if (question.Character.Id == CaseReadings.OrgansAffected)
        {
            var organ = posterior.Blocks.Find(block => block.State == state)!;
            return a == b ? organ.Attacks[a] : 1 - ((1 - organ.Attacks[a]) * (1 - organ.Attacks[b]));
        }

        if (posterior.Blocks.Find(block => block.Organ == question.Character.Organ) is not { } affected) return a == b ? ofA : both;
        double sound = stateWise ? 0 : state == question.Character.EmptyState ? 1 : 0;
        double ga = affected.Attacks[a], gb = affected.Attacks[b];
        var looks = posterior.LooksAt(affected);
        if (a == b)
        {
            double none = (1 - ga) * affected.ReportedIfNot * affected.LooksIfNot, some = ga * affected.ReportedIfSo * looks[leading];
            return ((none * sound) + (some * ofA)) / (none + some);
        }

        double neither = (1 - ga) * (1 - gb) * affected.ReportedIfNot * affected.LooksIfNot;
        double onlyA = affected.ReportedIfSo * ga * (1 - gb) * looks[a], onlyB = affected.ReportedIfSo * (1 - ga) * gb * looks[b], together = affected.ReportedIfSo * ga * gb * looks[leading];
        return ((neither * sound) + (onlyA * ofA) + (onlyB * ofB) + (together * both)) / (neither + onlyA + onlyB + together);
    }

    private double Tail(Question question, Look look, out double z)
    {
        double best = -1;
        z = 0;
        foreach (int cause in new[] { hypotheses.First[leading], hypotheses.Second[leading] })
        {
            var range = question.Ranges[cause] ?? question.BackgroundRange!;
            double off = (look.Values.Average() - range.Mean) / Math.Sqrt(Factors.Variance(range, look.Values.Length, question.Character.GroupWeight));
            double tail = PlainMath.NormalTwoSidedTail(off);
            if (tail <= best) continue;
            best = tail;
            z = off;
        }

        return best;
    }

    /// <summary>A normal in 61 steps of a tenth of a standard deviation on each side.</summary>
    private void AddMeasured(double z)
    {
        var chances = new double[61];
        double sum = 0;
        for (int i = 0; i < chances.Length; i++) sum += chances[i] = PlainMath.Exp(-0.005 * i * i) * (i == 0 ? 0.5 : 1);
        for (int i = 0; i < chances.Length; i++) chances[i] /= sum;
        Add(chances, Math.Min((int)(Math.Abs(z) * 10), chances.Length - 1));
    }

    /// <summary>An organ that no one reported but that a look shows ill.</summary>
    private void JudgeUnreportedOrgans()
    {
        if (posterior.Readings.Find(CaseReadings.OrgansAffected) is not null) return;
        int a = hypotheses.First[leading], b = hypotheses.Second[leading];
        foreach (var block in posterior.Blocks.Where(block => block.IsAffected))
        {
            double attacks = a == b ? block.Attacks[a] : 1 - ((1 - block.Attacks[a]) * (1 - block.Attacks[b]));
            Add([attacks, 1 - attacks], 0);
        }
    }

    private void Add(double[] chances, int read)
    {
        surprises.Add(chances);
        observed.Add(-PlainMath.Log(chances[read]));
    }

    private static int Cell(double chance) => (int)Math.Floor((-PlainMath.Log(chance) / Step) + 0.5);

    /// <summary>The distribution of the sum of surprises by convolution on a grid; what lies at or beyond the observed sum is gathered in the last cell.</summary>
    private double ChanceOfSuchSurprise()
    {
        int reach = 0;
        foreach (double one in observed) reach += (int)Math.Floor((one / Step) + 0.5);
        if (reach == 0) return 1;
        var now = new double[reach + 1];
        var next = new double[reach + 1];
        now[0] = 1;
        int filled = 0;
        foreach (var chances in surprises)
        {
            Array.Clear(next);
            int furthest = filled;
            foreach (double chance in chances)
            {
                if (chance <= 0) continue;
                int cell = Cell(chance);
                int inside = Math.Clamp(reach - cell, 0, filled + 1); // what lands short of the last cell
                if (inside > 0) Lanes.AddScaled(next.AsSpan(cell, inside), now.AsSpan(0, inside), chance);
                for (int at = inside; at <= filled; at++) next[reach] += now[at] * chance;
                furthest = Math.Max(furthest, Math.Min(reach, filled + cell));
            }

            filled = furthest;
            (now, next) = (next, now);
        }

        return now[reach];
    }
}
