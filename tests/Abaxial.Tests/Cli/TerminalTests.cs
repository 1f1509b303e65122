using Abaxial.Cli;

namespace Abaxial.Tests.Cli;

public sealed class TerminalTests
{
    [Theory]
    [InlineData(null, "xterm", true)]
    [InlineData("", "xterm", true)]
    [InlineData("1", "xterm", false)]
    [InlineData("0", "xterm", false)]
    [InlineData(null, "dumb", false)]
    [InlineData(null, null, false)]
    public void Colour_is_not_wanted_where_NO_COLOR_says_anything_or_the_terminal_is_dumb(string? noColor, string? term, bool wanted) =>
        Assert.Equal(wanted, Terminal.WantsColour(name => name == "NO_COLOR" ? noColor : name == "TERM" ? term : null));

    [Theory]
    [InlineData(null, null, false)]
    [InlineData(null, "C", false)]
    [InlineData(null, "en_IE.UTF-8", false)]
    [InlineData(null, "en_IE.utf8", false)]
    [InlineData(null, "de_DE.ISO-8859-1", true)]
    [InlineData("en_IE.UTF-8", "de_DE.ISO-8859-1", false)]
    public void Plain_characters_are_used_where_the_locale_names_others_than_those_of_Unicode(string? all, string? lang, bool plain) =>
        Assert.Equal(plain, Terminal.NamesOtherCharset(name => name == "LC_ALL" ? all : name == "LANG" ? lang : null));

    [Fact]
    public void An_answer_is_coloured_only_where_that_is_wanted()
    {
        using var plain = new CliRun();
        using var coloured = new CliRun { Colour = true };
        Assert.DoesNotContain('\u001b', plain.Run("weigh", plain.Write("case.json", ExampleCases.Septoria)).Out);
        Assert.Contains('\u001b', coloured.Run("weigh", coloured.Write("case.json", ExampleCases.Septoria)).Out);
        Assert.DoesNotContain('\u001b', coloured.Run("weigh", "case.json", "--json").Out);
    }

    [Fact]
    public void An_answer_in_plain_characters_has_no_others()
    {
        using var cli = new CliRun { Ascii = true };
        foreach (string text in new[] { ExampleCases.Septoria, ExampleCases.Blackleg, ExampleCases.Nothing })
        {
            string answer = cli.Run("weigh", cli.Write("case.json", text)).Out;
            Assert.All(answer, sign => Assert.True(sign is '\n' or (>= ' ' and <= '~'), $"'{sign}' is not plain."));
            Assert.DoesNotContain('?', answer);
        }
    }
}
