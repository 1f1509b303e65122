using Abaxial.Statistics;
using Abaxial.Weighing;

namespace Abaxial.Benchmarks.PlainMatrix;

/// <summary>
/// The same definitions worked out the plain way: tables by cause and state, and for every hypothesis a loop over all that was read, one number after the other. Nothing is
/// pooled, kept from one hypothesis or one leave-out to the next, left out as negligible, or done several numbers at a time.
/// </summary>
internal sealed class PlainTables
{
    private const int Draws = 64;

    private readonly Hypotheses hypotheses;
    private readonly double[] priors;
    private readonly double[][] common;
    private readonly PlainFactor[] factors;
    private readonly PlainOrgan[] organs;

    private PlainTables(Hypotheses hypotheses, double[] priors, double[][] common, PlainFactor[] factors, PlainOrgan[] organs)
    {
        this.hypotheses = hypotheses;
        this.priors = priors;
        this.common = common;
        this.factors = factors;
        this.organs = organs;
    }

    /// <summary>Copies what a case read, and the tables it was read against.</summary>
    /// <exception cref="NotSupportedException">The case has prior factors or measurements, which the plain version does not know.</exception>
    public static PlainTables Of(Posterior posterior)
    {
        var hypotheses = posterior.Hypotheses;
        if (!posterior.Readings.Weighed.PriorFactors.IsEmpty) throw new NotSupportedException("The case has prior factors.");
        double[] unfactored = [.. Enumerable.Repeat(1.0, hypotheses.CauseCount)];
        double spread = hypotheses.Table.Knowledge.Document.WeightSpread;
        double[][] common = [.. hypotheses.Table.Causes.Select(cause => new RowDraws().OfWeight(cause, spread))];
        return new PlainTables(hypotheses, hypotheses.Priors(hypotheses.CauseWeights(posterior.Readings.Weighed, flat: false), unfactored), common, [.. PlainFactor.Of(posterior)], [.. posterior.Blocks.Select(block => PlainOrgan.Of(block, hypotheses))]);
    }

    /// <summary>The probability of every hypothesis.</summary>
    /// <param name="leftOut">A character whose looks are left out, with those of its children; null for none.</param>
    /// <param name="draw">The draw of the tables; -1 for the tables as written.</param>
    public double[] Weigh(string? leftOut = null, int draw = -1)
    {
        var weights = new double[hypotheses.Count];
        double top = double.NegativeInfinity;
        for (int h = 0; h < weights.Length; h++)
        {
            int a = hypotheses.First[h], b = hypotheses.Second[h];
            weights[h] = PlainMath.Log(priors[h]) + PlainMath.Log(Product(null, a, b, leftOut, draw));
            if (draw >= 0 && a < common.Length) weights[h] += PlainMath.Log(a == b ? common[a][draw] : common[a][draw] * common[b][draw]);
            foreach (var organ in organs) weights[h] += PlainMath.Log(OfOrgan(organ, a, b, leftOut, draw));
            top = Math.Max(top, weights[h]);
        }

        double sum = 0;
        for (int h = 0; h < weights.Length; h++) sum += weights[h] = PlainMath.Exp(weights[h] - top);
        for (int h = 0; h < weights.Length; h++) weights[h] /= sum;
        return weights;
    }

    /// <summary>By cause, the probability that it is there.</summary>
    public double[] Marginals(double[] weights)
    {
        var marginals = new double[hypotheses.CauseCount];
        for (int h = 0; h < weights.Length - 1; h++)
        {
            marginals[hypotheses.First[h]] += weights[h];
            if (hypotheses.First[h] != hypotheses.Second[h]) marginals[hypotheses.Second[h]] += weights[h];
        }

        return marginals;
    }

    /// <summary>By cause, its probability: with everything, then without each character that was looked at.</summary>
    public double[][] Evidence()
    {
        string[] looked = [.. factors.Select(factor => factor.Character).Distinct(), PlainOrgan.Reports];
        return [Marginals(Weigh()), .. looked.Select(character => Marginals(Weigh(character)))];
    }

    /// <summary>By cause, the 10th and the 90th percentile of the draws of the tables.</summary>
    public (double Low, double High)[] Bands()
    {
        var drawn = new double[hypotheses.CauseCount, Draws];
        for (int draw = 0; draw < Draws; draw++)
        {
            double[] marginals = Marginals(Weigh(null, draw));
            for (int cause = 0; cause < marginals.Length; cause++) drawn[cause, draw] = marginals[cause];
        }

        double[] middle = Marginals(Weigh());
        return [.. Enumerable.Range(0, hypotheses.CauseCount).Select(cause => Around(middle[cause], [.. Enumerable.Range(0, Draws).Select(draw => drawn[cause, draw]).Order()]))];
    }

    private static (double Low, double High) Around(double middle, double[] sorted) => (Math.Min(middle, At(sorted, 0.1)), Math.Max(middle, At(sorted, 0.9)));

    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }

    private double Product(string? organ, int a, int b, string? leftOut, int draw)
    {
        double product = 1;
        foreach (var factor in factors)
        {
            if (factor.Organ == organ && (leftOut is null || (factor.Character != leftOut && factor.Parent != leftOut))) product *= factor.Of(a, b, draw);
        }

        return product;
    }

    private double OfOrgan(PlainOrgan organ, int a, int b, string? leftOut, int draw)
    {
        bool noReports = leftOut == PlainOrgan.Reports;
        double ifNot = noReports ? 1 : organ.ReportedIfNot, ifSo = noReports ? 1 : organ.ReportedIfSo;
        double sound = ifNot;
        foreach (var factor in factors)
        {
            if (factor.Organ == organ.Name && (leftOut is null || (factor.Character != leftOut && factor.Parent != leftOut))) sound *= factor.IfSound;
        }

        double ga = organ.Attacks(a, draw), gb = organ.Attacks(b, draw);
        double ofA = Product(organ.Name, a, a, leftOut, draw);
        if (a == b) return ((1 - ga) * sound) + (ga * ifSo * ofA);
        double ofB = Product(organ.Name, b, b, leftOut, draw), both = Product(organ.Name, a, b, leftOut, draw);
        return ((1 - ga) * (1 - gb) * sound) + (ifSo * ((ga * (1 - gb) * ofA) + ((1 - ga) * gb * ofB) + (ga * gb * both)));
    }
}
