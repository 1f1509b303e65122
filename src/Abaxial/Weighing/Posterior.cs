using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>Every hypothesis weighed by one case's readings.</summary>
internal sealed class Posterior
{
    private readonly Dictionary<Strand, double[]> products = [];
    private readonly Dictionary<OrganBlock, (double[] Looks, double[] Value)> organs = [];

    public Posterior(CaseReadings readings, Hypotheses hypotheses, double[] priors)
    {
        Readings = readings;
        Hypotheses = hypotheses;
        foreach (var strand in readings.Strands)
        {
            if (strand.Character.Id == CaseReadings.OrgansAffected) continue; // read by the organ blocks
            Factors.Fill(strand, readings, hypotheses.Table);
            var product = Ones();
            foreach (var factor in strand.Factors) factor.MultiplyInto(product, hypotheses);
            products.Add(strand, product);
        }

        Blocks = OrganBlocks.Of(readings, hypotheses);
        foreach (var block in Blocks) organs.Add(block, Weigh(block));
        Probability = Normalise(priors);
    }

    public CaseReadings Readings { get; }

    public Hypotheses Hypotheses { get; }

    public List<OrganBlock> Blocks { get; }

    /// <summary>By hypothesis; sums to one.</summary>
    public double[] Probability { get; }

    /// <summary>By hypothesis, the likelihood of all that a strand says.</summary>
    public double[] ProductOf(Strand strand) => products[strand];

    /// <summary>By hypothesis, the likelihood of the looks at an organ where all its causes attack it.</summary>
    public double[] LooksAt(OrganBlock block) => organs[block].Looks;

    /// <summary>By hypothesis, the likelihood of reports and looks of an organ.</summary>
    public double[] ValueOf(OrganBlock block) => organs[block].Value;

    /// <summary>The probability of every hypothesis with some strands left out; not normalised.</summary>
    public double[] Without(IReadOnlyCollection<Strand> left)
    {
        var weights = (double[])Probability.Clone();
        var scratch = new double[weights.Length];
        bool ignoreReports = left.Any(strand => strand.Character.Id == CaseReadings.OrgansAffected);
        foreach (var strand in left)
        {
            if (strand.Organ is not null || strand.Character.Id == CaseReadings.OrgansAffected) continue;
            Lanes.Divide(weights, products[strand]);
        }

        foreach (var block in Blocks)
        {
            var mine = left.Where(strand => strand.Organ == block.Organ).ToArray();
            if (mine.Length == 0 && !ignoreReports) continue;
            var looks = (double[])LooksAt(block).Clone();
            foreach (var strand in mine) Lanes.Divide(looks, products[strand]);
            var reduced = mine.Length == 0 ? block : OrganBlocks.With(block, [.. block.Strands.Except(mine)], Readings);
            reduced.Fill(scratch, looks, Hypotheses, ignoreReports);
            Lanes.Multiply(weights, scratch);
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
        for (int h = 0; h < weights.Length; h++)
        {
            sum += weights[h];
            int a = Hypotheses.First[h], b = Hypotheses.Second[h];
            if (a >= marginals.Length) continue;
            marginals[a] += weights[h];
            if (b != a) marginals[b] += weights[h];
        }

        for (int cause = 0; cause < marginals.Length; cause++) marginals[cause] /= sum;
        return marginals;
    }

    private (double[] Looks, double[] Value) Weigh(OrganBlock block)
    {
        var looks = Ones();
        foreach (var strand in block.Strands) Lanes.Multiply(looks, products[strand]);
        var value = new double[Hypotheses.Count];
        block.Fill(value, looks, Hypotheses);
        return (looks, value);
    }

    private double[] Normalise(double[] priors)
    {
        // Within a block of characters plain products stay far from underflow (each factor is scaled to at most one and is seldom under
        // 0.001); across blocks logarithms are added.
        var general = Ones();
        foreach (var strand in Readings.Strands.Where(strand => strand.Organ is null && products.ContainsKey(strand))) Lanes.Multiply(general, products[strand]);
        var parts = new List<double[]> { general };
        var quiet = Ones();
        foreach (var block in Blocks)
        {
            if (block.Strands.Count == 0) Lanes.Multiply(quiet, ValueOf(block));
            else parts.Add(ValueOf(block));
        }

        parts.Add(quiet);
        var log = new double[priors.Length];
        double top = double.NegativeInfinity;
        for (int h = 0; h < log.Length; h++)
        {
            double sum = PlainMath.Log(priors[h]);
            foreach (var part in parts) sum += PlainMath.Log(part[h]);
            log[h] = sum;
            top = Math.Max(top, sum);
        }

        double total = 0;
        for (int h = 0; h < log.Length; h++) total += log[h] = PlainMath.Exp(log[h] - top);
        for (int h = 0; h < log.Length; h++) log[h] /= total;
        return log;
    }

    private double[] Ones()
    {
        var ones = new double[Hypotheses.Count];
        ones.AsSpan().Fill(1);
        return ones;
    }
}
