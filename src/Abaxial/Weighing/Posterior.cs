using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>Every hypothesis weighed by one case's readings.</summary>
internal sealed class Posterior
{
    private readonly Dictionary<Strand, double[]> products = [];
    private readonly Dictionary<OrganBlock, (double[] Looks, double[] Value)> organs = [];
    private readonly List<(ImpliedParent Parent, double[] Likelihood)> implied = [];

    private double[]? without;
    private double[]? withoutValue;
    private double[]? withoutLooks;

    public Posterior(CaseReadings readings, Hypotheses hypotheses, double[] priors)
    {
        Readings = readings;
        Hypotheses = hypotheses;
        foreach (var strand in readings.Strands)
        {
            if (strand.Character.Id == CaseReadings.OrgansAffected) continue; // read by the organ blocks
            Factors.Fill(strand, hypotheses);
            var product = Ones();
            foreach (var factor in strand.Factors) factor.MultiplyInto(product, hypotheses);
            products.Add(strand, product);
        }

        foreach (var parent in ImpliedParent.Of(readings, hypotheses.Table)) implied.Add((parent, parent.Likelihood(null, hypotheses)));
        Blocks = OrganBlocks.Of(readings, hypotheses);
        foreach (var block in Blocks.Where(block => block.Says)) organs.Add(block, Weigh(block));
        Probability = Normalise(priors);
    }

    public CaseReadings Readings { get; }

    public Hypotheses Hypotheses { get; }

    public List<OrganBlock> Blocks { get; }

    /// <summary>By hypothesis; sums to one.</summary>
    public double[] Probability { get; }

    /// <summary>By hypothesis, the likelihood of all that a strand says.</summary>
    public double[] ProductOf(Strand strand) => products[strand];

    /// <summary>By hypothesis, the likelihood of the looks at an organ that the case speaks of, where all its causes attack it.</summary>
    public double[] LooksAt(OrganBlock block) => organs[block].Looks;

    /// <summary>By hypothesis, the likelihood of reports and looks of an organ.</summary>
    public double[] ValueOf(OrganBlock block) => organs[block].Value;

    /// <summary>The probability of every hypothesis with some strands left out; not normalised.</summary>
    /// <returns>By hypothesis; overwritten by the next call.</returns>
    public ReadOnlySpan<double> Without(IReadOnlyCollection<Strand> left)
    {
        var weights = without ??= new double[Hypotheses.Count];
        var value = withoutValue ??= new double[Hypotheses.Count];
        var looks = withoutLooks ??= new double[Hypotheses.Count];
        Probability.CopyTo(weights, 0);
        bool ignoreReports = left.Any(strand => strand.Character.Id == CaseReadings.OrgansAffected);
        foreach (var strand in left)
        {
            if (strand.Organ is not null || strand.Character.Id == CaseReadings.OrgansAffected) continue;
            Lanes.Divide(weights, products[strand]);
        }

        LeaveImplied(weights, null, left);
        foreach (var block in Blocks.Where(block => block.Says))
        {
            var mine = left.Where(strand => strand.Organ == block.Organ).ToArray();
            if (mine.Length == 0 && !ignoreReports) continue;
            LooksAt(block).CopyTo(looks, 0);
            foreach (var strand in mine) Lanes.Divide(looks, products[strand]);
            LeaveImplied(looks, block.Organ, left);
            var reduced = mine.Length == 0 ? block : OrganBlocks.With(block, [.. block.Strands.Except(mine)]);
            reduced.Fill(value, looks, Hypotheses, ignoreReports);
            Lanes.Multiply(weights, value);
            Lanes.Divide(weights, ValueOf(block));
        }

        return weights;
    }

    /// <summary>The probability that a cause is there, alone or with another.</summary>
    /// <param name="weights">By hypothesis; need not sum to one.</param>
    public double[] Marginals(ReadOnlySpan<double> weights)
    {
        var marginals = new double[Hypotheses.CauseCount];
        double sum = 0;
        weights[..marginals.Length].CopyTo(marginals);
        foreach (double weight in weights) sum += weight;
        for (int a = 0; a < marginals.Length; a++)
        {
            var row = weights.Slice(Hypotheses.RowStart[a], marginals.Length - a - 1);
            var others = marginals.AsSpan(a + 1, row.Length);
            double own = 0;
            for (int i = 0; i < row.Length; i++)
            {
                own += row[i];
                others[i] += row[i];
            }

            marginals[a] += own;
        }

        for (int cause = 0; cause < marginals.Length; cause++) marginals[cause] /= sum;
        return marginals;
    }

    private (double[] Looks, double[] Value) Weigh(OrganBlock block)
    {
        var looks = Ones();
        foreach (var strand in block.Strands) Lanes.Multiply(looks, products[strand]);
        foreach (var (parent, likelihood) in implied.Where(entry => entry.Parent.Organ == block.Organ)) Lanes.Multiply(looks, likelihood);
        var value = new double[Hypotheses.Count];
        block.Fill(value, looks, Hypotheses);
        return (looks, value);
    }

    /// <summary>Takes out what the looks left out implied, and puts in what those that stay still imply.</summary>
    private void LeaveImplied(double[] target, string? organ, IReadOnlyCollection<Strand> left)
    {
        foreach (var (parent, likelihood) in implied)
        {
            if (parent.Organ != organ || !left.Any(parent.IsToldBy)) continue;
            Lanes.Divide(target, likelihood);
            Lanes.Multiply(target, parent.Likelihood(left, Hypotheses));
        }
    }

    private double[] Normalise(double[] priors)
    {
        // Products of factors (each at most one) are kept plain until one comes near underflow; from then on logarithms are added up.
        double[]? log = null;
        var product = (double[])priors.Clone();
        foreach (var strand in Readings.Strands.Where(strand => strand.Organ is null && products.ContainsKey(strand))) Multiply(product, products[strand], ref log);
        foreach (var (_, likelihood) in implied.Where(entry => entry.Parent.Organ is null)) Multiply(product, likelihood, ref log);
        foreach (var block in Blocks.Where(block => block.Says)) Multiply(product, ValueOf(block), ref log);
        if (log is not null) Restore(product, log);
        double total = 0;
        foreach (double value in product) total += value;
        for (int h = 0; h < product.Length; h++) product[h] /= total;
        return product;
    }

    private static void Multiply(double[] product, double[] by, ref double[]? log)
    {
        Lanes.Multiply(product, by);
        if (Lanes.Least(product) > 1e-150) return;
        log ??= new double[product.Length];
        for (int h = 0; h < log.Length; h++)
        {
            log[h] += PlainMath.Log(product[h]);
            product[h] = 1;
        }
    }

    /// <summary>Plain products again, over the largest.</summary>
    private static void Restore(double[] product, double[] log)
    {
        double top = double.NegativeInfinity;
        for (int h = 0; h < log.Length; h++)
        {
            log[h] += PlainMath.Log(product[h]);
            top = Math.Max(top, log[h]);
        }

        for (int h = 0; h < log.Length; h++) product[h] = PlainMath.Exp(log[h] - top);
    }

    private double[] Ones()
    {
        var ones = new double[Hypotheses.Count];
        ones.AsSpan().Fill(1);
        return ones;
    }
}
