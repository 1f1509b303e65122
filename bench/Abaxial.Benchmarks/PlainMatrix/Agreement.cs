using Abaxial.Weighing;

namespace Abaxial.Benchmarks.PlainMatrix;

/// <summary>Before anything is measured: both ways of working it out must have the same answer.</summary>
internal static class Agreement
{
    /// <exception cref="InvalidOperationException">A probability differs by more than 1e-9, or an end of a band by more than 0.003 (the engine's bands give what negligible pairs hold to one of their causes).</exception>
    public static void Check(Answer answer, PlainTables plain)
    {
        double[] marginals = plain.Marginals(plain.Weigh());
        var bands = plain.Bands();
        foreach (var (place, entry) in answer.Causes.OrderBy(cause => cause.Cause.Index).Index())
        {
            if (Math.Abs(marginals[place] - entry.Probability) > 1e-9) throw new InvalidOperationException($"{entry.Cause}: {marginals[place]} the plain way, {entry.Probability} else.");
            if (Math.Abs(bands[place].Low - entry.Low) > 3e-3 || Math.Abs(bands[place].High - entry.High) > 3e-3) throw new InvalidOperationException($"{entry.Cause}: {bands[place]} the plain way, ({entry.Low}, {entry.High}) else.");
        }
    }
}
