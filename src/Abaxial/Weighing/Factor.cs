namespace Abaxial.Weighing;

/// <summary>
/// What the readings of one question (or of one state of a question) say of every hypothesis: a likelihood for each cause alone and the rule for two together.
/// All likelihoods are up to a constant that is the same for every hypothesis.
/// </summary>
internal abstract class Factor
{
    /// <summary>The likelihood of one cause alone (or, at the last place, of the one that is not listed).</summary>
    public abstract double Alone(int cause);

    /// <summary>The likelihood of two causes on one plant.</summary>
    public abstract double Together(int a, int b);

    /// <summary>Multiplies a likelihood of every hypothesis by this factor's.</summary>
    public virtual void MultiplyInto(Span<double> target, Hypotheses hypotheses)
    {
        int causes = hypotheses.CauseCount;
        for (int cause = 0; cause < causes; cause++) target[cause] *= Alone(cause);
        target[hypotheses.NotListed] *= Alone(causes);
        int next = causes;
        for (int a = 0; a < causes; a++)
        {
            for (int b = a + 1; b < causes; b++) target[next++] *= Together(a, b);
        }
    }

    public double Of(int hypothesis, Hypotheses hypotheses)
    {
        int a = hypotheses.First[hypothesis], b = hypotheses.Second[hypothesis];
        return a == b ? Alone(a) : Together(a, b);
    }
}

/// <summary>
/// One state that may be there or not. Two causes together lack it only where both do (noisy-or).
/// </summary>
/// <param name="staying">By cause, the chance that the state is not there.</param>
/// <param name="absent">P(readings | it is not there).</param>
/// <param name="present">P(readings | it is there).</param>
internal sealed class StateFactor(double[] staying, double absent, double present) : Factor
{
    public double[] Staying => staying;

    public double Absent => absent;

    public double Present => present;

    public override double Alone(int cause) => present + ((absent - present) * staying[cause]);

    public override double Together(int a, int b) => present + ((absent - present) * staying[a] * staying[b]);

    public override void MultiplyInto(Span<double> target, Hypotheses hypotheses)
    {
        int causes = hypotheses.CauseCount;
        for (int cause = 0; cause < causes; cause++) target[cause] *= Alone(cause);
        target[hypotheses.NotListed] *= Alone(causes);
        for (int a = 0; a < causes; a++)
        {
            double slope = (absent - present) * staying[a];
            var values = staying.AsSpan(a + 1, causes - a - 1);
            Lanes.MultiplyLine(target.Slice(hypotheses.RowStart[a], values.Length), values, slope, present);
        }
    }
}

/// <summary>A character with one true state. Two causes together show an even mixture.</summary>
/// <param name="likelihood">By cause, P(readings | cause).</param>
internal sealed class MixtureFactor(double[] likelihood) : Factor
{
    public override double Alone(int cause) => likelihood[cause];

    public override double Together(int a, int b) => 0.5 * (likelihood[a] + likelihood[b]);

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
    public override double Alone(int cause) => density[cause];

    public override double Together(int a, int b) => ((has[a] * density[a]) + (has[b] * density[b])) / (has[a] + has[b]);
}
