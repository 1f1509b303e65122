using Abaxial.Knowledge;
using Abaxial.Tests.Weighing.Reference;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>What must hold of standing, advice and next looks in every answer.</summary>
public sealed class StandingLawsTests
{
    private static readonly KnowledgeBase Knowledge = CaseText.Knowledge;

    private static readonly Weigher Weigher = new(Knowledge);

    /// <summary>Standing does not hang on what could be looked at next.</summary>
    private static readonly WeighOptions NoOutlook = new() { NextLooks = false };

    private static readonly ContractRules Rules = new(Weigher);

    private static readonly Gen<Case> TrialWithMore = Gen.Select(Gen.OneOf(TrialTests.Cases.ToArray()), GenSample.Any, (trial, other) =>
        trial with { Looks = [.. trial.Looks, .. other.Host == trial.Host ? other.Looks.Take(2) : []] });

    /// <summary>Samples of all kinds, and the project's own cases with a look or two more.</summary>
    private static readonly Gen<Case> Any = Gen.OneOf(GenSample.Any, TrialWithMore);

    [Fact]
    public void Every_stated_rule_holds_of_every_answer() => Any.Holds(1_000, weighed => Assert.Empty(Rules.Broken(weighed, Weigher.Weigh(weighed))));

    [Fact]
    public void Every_stated_rule_holds_of_the_projects_own_cases() => Assert.All(TrialTests.Cases, weighed => Assert.Empty(Rules.Broken(weighed, Weigher.Weigh(weighed))));

    [Fact]
    public void Every_standing_every_reason_and_every_advice_occurs()
    {
        var answers = TrialTests.Cases.Concat(Enumerable.Range(0, 300).Select(seed => GenSample.Build(new Random(seed)))).Select(weighed => Weigher.Weigh(weighed)).ToArray();
        Assert.Equal(Enum.GetValues<Standing>(), answers.Select(answer => answer.Standing).Distinct().Order());
        Assert.Equal(Enum.GetValues<StandingReason>(), answers.Select(answer => answer.StandingBecause).Distinct().Order());
        Assert.Equal(Enum.GetValues<Advice>(), answers.Select(answer => answer.Advice).Distinct().Order());
        Assert.Contains(answers, answer => answer.Misfit);
    }

    [Fact]
    public void Worth_before_its_cost_is_never_negative() => Any.Holds(1_000, weighed =>
    {
        foreach (var look in Weigher.Weigh(weighed, new WeighOptions { Bands = false }).NextLooks)
        {
            var costs = Knowledge.Document.Costs;
            double cost = (look.Minutes * costs.Minute) + (look.WaitHours * costs.WaitHour) + costs.Ways.GetValueOrDefault(look.How.Word()) + costs.Characters.GetValueOrDefault(look.Character.Id);
            Assert.True(look.Worth + cost >= -1e-12, $"{look.Character}: {look.Worth} at a cost of {cost}.");
        }
    });

    [Fact]
    public void What_the_outcomes_of_a_look_make_of_late_blight_comes_to_what_it_is_today() => Any.Holds(500, weighed =>
    {
        // Hypotheses that hold next to nothing are left out of the outlook; hence not to the last digit.
        var answer = Weigher.Weigh(weighed, new WeighOptions { Bands = false });
        Assert.All(answer.NextLooks, look => Assert.Equal(answer.LateBlight.Probability, look.Outcomes.Sum(outcome => outcome.Chance * outcome.LateBlight), 0.001));
    });

    [Fact]
    public void White_down_that_somebody_saw_is_never_ruled_out_wherever_it_grows()
    {
        var growths = Knowledge.Characters.Where(character => character.IsSign && character.StateIndex("white-down") >= 0).ToArray();
        Assert.Contains(growths, character => character.Id == "leaf-upper-growth"); // once ruled out over, by a wet-morning look at the lower side alone
        foreach (var ruledOut in TrialTests.Cases.Where(weighed => Weigher.Weigh(weighed, NoOutlook).Standing == Standing.RuledOut))
        {
            foreach (var growth in growths.Where(character => character.AppliesTo(ruledOut.Host)))
            {
                var down = new Look { Character = growth, How = Way.HandLens, States = [growth.StateIndex("white-down")], Surface = Surface.DryDay, By = Observer.Specialist };
                Assert.NotEqual(Standing.RuledOut, Weigher.Weigh(ruledOut with { Looks = ruledOut.Looks.Add(down) }, NoOutlook).Standing);
            }
        }
    }

    /// <summary>The case that showed it: the lower side was bare on a wet morning, and a specialist saw white down on the upper side.</summary>
    [Fact]
    public void A_bare_lower_side_does_not_rule_out_what_was_seen_on_the_upper_side()
    {
        const string looks = """
            {"character":"organs-affected","states":["leaf"],"how":"naked-eye","by":"diagnostician"},{"character":"leaf-lesion-size","states":["small-2-5mm","medium-5-12mm"],"how":"naked-eye","by":"diagnostician"},
            {"character":"leaf-lesion-color","states":["dark-brown-to-black"],"how":"naked-eye","by":"diagnostician"},{"character":"leaf-position","states":["lower-leaves-first"],"how":"naked-eye","by":"diagnostician"},
            {"character":"concentric-rings","state":"faint","how":"hand-lens","by":"diagnostician"},{"character":"leaf-yellowing","state":"around-spots","how":"naked-eye","by":"diagnostician"},
            {"character":"leaf-lesion-border","states":["yellow-halo"],"how":"naked-eye","by":"diagnostician"},{"character":"pycnidia","state":"absent","how":"hand-lens","by":"diagnostician"},
            {"character":"leaf-underside-growth","states":["none"],"how":"hand-lens","surface":"wet-morning","by":"scout"},{"character":"onset","state":"several-weeks","how":"asked","by":"grower"}
            """;
        const string seen = """,{"character":"leaf-upper-growth","states":["white-down"],"how":"naked-eye","surface":"dry-day","by":"specialist"}""";
        Assert.Equal(Standing.RuledOut, Weigher.Weigh(Read(looks)).Standing); // without it the lower side is enough
        Assert.Equal(Standing.Unlikely, Weigher.Weigh(Read(looks + seen)).Standing);

        static Case Read(string looks) => CaseReader.Read(System.Text.Encoding.UTF8.GetBytes($$"""{"format":"abaxial-case/1","host":"tomato","system":"garden","stage":"fruiting","noticed":"2026-08-01","looks":[{{looks}}]}"""), Knowledge).Case!;
    }

    [Fact]
    public void What_growers_saw_neither_proves_nor_rules_out() => Any.Holds(1_000, weighed =>
        AssertUndecided(weighed with { Looks = [.. weighed.Looks.Select(look => look with { By = Observer.Grower })] }));

    [Theory]
    [InlineData(Way.Photo)]
    [InlineData(Way.Asked)]
    public void What_a_photograph_shows_or_somebody_tells_neither_proves_nor_rules_out(Way way) => Any.Holds(500, weighed =>
        AssertUndecided(weighed with { Looks = [.. weighed.Looks.Where(look => look.Character.Accepts(way)).Select(look => look with { How = way, By = Observer.Specialist })] }));

    [Theory]
    [InlineData("rotted")]
    [InlineData("heated-or-frozen")]
    public void Rotted_or_heated_tissue_never_rules_out(string condition) => Any.Holds(500, weighed =>
    {
        var state = Knowledge.FindCharacter("sample-condition")!;
        var spoilt = weighed with { Looks = weighed.Looks.Add(new Look { Character = state, How = Way.NakedEye, States = [state.StateIndex(condition)], By = Observer.Diagnostician }) };
        Assert.NotEqual(Standing.RuledOut, Weigher.Weigh(spoilt, NoOutlook).Standing);
    });

    [Fact]
    public void Without_the_looks_that_would_show_it_late_blight_is_never_ruled_out()
    {
        string[] showing = [.. Knowledge.Document.Showing.Organs.Values.Select(organ => organ.Growth), .. Knowledge.Document.Showing.Test.Keys, .. Knowledge.Document.Showing.ProvenOtherwise.Values.SelectMany(tests => tests.Keys)];
        var ruledOut = TrialTests.Cases.Where(weighed => Weigher.Weigh(weighed, NoOutlook).Standing == Standing.RuledOut).ToArray();
        Assert.NotEmpty(ruledOut);
        Assert.All(ruledOut, weighed => Assert.NotEqual(Standing.RuledOut, Weigher.Weigh(weighed with { Looks = [.. weighed.Looks.Where(look => !showing.Contains(look.Character.Id))] }, NoOutlook).Standing));
    }

    [Fact]
    public void Without_knowing_which_organs_are_affected_late_blight_is_never_ruled_out() => Any.Holds(500, weighed =>
    {
        var blind = weighed with { Looks = [.. weighed.Looks.Where(look => look.Character.Organ is null && look.Character.Id != "organs-affected")] };
        Assert.NotEqual(Standing.RuledOut, Weigher.Weigh(blind, NoOutlook).Standing);
    });

    private static void AssertUndecided(Case weighed)
    {
        var answer = Weigher.Weigh(weighed, NoOutlook);
        Assert.NotEqual(Standing.RuledOut, answer.Standing);
        Assert.Equal(StandingReason.Probability, answer.StandingBecause);
    }
}
