using Abaxial.Knowledge;

namespace Abaxial.Tests.Knowledge;

public sealed class SeparationTests
{
    private static readonly KnowledgeBase Known = BuiltIn.Solanum();
    private static readonly HostTable Tomato = new(Known, "tomato");

    [Fact]
    public void A_cause_is_not_told_from_itself()
    {
        for (int cause = 0; cause < Tomato.Causes.Length; cause++) Assert.Equal(0, Separation.Of(Tomato, cause, cause).Decibans, 1e-9);
    }

    [Fact]
    public void It_does_not_matter_which_of_two_causes_is_named_first()
    {
        for (int one = 0; one < Tomato.Causes.Length; one++)
        {
            for (int other = 0; other < one; other++) Assert.Equal(Separation.Of(Tomato, one, other).Decibans, Separation.Of(Tomato, other, one).Decibans, 1e-9);
        }
    }

    [Fact]
    public void Rings_tell_early_blight_from_septoria_by_as_much_as_a_plain_sum_says()
    {
        int early = PlaceOf("early-blight"), septoria = PlaceOf("septoria-leaf-spot");
        var rings = Tomato.Find(Known.FindCharacter("concentric-rings")!);
        var organs = Tomato.Find(Known.FindCharacter("organs-affected")!);
        int leaf = organs.Character.StateIndex("leaf");
        double expected = 0;
        for (int state = 0; state < rings.StateCount; state++)
        {
            double p = rings.Chance(early, state), q = rings.Chance(septoria, state);
            expected += 0.5 * ((organs.Chance(early, leaf) * p) - (organs.Chance(septoria, leaf) * q)) * 10 * Math.Log10(p / q);
        }

        Assert.Equal(expected, Separation.Between(Tomato, rings, early, septoria), 1e-9);
    }

    [Fact]
    public void The_poorest_pairs_come_first_and_none_is_over_the_limit()
    {
        var pairs = Separation.Poorest(Tomato, 12).ToList();
        Assert.NotEmpty(pairs);
        Assert.All(pairs, pair => Assert.True(pair.Decibans < 12));
        Assert.Equal(pairs.Select(pair => pair.Decibans).Order(), pairs.Select(pair => pair.Decibans));
    }

    private static int PlaceOf(string id) => Tomato.IndexOf(Known.FindCause(id)!);
}
