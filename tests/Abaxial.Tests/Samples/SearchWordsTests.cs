using Abaxial.Samples;
using CsCheck;

namespace Abaxial.Tests.Samples;

public sealed class SearchWordsTests
{
    [Theory]
    [InlineData("Late blight, below the leaf!", "late blight below the leaf")]
    [InlineData("26-0142-D", "26 0142 d 260142d")]
    [InlineData("by d-01 on 2026-07-14", "by d 01 d01 on 2026 07 14 20260714")]
    [InlineData("gray-brown-fuzz", "gray brown fuzz")]
    [InlineData("Señora Łódź STRAẞE Ærø İstanbul e\u0301t\u00e9", "senora lodz strasse aero istanbul ete")]
    [InlineData("a- b -1 x--2", "a b 1 x 2")]
    [InlineData("日本語 ωμέγα", "日本語 ωμέγα")]
    [InlineData("\uD800 🍅 … \u202E\"'*()", "")]
    public void A_text_is_found_by_these_words(string text, string words) => Assert.Equal(words, string.Join(' ', SearchWords.OfText(text)));

    [Theory]
    [InlineData("26-0142-d", "260142d")]
    [InlineData("26-01", "2601")]
    [InlineData("26-", "26")]
    [InlineData("d-01 tomato Tomato", "d01 tomato")]
    [InlineData("\"late\" AND NOT (blight)*", "late and not blight")]
    public void A_question_asks_for_these_words(string text, string words) => Assert.Equal(words, string.Join(' ', SearchWords.OfQuery(text, 16)));

    [Fact]
    public void Every_word_of_a_question_is_the_beginning_of_a_word_of_the_same_text() => Gen.String.Sample(text =>
    {
        var words = SearchWords.OfText(text).ToList();
        Assert.All(SearchWords.OfQuery(text, 16), asked => Assert.Contains(words, word => word.StartsWith(asked, StringComparison.Ordinal)));
    });

    [Fact]
    public void The_words_of_words_are_the_same_words() => Gen.String.Sample(text => Assert.All(SearchWords.OfText(text), word => Assert.Equal([word], SearchWords.OfText(word))));

    [Fact]
    public void A_long_word_is_cut_and_found_by_all_of_it()
    {
        string word = string.Concat(Enumerable.Repeat("𝔸x", 40));
        Assert.Equal(SearchWords.OfText(word), SearchWords.OfQuery(word, 1));
        Assert.Equal(SearchWords.Longest, Assert.Single(SearchWords.OfText(word)).EnumerateRunes().Count());
    }
}
