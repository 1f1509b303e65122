using Abaxial.Knowledge;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>What must hold of the looks of every case.</summary>
public sealed class LawsTests
{
    private static readonly KnowledgeBase Knowledge = CaseText.Knowledge;

    private static readonly Weigher Weigher = new(Knowledge);

    private static readonly WeighOptions NoOutlook = new() { NextLooks = false };

    private static readonly WeighOptions Bare = new() { Bands = false, NextLooks = false };

    [Fact]
    public void The_order_of_looks_never_matters() => OrderNeverMatters(1_000, NoOutlook);

    [Fact]
    public void Nor_to_the_looks_to_make_next() => OrderNeverMatters(150, new WeighOptions());

    [Fact]
    public void Being_unsure_moves_nothing() => Same(
        1_000,
        weighed => Knowledge.Characters.Where(character => character.AppliesTo(weighed.Host)).Select((character, i) => (character, i)).Where(entry => entry.i % 11 == weighed.Looks.Length % 11)
            .Select(entry => new Look { Character = entry.character, How = entry.character.Ways[0], IsUnsure = true, By = Observer.Specialist }));

    [Fact]
    public void The_same_look_twice_counts_once() => Same(1_000, weighed => weighed.Looks.Where((_, place) => place % 2 == 0).Select(look => look with { Note = "again", At = "2026-08-01" }));

    [Fact]
    public void A_test_without_its_control_moves_nothing() => Same(
        1_000,
        weighed => Knowledge.Characters.Where(character => character.Voids.Contains(true) && character.AppliesTo(weighed.Host))
            .Select(character => new Look { Character = character, How = Way.BenchTest, States = [character.Voids.LastIndexOf(true)], By = Observer.Specialist }));

    [Fact]
    public void A_single_sign_that_a_scout_or_better_saw_is_not_undone() => GenSample.Any.Holds(1_000, weighed =>
    {
        foreach (string id in new[] { "pycnidia", "spotted-wilt-strip", "soft-rot-slice" })
        {
            var sign = Knowledge.FindCharacter(id)!;
            var seen = new Look { Character = sign, How = sign.Ways[0], States = [0], By = Observer.Scout, Person = "one" };
            var none = seen with { How = sign.Ways[^1], States = [sign.EmptyState], By = Observer.Specialist, Person = "another" };
            AssertSameChances(Weigher.Weigh(With(weighed, seen), Bare), Weigher.Weigh(With(weighed, seen, none), Bare), 1e-12);
        }
    });

    [Fact]
    public void White_growth_that_was_seen_is_there_whatever_a_later_look_finds() => GenSample.Any.Holds(1_000, weighed =>
    {
        var growth = Knowledge.FindCharacter("leaf-underside-growth")!;
        int white = growth.StateIndex("white-down");
        var seen = new Look { Character = growth, How = Way.HandLens, Surface = Surface.WetMorning, States = [white], By = Observer.Scout, Person = "one" };
        var none = seen with { States = [growth.EmptyState], By = Observer.Specialist, Person = "another" };
        var readings = Weigher.Explain(With(weighed, seen, none), false, true).Readings.Find(growth.Id)!.Readings[0];
        Assert.Equal((1.0, 0.0), (readings.Present[white], readings.Absent[white]));
    });

    // Where a state is rarer under every cause than a misreading, a second reader is worth more than the first, who may have misread; so the states here are not rare.
    [Theory]
    [InlineData("concentric-rings", "absent")]
    [InlineData("onset", "several-weeks")]
    [InlineData("progress", "still-spreading")]
    [InlineData("leaf-texture", "soft-water-soaked")]
    [InlineData("leaf-texture", "papery-dry")]
    [InlineData("dead-center", "no-dead-center")]
    [InlineData("leaf-yellowing", "around-spots")]
    [InlineData("other-plants-affected", "related-plants-too")]
    public void Two_people_count_for_more_than_one_and_less_than_two(string id, string state)
    {
        var character = Knowledge.FindCharacter(id)!;
        foreach (string host in Knowledge.Document.Hosts)
        {
            Look By(string person) => new() { Character = character, How = character.Ways[0], States = [character.StateIndex(state)], By = Observer.Diagnostician, Person = person };
            double Decibans(params Look[] looks) => Weigher.Weigh(new Case { Knowledge = Knowledge, Host = host, Looks = [Leaf, .. looks] }, Bare).Evidence.Single(one => one.Character == character).Decibans;
            double one = Decibans(By("one")), two = Decibans(By("one"), By("another"));
            Assert.True(Math.Sign(one) == Math.Sign(two) && Math.Abs(two) > Math.Abs(one) && Math.Abs(two) < 2 * Math.Abs(one), $"{host}: {one} alone, {two} together.");
        }
    }

    [Fact]
    public void A_look_that_every_hypothesis_finds_equally_likely_moves_nothing()
    {
        var knowledge = EvenKnowledge.Without("onset");
        var even = new Weigher(knowledge);
        var onset = knowledge.FindCharacter("onset")!;
        GenSample.Any.Holds(300, weighed =>
        {
            var moved = EvenKnowledge.Moved(weighed, knowledge);
            var others = moved with { Looks = [.. moved.Looks.Where(look => look.Character != onset)] };
            var told = others with { Looks = others.Looks.Add(new Look { Character = onset, How = Way.Asked, States = [weighed.Looks.Length % 3], By = Observer.Grower }) };
            var (before, after) = (even.Weigh(others, Bare), even.Weigh(told, Bare));
            AssertSameChances(before, after, 1e-12);
            Assert.True(Math.Abs(after.Evidence.Single(one => one.Character == onset).Decibans) < 1e-2);
        });
    }

    [Fact]
    public void What_a_look_says_between_two_causes_alone_does_not_hang_on_what_else_was_looked_at() => GenSample.Any.Holds(300, weighed =>
    {
        var free = new[] { "onset", "progress", "other-plants-affected", "cultivar-resistance" }.Select(id => Knowledge.FindCharacter(id)!).ToArray();
        var added = free[weighed.Looks.Length % 4];
        var rest = weighed with { Looks = [.. weighed.Looks.Where(look => look.Character != added)] };
        var look = new Look { Character = added, How = Way.Asked, States = [0], By = Observer.Scout };
        double[] Shift(Case without)
        {
            double[] before = Weigher.Explain(without, false, true).Probability, after = Weigher.Explain(With(without, look), false, true).Probability;
            return [.. Enumerable.Range(1, 10).Select(cause => Math.Log(after[cause] / after[0]) - Math.Log(before[cause] / before[0]))];
        }

        double[] here = Shift(rest), bare = Shift(rest with { Looks = [] });
        Assert.All(here.Zip(bare), pair => Assert.Equal(pair.Second, pair.First, 1e-9));
    });

    [Fact]
    public void A_prior_factor_multiplies_the_odds_of_every_hypothesis_with_its_cause() => GenSample.Any.Holds(300, weighed =>
    {
        var field = weighed with { System = "field", Stage = null, PriorFactors = [], Looks = [.. weighed.Looks.Where(look => look.Character.Id != "watering")] };
        double[] before = Weigher.Explain(field, false, true).Probability, after = Weigher.Explain(field with { PriorFactors = [new PriorFactor(Knowledge.Subject, 0.4, "weather")] }, false, true).Probability;
        var hypotheses = Weigher.Explain(field, false, true).Hypotheses;
        for (int h = 0; h < hypotheses.Count; h++)
        {
            double expected = hypotheses.Holds(h, hypotheses.Subject) ? 0.4 : 1;
            Assert.Equal(expected, after[h] / after[hypotheses.NotListed] / (before[h] / before[hypotheses.NotListed]), 1e-9);
        }
    });

    [Theory]
    [InlineData("high-tunnel", null, false)]
    [InlineData("greenhouse", null, false)]
    [InlineData("storage", null, false)]
    [InlineData("field", "harvested", false)]
    [InlineData("field", null, true)]
    public void A_prior_factor_under_one_is_held_at_one_where_the_station_says_little(string system, string? stage, bool isWateredFromAbove) => GenSample.Any.Holds(200, weighed =>
    {
        var watering = Knowledge.FindCharacter("watering")!;
        var here = weighed with { System = system, Stage = stage, PriorFactors = [], Looks = [.. weighed.Looks.Where(look => look.Character != watering)] };
        if (isWateredFromAbove) here = With(here, new Look { Character = watering, How = Way.Asked, States = [watering.StateIndex("overhead")] });
        var dry = here with { PriorFactors = [new PriorFactor(Knowledge.Subject, 0.3, "dry weeks")] };
        var wet = here with { PriorFactors = [new PriorFactor(Knowledge.Subject, 3, "wet weeks")] };
        Assert.Equal(Weigher.Weigh(here, Bare).LateBlight, Weigher.Weigh(dry, Bare).LateBlight);
        Assert.True(Weigher.Weigh(wet, Bare).LateBlight.Probability > Weigher.Weigh(here, Bare).LateBlight.Probability);
    });

    [Fact]
    public void The_same_case_gives_the_same_bytes_from_several_threads_at_once() => GenSample.Any.Array[4, 8].Sample(cases =>
    {
        string[] one = [.. cases.Select(weighed => Weigher.Weigh(weighed).Written())];
        var fresh = new Weigher(Knowledge);
        Assert.Equal(one, cases.AsParallel().AsOrdered().Select(weighed => fresh.Weigh(weighed).Written()));
    }, iter: 10);

    private static void OrderNeverMatters(int count, WeighOptions options) => GenSample.Any.Holds(count, weighed =>
    {
        int[] order = [.. Enumerable.Range(0, weighed.Looks.Length).Reverse().OrderBy(place => place * 7 % 5)];
        var shuffled = weighed with { Looks = [.. order.Select(place => weighed.Looks[place])] };
        Assert.Equal(Weigher.Weigh(weighed, options).Written(place => place), Weigher.Weigh(shuffled, options).Written(place => order[place]));
    });

    private static Look Leaf => new() { Character = Knowledge.FindCharacter("organs-affected")!, How = Way.NakedEye, States = [0], By = Observer.Diagnostician };

    private static void Same(int count, Func<Case, IEnumerable<Look>> more) => GenSample.Any.Holds(
        count,
        weighed => Assert.Equal(Weigher.Weigh(weighed, NoOutlook).Written(), Weigher.Weigh(With(weighed, [.. more(weighed)]), NoOutlook).Written()));

    private static Case With(Case weighed, params Look[] looks) => weighed with { Looks = [.. weighed.Looks, .. looks] };

    private static void AssertSameChances(Answer one, Answer other, double tolerance) => Assert.All(
        one.Causes,
        cause => Assert.Equal(cause.Probability, other.Causes.Single(entry => entry.Cause == cause.Cause).Probability, tolerance));
}
