using Abaxial.Cli.Pages;
using CsCheck;

namespace Abaxial.Tests.Cli.Pages;

public sealed class NearWordsTests
{
    private static readonly Gen<string> Words = Gen.Char['a', 'd'].Array[0, 6].Select(letters => new string(letters));

    [Theory]
    [InlineData("leaf-underside-growt", "leaf-underside-growth")]
    [InlineData("concentric-ring", "concentric-rings")]
    [InlineData("Halo", "leaf-lesion-halo")]
    public void The_word_that_was_meant_stands_first(string typed, string meant)
    {
        string[] words = ["organs-affected", "field-pattern", "leaf-lesion-halo", "leaf-underside-growth-place", "leaf-underside-growth", "concentric-rings", "onset"];
        Assert.Equal(meant, NearWords.Order(typed, words).First());
        Assert.Contains(meant, NearWords.Near(typed, words));
    }

    [Fact]
    public void Something_else_altogether_is_near_nothing() => Assert.Empty(NearWords.Near("xyzzy", ["organs-affected", "halo", "onset"]));

    [Fact]
    public void The_distance_is_that_of_a_metric() =>
        Gen.Select(Words, Words, Words).Sample((a, b, c) =>
            NearWords.Distance(a, b) == NearWords.Distance(b, a)
            && NearWords.Distance(a, c) <= NearWords.Distance(a, b) + NearWords.Distance(b, c)
            && (NearWords.Distance(a, b) == 0) == (a == b));
}
