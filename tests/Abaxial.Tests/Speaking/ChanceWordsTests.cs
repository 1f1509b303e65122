using System.Globalization;
using Abaxial.Speaking;
using Abaxial.Tests.Cli.Pages;
using CsCheck;

namespace Abaxial.Tests.Speaking;

public sealed class ChanceWordsTests
{
    private static readonly Speech English = new(PageRun.Knowledge);

    [Theory]
    [InlineData(0.004, 0.001, 0.008, "under 1 %", "")]
    [InlineData(0.123, 0.11, 0.14, "12 %", "11–14 %")]
    [InlineData(0.213, 0.12, 0.308, "about 20 %", "12–31 %")]
    [InlineData(0.45, 0.2, 0.7, "about 50 %", "20–70 %")]
    [InlineData(0.03, 0.001, 0.25, "under 10 %", "up to 25 %")]
    [InlineData(0.926, 0.86, 0.93, "93 %", "86–93 %")]
    [InlineData(0.97, 0.69, 0.999, "over 90 %", "69 % or more")]
    [InlineData(0.9999, 0.999, 1, "over 99 %", "")]
    [InlineData(0.5, 0, 1, "about 50 %", "up to 100 %")]
    public void A_chance_is_said_no_finer_than_its_band(double probability, double low, double high, string said, string band)
    {
        var chance = PageRun.Chance("late-blight", probability, low, high);
        Assert.Equal(said, ChanceWords.Of(chance, English));
        Assert.Equal(band, ChanceWords.Band(chance, English));
    }

    [Fact]
    public void What_is_said_lies_in_the_band_or_is_a_bound_that_holds() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((a, b, c) =>
        {
            double[] order = [.. new[] { a, b, c }.Order()];
            string said = ChanceWords.Of(PageRun.Chance("late-blight", order[1], order[0], order[2]), English);
            double number = double.Parse(said.Split(' ').First(word => char.IsDigit(word[0])), CultureInfo.InvariantCulture) / 100;
            if (said.StartsWith("under", StringComparison.Ordinal)) return order[1] < number;
            if (said.StartsWith("over", StringComparison.Ordinal)) return order[1] > number;
            return number >= order[0] - 0.01 && number <= order[2] + 0.01;
        });

    [Fact]
    public void A_chance_without_a_band_is_said_in_whole_percents()
    {
        Assert.Equal("under 1 %", ChanceWords.Of(0.0049, English));
        Assert.Equal("23 %", ChanceWords.Of(0.229, English));
        Assert.Equal("over 99 %", ChanceWords.Of(0.996, English));
    }

    [Fact]
    public void What_a_chance_would_become_is_said_as_coarsely_as_todays_band_is_wide_in_odds()
    {
        var today = PageRun.Chance("late-blight", 0.22, 0.12, 0.35);
        Assert.Equal("3 %", ChanceWords.Becoming(0.03, today, English));
        Assert.Equal("about 60 %", ChanceWords.Becoming(0.57, today, English));
    }
}
