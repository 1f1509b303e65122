using Abaxial.Cli.Pages;
using Abaxial.Weighing;

namespace Abaxial.Tests.Cli.Pages;

public sealed class MarksTests
{
    [Theory]
    [InlineData(0, 0, 0, "O..........")]
    [InlineData(0.5, 0.2, 0.7, "..===O==...")]
    [InlineData(1, 1, 1, "..........O")]
    [InlineData(0.98, 0.9, 1, ".........=O")]
    public void A_bar_shows_the_chance_as_a_dot_on_its_band(double probability, double low, double high, string bar) =>
        Assert.Equal(bar, Marks.Bar(PageRun.Chance("late-blight", probability, low, high), 11, ascii: true));

    [Fact]
    public void A_bar_is_as_long_in_any_characters()
    {
        var chance = PageRun.Chance("late-blight", 0.3, 0.1, 0.6);
        Assert.Equal("·━━●━━━····", Marks.Bar(chance, 11, ascii: false));
        Assert.Equal(40, Marks.Bar(chance, 40, ascii: false).Length);
    }

    [Fact]
    public void Every_standing_has_a_shape_of_its_own()
    {
        foreach (bool ascii in new[] { false, true })
        {
            Assert.Equal(5, Enum.GetValues<Standing>().Select(standing => Marks.Of(standing, ascii)).Distinct().Count());
        }
    }
}
