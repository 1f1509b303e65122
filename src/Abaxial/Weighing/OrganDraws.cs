namespace Abaxial.Weighing;

/// <summary>The likelihood of an organ's reports and looks in every draw, over its value at the rows as written.</summary>
internal sealed class OrganDraws
{
    private const int Draws = RowDraws.Count;

    private readonly OrganBlock block;
    private readonly Posterior posterior;
    private readonly RowDraws draws;
    private readonly StrandDraws[] strands;
    private readonly double[][] looksAlone;
    private readonly double[][] attacks;
    private readonly double[] both = new double[Draws];

    public OrganDraws(OrganBlock block, Posterior posterior, RowDraws draws)
    {
        this.block = block;
        this.posterior = posterior;
        this.draws = draws;
        int causes = posterior.Hypotheses.CauseCount;
        strands = [.. block.Strands.Select(strand => new StrandDraws(strand, draws, causes))];
        looksAlone = new double[causes + 1][];
        attacks = new double[causes + 1][];
    }

    /// <summary>Multiplies by the ratio of a hypothesis of two causes, or of one alone (given twice).</summary>
    public void MultiplyRatio(Span<double> lane, int h, int a, int b)
    {
        var looks = posterior.LooksAt(block);
        double value = posterior.ValueOf(block)[h];
        double sound = block.ReportedIfNot * block.LooksIfNot, ifSo = block.ReportedIfSo;
        double[] looksA = LooksAlone(a), attacksA = Attacks(a);
        if (a == b)
        {
            for (int draw = 0; draw < Draws; draw++) lane[draw] *= (((1 - attacksA[draw]) * sound) + (attacksA[draw] * ifSo * looksA[draw])) / value;
            return;
        }

        double[] looksB = LooksAlone(b), attacksB = Attacks(b);
        both.AsSpan().Fill(looks[h]);
        foreach (var strand in strands) strand.MultiplyRatio(both, a, b);
        double inverse = 1 / value;
        for (int draw = 0; draw < Draws; draw++)
        {
            double ga = attacksA[draw], gb = attacksB[draw];
            double some = (ga * (1 - gb) * looksA[draw]) + ((1 - ga) * gb * looksB[draw]) + (ga * gb * both[draw]);
            lane[draw] *= (((1 - ga) * (1 - gb) * sound) + (ifSo * some)) * inverse;
        }
    }

    private double[] LooksAlone(int cause)
    {
        if (looksAlone[cause] is { } known) return known;
        known = new double[Draws];
        known.AsSpan().Fill(posterior.LooksAt(block)[cause == posterior.Hypotheses.CauseCount ? posterior.Hypotheses.NotListed : cause]);
        foreach (var strand in strands) strand.MultiplyRatio(known, cause, cause);
        return looksAlone[cause] = known;
    }

    /// <summary>The chance of attacking the organ: drawn where the organ was affected and the chance is the table's, else as it stands.</summary>
    private double[] Attacks(int cause)
    {
        if (attacks[cause] is { } known) return known;
        known = new double[Draws];
        double chance = block.Attacks[cause];
        known.AsSpan().Fill(chance);
        var table = posterior.Hypotheses.Table;
        var organs = table.Find(table.Knowledge.FindCharacter(CaseReadings.OrgansAffected)!);
        if (block.IsAffected && chance == organs.Chance(cause, block.State))
        {
            var staying = draws.Of(organs, cause).AsSpan(block.State * Draws, Draws);
            for (int draw = 0; draw < Draws; draw++) known[draw] = 1 - staying[draw];
        }

        return attacks[cause] = known;
    }
}
