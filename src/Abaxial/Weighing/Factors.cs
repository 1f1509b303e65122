using Abaxial.Knowledge;
using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>Turns readings into factors over the hypotheses.</summary>
internal static class Factors
{
    /// <summary>The factors of a strand.</summary>
    public static void Fill(Strand strand, Hypotheses hypotheses)
    {
        foreach (var one in strand.Readings)
        {
            if (one.HasSampleMean) strand.Factors.Add(Measured(one, hypotheses.Table));
            else if (!one.IsStateWise) strand.Factors.Add(new MixtureFactor(Likelihoods(one.Question, one.Present, hypotheses.Table)));
            else
            {
                foreach (int state in one.Question.States)
                {
                    strand.Factors.Add(new StateFactor(hypotheses.Staying(one.Question, state), one.Absent[state], one.Present[state]));
                }
            }
        }
    }

    /// <summary>By cause, the chance of the readings of a one-state character.</summary>
    public static double[] Likelihoods(Question question, ReadOnlySpan<double> ofState, HostTable table)
    {
        var likelihood = new double[table.Causes.Length + 1];
        for (int cause = 0; cause < likelihood.Length; cause++)
        {
            double sum = 0;
            for (int state = 0; state < ofState.Length; state++) sum += question.Chance(cause, state) * ofState[state];
            likelihood[cause] = sum;
        }

        return likelihood;
    }

    /// <summary>
    /// The sample mean against each cause's range: normal, the variance that between collections plus that of the mean of a sample, divided by the
    /// redundancy weight of the group.
    /// </summary>
    public static double Variance(MeasuredRange range, int sampleSize, double groupWeight) =>
        ((range.Between * range.Between) + (range.Within * range.Within / sampleSize)) / groupWeight;

    private static MeasuredFactor Measured(QuestionReadings readings, HostTable table)
    {
        var question = readings.Question;
        var (kinds, states) = CaseReadings.Needs(question.Character, question.Facet);
        var kind = kinds is null ? null : table.Find(kinds);
        int causes = table.Causes.Length;
        var density = new double[causes + 1];
        var has = new double[causes + 1];
        double top = 0;
        for (int cause = 0; cause <= causes; cause++)
        {
            var range = question.Ranges[cause] ?? question.BackgroundRange!;
            double variance = Variance(range, readings.SampleSize, question.Character.GroupWeight);
            double off = readings.SampleMean - range.Mean;
            // A floor keeps one wild value from deciding alone.
            density[cause] = (PlainMath.Exp(-off * off / (2 * variance)) + 1e-4) / Math.Sqrt(variance);
            has[cause] = kind is null ? 1 : kind.Chance(cause, states[0]);
            top = Math.Max(top, density[cause]);
        }

        for (int cause = 0; cause <= causes; cause++) density[cause] /= top;
        return new MeasuredFactor(density, has);
    }
}
