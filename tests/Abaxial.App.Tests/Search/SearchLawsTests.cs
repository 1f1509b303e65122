using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Samples;
using CsCheck;

namespace Abaxial.App.Tests.Search;

/// <summary>Whatever is asked, SQLite, PostgreSQL and a plain walk over all texts find the same, and nothing that is asked does harm.</summary>
public sealed class SearchLawsTests : IAsyncLifetime
{
    private static readonly string[] Words =
    [
        "tomato", "tomatoes", "Tom", "ÜBER", "über-reif", "señora", "Łódź", "straße", "26-0001", "d-01", "d.01", "0001", "a", "ab", "abc", "naïve", "日本", "日本語", "İstanbul", "ﬁn", "1e5", "-1.5", "x_y", "a:b", "e\u0301clair", "AND", "NEAR",
        "12345678901234567890123456789012345", "Ω", "ωμέγα",
    ];

    private static readonly string[] Hostile =
    [
        "\"", "'", "''", "\"\"", "*", "to*", "^tom", "NEAR(a b)", "a OR b", "a AND NOT b", "words:tom", "(", ")", "{a b}:c", "tom + ato", "-tom", "tom:*", "a & b", "a | !b", "<->", "'tom':*", "\\", "\0", "\uE000o", "\uD800", "\uDC00\uD800", "🍅", "👩‍🌾",
        "%", "_", "{0}", "{", "}", "'); DROP TABLE samples; --", "\u202Etom", "ﷺ",
    ];

    private static readonly Gen<string> Piece = Gen.OneOf(Gen.OneOf(Words), Gen.OneOf(Hostile), Gen.String[Gen.Char['\0', '\uFFFF'], 0, 8], Gen.OneOf(Words).Select(word => word[..Math.Max(1, word.Length / 2)]));

    private static readonly Gen<string> Text = Gen.Select(Piece.Array[0, 4], Gen.OneOf(" ", "", "-", "\t")).Select((pieces, gap) => string.Join(gap, pieces));

    private readonly TestStore sqlite = new(StoreKind.Sqlite);
    private readonly TestStore postgres = new(StoreKind.Postgres);

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        await sqlite.DisposeAsync();
        await postgres.DisposeAsync();
    }

    [Fact]
    public async Task Both_databases_find_what_a_plain_walk_over_the_words_finds()
    {
        Ledger[] ledgers = [await sqlite.OpenAsync(), await postgres.OpenAsync()];
        var samples = await FillAsync(ledgers);
        await Text.SampleAsync(
            async text =>
            {
                string[] expected = Expected(samples, text);
                foreach (var ledger in ledgers) Assert.Equal(expected, (await SearchStore.RowsAsync(ledger, new SampleQuery { Text = text, Limit = 200 })).Select(row => row.Area));
            },
            iter: 400, threads: 1);
    }

    [Fact]
    public async Task Long_and_broken_questions_do_no_harm()
    {
        Ledger[] ledgers = [await sqlite.OpenAsync(), await postgres.OpenAsync()];
        foreach (string text in new[] { new string('a', 10_240), string.Concat(Enumerable.Repeat("tom ", 2_560)), new string('"', 10_240), string.Concat(Enumerable.Repeat("\uD800a", 5_000)), string.Concat(Enumerable.Repeat("🍅", 3_000)), string.Concat(Enumerable.Range(0, 2_000).Select(i => $"w{i} ")) })
        {
            foreach (var ledger in ledgers)
            {
                Assert.Empty(await SearchStore.RowsAsync(ledger, new SampleQuery { Text = text }));
                Assert.Empty(await SearchStore.RowsAsync(ledger, new SampleQuery { Host = text, With = text, Submitter = text, Scope = new SampleScope(text, [text]) }));
            }
        }
    }

    /// <summary>Takes the same samples into every store.</summary>
    /// <returns>Their areas, each its own, and words.</returns>
    private static async Task<List<(string Area, HashSet<string> Words)>> FillAsync(Ledger[] ledgers)
    {
        var texts = new List<string>();
        Gen.Select(Gen.OneOf(Words).Array[1, 4], Gen.OneOf(Hostile)).Sample((words, hostile) => texts.Add(Writable($"{string.Join(' ', words)} {hostile}")), iter: 40, threads: 1);
        var samples = new List<(string, HashSet<string>)>();
        foreach (string text in texts)
        {
            var takenIn = new TakenIn { Host = "tomato", Area = new Area($"q{samples.Count:00}", 44, -31, 80_000), Cultivar = text };
            EntryId sample = default;
            foreach (var ledger in ledgers) sample = await SearchStore.TakeInAsync(ledger, takenIn);
            var reader = SampleReader.BuiltIn;
            var view = SampleFold.Of(sample, await ledgers[^1].EntriesOfAsync(sample, TestContext.Current.CancellationToken), reader.Knowledge);
            var words = SampleWords.Of(view, SampleSummary.AnswersOf(view, reader.Weigher), reader.Knowledge).SelectMany(SearchWords.OfText);
            samples.Add((takenIn.Area.Name!, [.. words]));
        }

        return samples;
    }

    /// <summary>Newest first: those that hold every word of the question as the beginning of a word.</summary>
    private static string[] Expected(List<(string Area, HashSet<string> Words)> samples, string text)
    {
        var asked = SearchWords.OfQuery(text, SampleQuery.MostWords);
        bool isAll = string.IsNullOrWhiteSpace(text);
        return [.. Enumerable.Reverse(samples).Where(sample => isAll || (!asked.IsEmpty && asked.All(word => sample.Words.Any(there => there.StartsWith(word, StringComparison.Ordinal))))).Select(sample => sample.Area)];
    }

    /// <summary>What can stand in an entry: no half of a surrogate pair, no control character.</summary>
    private static string Writable(string text) => new([.. text.Where(letter => !char.IsSurrogate(letter) && !char.IsControl(letter))]);
}
