using System.Collections.Concurrent;
using Abaxial.Knowledge;
using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>
/// Fixed draws of the tables' rows about their values: how far the truth may lie from what is written. Each cell is drawn on the logit scale with the
/// variance that its strength n gives a share p, 1 / (n p (1 - p)), held under a cap for very rare states; one-state rows are divided by their sum again.
/// </summary>
/// <remarks>Computed once a row and kept: the draws depend on the knowledge alone.</remarks>
internal sealed class RowDraws
{
    /// <summary>How many draws a band rests on.</summary>
    public const int Count = 64;

    private const double MostSigma = 0.8;

    // Standard normal quantiles at (i + 1/2) / 64, i = 32..63; the lower half mirrors them. Computed with Python 3.11, statistics.NormalDist.inv_cdf.
    private static readonly double[] UpperScores =
    [
        0.019584285230127, 0.058782936068943, 0.098072152488661, 0.137513402144336, 0.177169820991740, 0.217106947210130, 0.257393526100938, 0.298102412930487,
        0.339311606538817, 0.381105454763556, 0.423576084201200, 0.466825122852590, 0.510965806738247, 0.556125593618691, 0.602449453164424, 0.650104070647995,
        0.699283302383220, 0.750215375467940, 0.803172565597918, 0.858484474141832, 0.916556667533112, 0.977897543940542, 1.043158263318454, 1.113194277160928,
        1.189164350199337, 1.272698641190536, 1.366203816372098, 1.473467577947101, 1.601008664886076, 1.761670410363066, 1.987427885929896, 2.417559016236505,
    ];

    private const ulong FnvStart = 14695981039346656037;
    private const ulong FnvPrime = 1099511628211;

    private readonly ConcurrentDictionary<(Question Question, int Cause), double[]> rows = new();
    private readonly ConcurrentDictionary<Cause, double[]> weights = new();

    /// <summary>
    /// A row's draws: state by state, <see cref="Count"/> values each. Where states are read one by one, the chance that the state is not there; of a one-state
    /// character, the chance that it is.
    /// </summary>
    public double[] Of(Question question, int cause) => rows.GetOrAdd((question, cause), static key => Draw(key.Question, key.Cause));

    /// <summary>Draws of the factor by which a cause may be more or less common than its weight says.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="spread">The standard deviation of the factor's logarithm.</param>
    public double[] OfWeight(Cause cause, double spread) => weights.GetOrAdd(cause, static (one, spread) =>
    {
        var factors = new double[Count];
        ulong seed = FnvStart;
        foreach (char letter in one.Id) seed = (seed ^ letter) * FnvPrime;
        Shuffle(factors, seed);
        for (int draw = 0; draw < Count; draw++) factors[draw] = PlainMath.Exp(spread * factors[draw]);
        return factors;
    }, spread);

    private static double[] Draw(Question question, int cause)
    {
        int states = question.StateCount;
        var drawn = new double[states * Count];
        var scores = new double[Count];
        bool stateWise = question.IsStateWise;
        double strength = question.Strengths[cause];
        for (int state = 0; state < states; state++)
        {
            double p = question.Chance(cause, state);
            if (stateWise) drawn.AsSpan(state * Count, Count).Fill(1);
            if (p <= 0 || (stateWise && state == question.Character.EmptyState)) continue;
            double sigma = p >= 1 ? 0 : Math.Min(MostSigma, 1 / Math.Sqrt(strength * p * (1 - p)));
            Shuffle(scores, Seed(question, cause, state));
            for (int draw = 0; draw < Count; draw++)
            {
                double odds = p * PlainMath.Exp(sigma * scores[draw]);
                drawn[(state * Count) + draw] = stateWise ? (1 - p) / (1 - p + odds) : odds / (1 - p + odds);
            }
        }

        if (!stateWise) DivideBySum(drawn, states);
        return drawn;
    }

    private static void DivideBySum(double[] drawn, int states)
    {
        for (int draw = 0; draw < Count; draw++)
        {
            double sum = 0;
            for (int state = 0; state < states; state++) sum += drawn[(state * Count) + draw];
            for (int state = 0; state < states; state++) drawn[(state * Count) + draw] /= sum;
        }
    }

    /// <summary>A seed that depends on the place in the tables alone (FNV-1a over the numbers).</summary>
    private static ulong Seed(Question question, int cause, int state)
    {
        ulong hash = FnvStart;
        foreach (char letter in question.Character.Id) hash = (hash ^ letter) * FnvPrime;
        foreach (char letter in question.Facet ?? "") hash = (hash ^ letter) * FnvPrime;
        hash = (hash ^ (uint)cause) * FnvPrime;
        return (hash ^ (uint)state) * FnvPrime;
    }

    /// <summary>The normal scores in an order of their own (Fisher and Yates, driven by xorshift).</summary>
    private static void Shuffle(double[] scores, ulong seed)
    {
        for (int i = 0; i < Count / 2; i++)
        {
            scores[(Count / 2) + i] = UpperScores[i];
            scores[(Count / 2) - 1 - i] = -UpperScores[i];
        }

        ulong x = seed | 1;
        for (int i = Count - 1; i > 0; i--)
        {
            x ^= x << 13;
            x ^= x >> 7;
            x ^= x << 17;
            int j = (int)((x >> 11) % (ulong)(i + 1));
            (scores[i], scores[j]) = (scores[j], scores[i]);
        }
    }
}
