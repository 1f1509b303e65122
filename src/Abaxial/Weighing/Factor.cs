namespace Abaxial.Weighing;

/// <summary>
/// What the readings of one question (or of one state of a question) say of every hypothesis. All likelihoods are up to a constant that is the same for every
/// hypothesis.
/// </summary>
internal abstract class Factor
{
    /// <summary>Multiplies a likelihood of every hypothesis by this factor's.</summary>
    public abstract void MultiplyInto(Span<double> target, Hypotheses hypotheses);
}

/// <summary>One state that may be there or not.</summary>
/// <param name="staying">By hypothesis, the chance that the state is not there.</param>
/// <param name="absent">P(readings | it is not there).</param>
/// <param name="present">P(readings | it is there).</param>
internal sealed class StateFactor(double[] staying, double absent, double present) : Factor
{
    public override void MultiplyInto(Span<double> target, Hypotheses hypotheses) => Lanes.MultiplyLine(target, staying, absent - present, present);
}

/// <summary>A character with one true state. Two causes together show an even mixture.</summary>
/// <param name="likelihood">By cause, P(readings | cause).</param>
internal sealed class MixtureFactor(double[] likelihood) : Factor
{
    public override void MultiplyInto(Span<double> target, Hypotheses hypotheses)
    {
        int causes = hypotheses.CauseCount;
        for (int cause = 0; cause < causes; cause++) target[cause] *= likelihood[cause];
        target[hypotheses.NotListed] *= likelihood[causes];
        for (int a = 0; a < causes; a++)
        {
            var values = likelihood.AsSpan(a + 1, causes - a - 1);
            Lanes.MultiplySum(target.Slice(hypotheses.RowStart[a], values.Length), values, likelihood[a], 0.5);
        }
    }
}

/// <summary>A measurement. It belongs to the kind of thing it names: of two causes, in proportion to how often each has that kind.</summary>
/// <param name="density">By cause, the density of the sample mean.</param>
/// <param name="has">By cause, the chance of having that kind.</param>
internal sealed class MeasuredFactor(double[] density, double[] has) : Factor
{
    public override void MultiplyInto(Span<double> target, Hypotheses hypotheses)
    {
        for (int h = 0; h < hypotheses.Count; h++)
        {
            int a = hypotheses.First[h], b = hypotheses.Second[h];
            target[h] *= ((has[a] * density[a]) + (has[b] * density[b])) / (has[a] + has[b]);
        }
    }
}
