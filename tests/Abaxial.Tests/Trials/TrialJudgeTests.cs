using System.Text;
using Abaxial.Files.Trials;
using Abaxial.Knowledge;
using Abaxial.Tests.Cli;

namespace Abaxial.Tests.Trials;

public sealed class TrialJudgeTests
{
    private static readonly TrialJudge Judge = new(BuiltIn.Solanum());

    private static readonly Trial Septoria = new() { Id = "septoria", File = "x.yaml", Line = 1, Case = Encoding.UTF8.GetBytes(ExampleCases.Septoria) };

    [Fact]
    public void A_trial_that_asks_for_what_comes_is_passed() =>
        Assert.True(Judge.Judge(Septoria with { Leads = ["early-blight", "septoria-leaf-spot"], AtMost = 0.5, AtLeast = 0, Standings = ["unlikely", "open"], AdviceNot = ["act"] }).IsPassed);

    [Fact]
    public void Each_thing_asked_for_that_does_not_come_is_a_miss()
    {
        Assert.Equal([TrialMiss.Leader], Judge.Judge(Septoria with { Leads = ["early-blight"] }).Misses);
        Assert.Equal([TrialMiss.TooProbable], Judge.Judge(Septoria with { AtMost = 0 }).Misses);
        Assert.Equal([TrialMiss.TooImprobable], Judge.Judge(Septoria with { AtLeast = 1 }).Misses);
        Assert.Equal([TrialMiss.Standing], Judge.Judge(Septoria with { Standings = ["confirmed"] }).Misses);
        Assert.Equal([TrialMiss.Advice], Judge.Judge(Septoria with { Advice = ["act"] }).Misses);
        Assert.Equal([TrialMiss.Advice], Judge.Judge(Septoria with { AdviceNot = ["act", "hold", "advise", "send-on"] }).Misses);
    }

    [Fact]
    public void A_case_that_is_refused_is_a_miss_with_its_problems()
    {
        var result = Judge.Judge(Septoria with { Case = Encoding.UTF8.GetBytes(ExampleCases.Ringed) });
        Assert.Equal([TrialMiss.Refused], result.Misses);
        Assert.Equal("/looks/0/state", Assert.Single(result.Problems).At);
    }
}
