using System.Numerics;

namespace Abaxial.Weighing;

/// <summary>
/// One organ: whether each cause attacks it, what was reported of it, and what the looks at it say given that it is attacked. Two causes may attack it one alone or
/// both: what is seen there is then of the one, of the other or of the two together.
/// </summary>
internal sealed class OrganBlock
{
    /// <summary>The organ, a state of organs-affected.</summary>
    public required string Organ { get; init; }

    /// <summary>The index of that state.</summary>
    public required int State { get; init; }

    /// <summary>By cause, the chance that it attacks the organ.</summary>
    public required double[] Attacks { get; init; }

    /// <summary>P(reports of this organ | it is not affected).</summary>
    public required double ReportedIfNot { get; init; }

    /// <summary>P(reports of this organ | it is affected).</summary>
    public required double ReportedIfSo { get; init; }

    /// <summary>P(looks at it | it is not attacked): zero where a look shows something there.</summary>
    public required double LooksIfNot { get; init; }

    public List<Strand> Strands { get; } = [];

    /// <summary>The organ was reported or a look at it shows something.</summary>
    public required bool IsAffected { get; init; }

    /// <summary>Whether the case speaks of this organ at all: otherwise its likelihood is one everywhere.</summary>
    public bool Says => Strands.Count > 0 || ReportedIfNot != 1 || ReportedIfSo != 1;

    /// <summary>The likelihood of reports and looks for one cause alone, given the likelihood of the looks where it attacks.</summary>
    private double Alone(int cause, double looks, double reportedIfNot, double reportedIfSo)
    {
        double attacks = Attacks[cause];
        return ((1 - attacks) * reportedIfNot * LooksIfNot) + (attacks * reportedIfSo * looks);
    }

    /// <summary>Fills the likelihood of every hypothesis.</summary>
    /// <param name="target">Receives it, by hypothesis.</param>
    /// <param name="looks">By hypothesis, the likelihood of the looks where all its causes attack the organ.</param>
    /// <param name="hypotheses">The hypotheses.</param>
    /// <param name="ignoreReports">Leave what was reported of the organs out.</param>
    public void Fill(Span<double> target, ReadOnlySpan<double> looks, Hypotheses hypotheses, bool ignoreReports = false)
    {
        double ifNot = ignoreReports ? 1 : ReportedIfNot, ifSo = ignoreReports ? 1 : ReportedIfSo;
        int causes = hypotheses.CauseCount;
        for (int cause = 0; cause < causes; cause++) target[cause] = Alone(cause, looks[cause], ifNot, ifSo);
        target[hypotheses.NotListed] = Alone(causes, looks[hypotheses.NotListed], ifNot, ifSo);
        for (int a = 0; a < causes; a++)
        {
            int row = hypotheses.RowStart[a];
            Row(target[row..], Attacks[a], looks[a], Attacks.AsSpan(a + 1, causes - a - 1), looks[(a + 1)..causes], looks[row..], ifNot * LooksIfNot, ifSo);
        }
    }

    /// <summary>One row of pairs: the first cause with each that follows it.</summary>
    private static void Row(Span<double> target, double ga, double looksA, ReadOnlySpan<double> gb, ReadOnlySpan<double> looksB, ReadOnlySpan<double> both, double sound, double ifSo)
    {
        double stays = 1 - ga, onlyA = ga * looksA;
        int b = 0;
        if (Vector.IsHardwareAccelerated)
        {
            var one = Vector<double>.One;
            for (; b <= gb.Length - Vector<double>.Count; b += Vector<double>.Count)
            {
                var g = new Vector<double>(gb[b..]);
                var rest = one - g;
                var some = ((rest * onlyA) + (g * stays * new Vector<double>(looksB[b..]))) + (g * ga * new Vector<double>(both[b..]));
                ((rest * stays * sound) + (some * ifSo)).CopyTo(target[b..]);
            }
        }

        for (; b < gb.Length; b++)
        {
            double rest = 1 - gb[b];
            double some = ((rest * onlyA) + (gb[b] * stays * looksB[b])) + (gb[b] * ga * both[b]);
            target[b] = (rest * stays * sound) + (some * ifSo);
        }
    }
}
