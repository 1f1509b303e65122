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

    /// <summary>The likelihood of reports and looks for one cause alone, given the likelihood of the looks where it attacks.</summary>
    public double Alone(int cause, double looks, double reportedIfNot, double reportedIfSo)
    {
        double attacks = Attacks[cause];
        return ((1 - attacks) * reportedIfNot * LooksIfNot) + (attacks * reportedIfSo * looks);
    }

    /// <summary>The likelihood for two causes, given the likelihood of the looks where the first attacks, the second, or both.</summary>
    public double Together(int a, int b, double looksA, double looksB, double looksBoth, double reportedIfNot, double reportedIfSo)
    {
        double ga = Attacks[a], gb = Attacks[b];
        double some = (ga * (1 - gb) * looksA) + ((1 - ga) * gb * looksB) + (ga * gb * looksBoth);
        return ((1 - ga) * (1 - gb) * reportedIfNot * LooksIfNot) + (reportedIfSo * some);
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
        int next = causes;
        for (int a = 0; a < causes; a++)
        {
            for (int b = a + 1; b < causes; b++, next++) target[next] = Together(a, b, looks[a], looks[b], looks[next], ifNot, ifSo);
        }
    }
}
