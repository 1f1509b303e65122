namespace Abaxial.Tests.Cli.Pages;

public sealed class PageTests
{
    [Fact]
    public void A_paragraph_is_wrapped_between_words_and_hangs()
    {
        string text = PageRun.Write(page => page.Text("one two three four five", indent: 2, hanging: 2), width: 12);
        Assert.Equal("  one two\n    three\n    four\n    five\n", text);
    }

    [Fact]
    public void A_number_and_its_percent_sign_are_never_parted() =>
        Assert.Equal("about\n31 % of\n", PageRun.Write(page => page.Text("about 31 % of", indent: 0), width: 8));

    [Fact]
    public void A_word_longer_than_the_line_stands_alone() =>
        Assert.Equal("a\nunbreakable\nb\n", PageRun.Write(page => page.Text("a unbreakable b", indent: 0), width: 5));

    [Fact]
    public void An_item_keeps_its_text_beside_its_label() =>
        Assert.Equal("  1. one two\n     three\n", PageRun.Write(page => page.Item("1.", "one two three", 3), width: 12));
}
