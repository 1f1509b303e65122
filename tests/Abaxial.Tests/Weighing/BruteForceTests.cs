using Abaxial.Knowledge;
using Abaxial.Tests.Weighing.Reference;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

/// <summary>The engine against everything written out by hand.</summary>
public sealed class BruteForceTests
{
    private static readonly Weigher Weigher = new(CaseText.Knowledge);

    private static readonly Dictionary<string, NaiveTables> Tables = CaseText.Knowledge.Document.Hosts.ToDictionary(host => host, host => new NaiveTables(CaseText.Knowledge.Document, host));

    private static readonly WeighOptions Bare = new() { Bands = false, NextLooks = false };

    [Fact]
    public void Every_probability_is_what_writing_everything_out_gives() => GenSample.Any.Holds(320, weighed =>
    {
        var tables = TablesOf(weighed);
        AssertSame(BruteForce.Posterior(new NaiveCase(weighed, tables), tables), Weigher.Weigh(weighed, Bare));
    });

    [Fact]
    public void Under_a_flat_prior_as_well() => GenSample.Any.Holds(30, weighed =>
    {
        var tables = TablesOf(weighed);
        AssertSame(BruteForce.Posterior(new NaiveCase(weighed, tables), tables, flat: true), Weigher.Weigh(weighed, Bare with { FlatPrior = true }));
    });

    [Fact]
    public void Evidence_is_the_odds_with_a_character_less_the_odds_of_the_case_without_it() => GenSample.Any.Holds(40, weighed =>
    {
        var tables = TablesOf(weighed);
        double with = SubjectOf(new NaiveCase(weighed, tables), tables);
        foreach (var evidence in Weigher.Weigh(weighed, Bare).Evidence)
        {
            string left = evidence.Character.Id;
            var others = weighed with { Looks = [.. weighed.Looks.Where(look => look.Character.Id != left && !HangsOn(look, left))] };
            double without = SubjectOf(new NaiveCase(others, tables), tables);
            double rounding = 1e-13 * (1 + (1 / Rest(with)) + (1 / Rest(without)));
            AssertNear(10 * (LogOdds(with) - LogOdds(without)), evidence.Decibans, 1e-11 + (10 * rounding), left);
        }
    });

    [Fact]
    public void Every_band_is_that_of_weighing_each_draw_anew() => GenSample.Any.Holds(24, weighed =>
    {
        var tables = TablesOf(weighed);
        var naive = new NaiveCase(weighed, tables);
        var bands = new NaiveBands(naive, tables, CaseText.Knowledge).Of(BruteForce.Posterior(naive, tables));
        foreach (var cause in Weigher.Weigh(weighed, new WeighOptions { NextLooks = false }).Causes)
        {
            AssertNear(bands[cause.Cause.Id].Low, cause.Low, 1e-9, $"low of {cause.Cause.Id}");
            AssertNear(bands[cause.Cause.Id].High, cause.High, 1e-9, $"high of {cause.Cause.Id}");
        }
    });

    [Fact]
    public void The_looks_offered_are_the_ten_worth_most_with_worth_and_outcomes_as_written_out() => GenSample.Any.Holds(12, weighed =>
    {
        var tables = TablesOf(weighed);
        var naive = new NaiveCase(weighed, tables);
        var answer = Weigher.Weigh(weighed, new WeighOptions { Bands = false });
        var all = new NaiveNextLooks(naive, tables, BruteForce.Posterior(naive, tables), Weigher.PurposeOf(weighed), answer.Standing <= Standing.Unlikely).All();
        Assert.Equal(Math.Min(10, all.Count), answer.NextLooks.Length);
        foreach (var (look, rank) in answer.NextLooks.Select((look, rank) => (look, rank)))
        {
            AssertNear(all[rank].Worth, look.Worth, 1e-9, $"worth of rank {rank}");
            var same = Assert.Single(all, other => other.Character == look.Character.Id && other.How == look.How.Word());
            AssertNear(same.Worth, look.Worth, 1e-9, $"worth of {same.Character} by {same.How}");
            Assert.Equal(same.Outcomes.Count, look.Outcomes.Length);
            foreach (var outcome in look.Outcomes)
            {
                string state = look.Character.States[outcome.State];
                AssertNear(same.Outcomes[state].Chance, outcome.Chance, 1e-9, $"{same.Character} by {same.How}: {state}");
                AssertNear(same.Outcomes[state].LateBlight, outcome.LateBlight, 1e-9, $"late blight after {same.Character} by {same.How}: {state}");
            }
        }
    });

    internal static NaiveTables TablesOf(Case weighed) => Tables[weighed.Host];

    internal static void AssertNear(double expected, double actual, double tolerance, string what) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {expected:R} written out, {actual:R} weighed.");

    private static void AssertSame(List<(NaiveHypothesis Hypothesis, double Probability)> expected, Answer actual)
    {
        foreach (var cause in actual.Causes) AssertClose(expected.Where(entry => entry.Hypothesis.Holds(cause.Cause.Id)).Sum(entry => entry.Probability), cause.Probability, cause.Cause.Id);
        AssertClose(expected.Where(entry => !entry.Hypothesis.IsListed).Sum(entry => entry.Probability), actual.NotListed, "not listed");
    }

    /// <summary>Agreement to 1e-12, and of small probabilities to 1e-11 of themselves.</summary>
    private static void AssertClose(double expected, double actual, string what) => AssertNear(expected, actual, Math.Max(1e-300, Math.Min(1e-12, 1e-11 * expected)), what);

    private static double SubjectOf(NaiveCase naive, NaiveTables tables) =>
        BruteForce.Posterior(naive, tables).Where(entry => entry.Hypothesis.Holds("late-blight")).Sum(entry => entry.Probability);

    private static bool HangsOn(Look look, string parent) => look.Character.WhenParent?.Id == parent || look.Character.OfCharacter?.Id == parent;

    private static double Rest(double probability) => Math.Max(1e-12, Math.Min(probability, 1 - probability));

    private static double LogOdds(double probability)
    {
        double held = Math.Clamp(probability, 1e-12, 1 - 1e-12);
        return Math.Log10(held / (1 - held));
    }
}
