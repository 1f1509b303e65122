using System.Collections.Concurrent;
using Abaxial.Tests.Weighing.Reference;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

/// <summary>Of the samples that the model itself would send, those said to be late blight with a probability of 30 % are late blight three times in ten: a check of the code, not of the knowledge.</summary>
public sealed class CalibrationTests
{
    private const int Samples = 20_000;
    private const int Bins = 10;

    private static readonly Lazy<(double Said, bool IsSo, double LeaderSaid, bool LeaderIsSo)[]> Weighed = new(Weigh);

    [Fact]
    public void Late_blight_is_there_as_often_as_it_is_said_to_be() =>
        AssertCalibrated("late blight", Weighed.Value.Select(sample => (sample.Said, sample.IsSo)));

    [Fact]
    public void The_leading_cause_is_there_as_often_as_it_is_said_to_be() =>
        AssertCalibrated("leading cause", Weighed.Value.Select(sample => (sample.LeaderSaid, sample.LeaderIsSo)));

    private static (double Said, bool IsSo, double LeaderSaid, bool LeaderIsSo)[] Weigh()
    {
        var knowledge = CaseText.Knowledge;
        var weigher = new Weigher(knowledge);
        var tables = knowledge.Document.Hosts.ToDictionary(host => host, host => new NaiveTables(knowledge.Document, host));
        var priors = new ConcurrentDictionary<(string Host, string System, string Stage), (NaiveHypothesis[] Hypotheses, double[] UpTo)>();
        var samples = new (double Said, bool IsSo, double LeaderSaid, bool LeaderIsSo)[Samples];
        Parallel.For(0, Samples, seed =>
        {
            var (weighed, truth) = SimulatedSample.Draw(new Random(seed), knowledge, host => tables[host], (frame, table) => priors.GetOrAdd((frame.Host, frame.System!, frame.Stage!), _ => UpTo(frame, table)));
            var answer = weigher.Weigh(weighed, new WeighOptions { Bands = false, NextLooks = false });
            var leader = answer.Causes[0];
            samples[seed] = (answer.LateBlight.Probability, truth.Contains("late-blight"), leader.Probability, truth.Contains(leader.Cause.Id));
        });
        return samples;
    }

    private static (NaiveHypothesis[] Hypotheses, double[] UpTo) UpTo(Case frame, NaiveTables tables)
    {
        var priors = NaivePriors.Of(frame, tables);
        double sum = 0;
        return ([.. priors.Select(entry => entry.Hypothesis)], [.. priors.Select(entry => sum += entry.Prior)]);
    }

    private static void AssertCalibrated(string what, IEnumerable<(double Said, bool IsSo)> samples)
    {
        double error = 0;
        var lines = new List<string> { $"{what}: said, found, samples" };
        foreach (var bin in samples.GroupBy(sample => Math.Min(Bins - 1, (int)(sample.Said * Bins))).OrderBy(bin => bin.Key))
        {
            double said = bin.Average(sample => sample.Said), found = bin.Average(sample => sample.IsSo ? 1.0 : 0);
            error += Math.Abs(said - found) * bin.Count() / Samples;
            lines.Add($"{said,8:P1} {found,8:P1} {bin.Count(),7}");
        }

        lines.Add($"expected calibration error {error:F4}");
        foreach (string line in lines) TestContext.Current.TestOutputHelper?.WriteLine(line);
        Assert.True(error < 0.02, string.Join(Environment.NewLine, lines));
    }
}
