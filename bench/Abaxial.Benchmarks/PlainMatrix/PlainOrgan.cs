using Abaxial.Weighing;

namespace Abaxial.Benchmarks.PlainMatrix;

/// <summary>One organ: how often each cause attacks it, and what was reported of it.</summary>
internal sealed class PlainOrgan
{
    /// <summary>The character that reports the organs.</summary>
    public const string Reports = CaseReadings.OrgansAffected;

    private const int Draws = RowDraws.Count;

    private readonly double[] attacks;
    private readonly double[,] drawn;

    private PlainOrgan(OrganBlock block, double[,] drawn)
    {
        Name = block.Organ;
        ReportedIfNot = block.ReportedIfNot;
        ReportedIfSo = block.ReportedIfSo;
        attacks = block.Attacks;
        this.drawn = drawn;
    }

    public string Name { get; }

    public double ReportedIfNot { get; }

    public double ReportedIfSo { get; }

    public static PlainOrgan Of(OrganBlock block, Hypotheses hypotheses)
    {
        var table = hypotheses.Table;
        var question = table.Find(table.Knowledge.FindCharacter(Reports)!);
        var draws = new RowDraws();
        var drawn = new double[block.Attacks.Length, Draws];
        for (int cause = 0; cause < block.Attacks.Length; cause++)
        {
            // A chance that the setting decides (a tuber from the store) is not one of the tables' and is not drawn.
            bool isDrawn = block.IsAffected && block.Attacks[cause] == question.Chance(cause, block.State);
            double[] row = draws.Of(question, cause);
            for (int draw = 0; draw < Draws; draw++) drawn[cause, draw] = isDrawn ? 1 - row[(block.State * Draws) + draw] : block.Attacks[cause];
        }

        return new PlainOrgan(block, drawn);
    }

    public double Attacks(int cause, int draw) => draw < 0 ? attacks[cause] : drawn[cause, draw];
}
