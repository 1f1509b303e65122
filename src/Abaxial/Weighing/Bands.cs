namespace Abaxial.Weighing;

/// <summary>
/// The central 80 % of each cause's probability over the draws of the rows that the case used: the cells that a look named (all of a character's where it was answered
/// "nothing there"), the chance of attacking the organs that were affected, and how often a clinic sees each cause.
/// </summary>
internal sealed class Bands
{
    private const int Draws = RowDraws.Count;

    private readonly ActiveHypotheses active;
    private readonly Hypotheses hypotheses;
    private readonly RowDraws draws;
    private readonly List<StrandDraws> general = [];
    private readonly List<OrganDraws> organs = [];
    private readonly double[] lane = new double[Draws];
    private readonly double[]?[] weights;

    public Bands(Posterior posterior, ActiveHypotheses active, RowDraws draws)
    {
        this.active = active;
        this.draws = draws;
        hypotheses = posterior.Hypotheses;
        weights = new double[hypotheses.CauseCount][];
        foreach (var strand in posterior.Readings.Strands)
        {
            if (strand.Organ is null && strand.Character.Id != CaseReadings.OrgansAffected) general.Add(new StrandDraws(strand, draws, hypotheses.CauseCount));
        }

        foreach (var block in posterior.Blocks.Where(block => block.Says)) organs.Add(new OrganDraws(block, posterior, draws));
    }

    /// <summary>By cause, low and high.</summary>
    public (double Low, double High)[] Of(ReadOnlySpan<double> probability)
    {
        var total = new double[Draws];
        var byCause = new double[hypotheses.CauseCount][];
        for (int i = 0; i < active.Numbers.Length; i++)
        {
            int h = active.Numbers[i];
            Weigh(h, active.Mass[i]);
            Lanes.Add(total, lane);
            int a = hypotheses.First[h], b = hypotheses.Second[h];
            if (a >= hypotheses.CauseCount) continue;
            Lanes.Add(byCause[a] ??= new double[Draws], lane);
            if (a != b) Lanes.Add(byCause[b] ??= new double[Draws], lane);
        }

        var bands = new (double Low, double High)[hypotheses.CauseCount];
        for (int cause = 0; cause < bands.Length; cause++)
        {
            double middle = Math.Min(1, probability[cause]);
            bands[cause] = byCause[cause] is { } sums ? Around(middle, sums, total) : (middle, middle);
        }

        return bands;
    }

    /// <summary>The weight of a hypothesis in every draw.</summary>
    private void Weigh(int h, double mass)
    {
        int a = hypotheses.First[h], b = hypotheses.Second[h];
        lane.AsSpan().Fill(mass);
        if (a < weights.Length) Lanes.Multiply(lane, WeightOf(a));
        if (a != b) Lanes.Multiply(lane, WeightOf(b));
        foreach (var strand in general) strand.MultiplyRatio(lane, a, b);
        foreach (var organ in organs) organ.MultiplyRatio(lane, h, a, b);
    }

    private double[] WeightOf(int cause) => weights[cause] ??= draws.OfWeight(hypotheses.Table.Causes[cause], hypotheses.Table.Knowledge.Document.WeightSpread);

    private (double Low, double High) Around(double middle, double[] sums, double[] total)
    {
        sums.CopyTo(lane, 0);
        Lanes.Divide(lane, total);
        Array.Sort(lane);
        return (Math.Max(0, Math.Min(middle, At(lane, 0.1))), Math.Min(1, Math.Max(middle, At(lane, 0.9))));
    }

    /// <summary>A quantile, linear between the draws.</summary>
    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }
}
