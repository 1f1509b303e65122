using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Search;

public abstract class SampleRowsTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_refused_entry_changes_no_row()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var refused = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = new PhotographAdded(new string('a', 64), "image/jpeg", 3) }, TestContext.Current.CancellationToken);
        Assert.True(refused.IsRefused);
        Assert.Equal((2, 0), Assert.Single((await RowsAsync(new SampleQuery())).Select(row => (row.Entries, row.Photographs))));
    }

    [Fact]
    public async Task A_merge_makes_the_rows_of_all_samples_that_it_touches_and_texts_that_come_later_are_found()
    {
        var says = TestStore.Seal("g-11", "Behind the weighhouse.");
        var sample = await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "tomato", Says = says.Seal(), Submitter = "g-11" }, says);
        await TestStore.AppendAsync(ledger, await TestStore.TakeInAsync(ledger), new HandedOver("d-02"));
        var there = await store.OpenAsync("there");
        var texts = await TestStore.TextsAsync(ledger);
        await TestStore.MergeAsync(there, texts.AsEnumerable().Reverse());
        Assert.Equal(await KeysAsync(ledger, new SampleQuery()), await KeysAsync(there, new SampleQuery()));
        Assert.Empty(await SearchStore.RowsAsync(there, new SampleQuery { Text = "weighhouse" }));
        await TestStore.MergeAsync(there, [], says);
        Assert.Equal(sample.ToString(), Assert.Single(await SearchStore.RowsAsync(there, new SampleQuery { Text = "weighhouse" })).Sample);
    }

    [Fact]
    public async Task Erasing_takes_texts_and_names_out_of_search_and_leaves_the_sample_in_the_list()
    {
        var says = TestStore.Seal("g-11", "Behind the zyzweighhouse weighhouse.");
        var sample = await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "tomato", Says = says.Seal(), Submitter = "g-11" }, says);
        for (int i = 0; i < 5; i++) await TestStore.AppendAsync(ledger, sample, new HandedOver($"d-0{i}")); // the words are written anew each time
        await NameAsync("g-11", "Ansel Crakeby");
        Assert.Single(await RowsAsync(new SampleQuery { Text = "weighhouse crakeby" }));
        Assert.Equal(kind == StoreKind.Sqlite, await IsInTheFilesAsync("zyzweigh"));
        await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        Assert.Empty(await RowsAsync(new SampleQuery { Text = "weighhouse" }));
        Assert.Empty(await RowsAsync(new SampleQuery { Text = "crakeby" }));
        Assert.Single(await RowsAsync(new SampleQuery { Text = "tomato" }));
        Assert.False(await IsInTheFilesAsync("zyzweigh"));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Fact]
    public async Task People_are_found_by_the_name_they_have_now()
    {
        await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "tomato", Submitter = "g-11" });
        await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "potato", Submitter = "g-111" });
        await NameAsync("g-11", "Señora Ansel Crakeby");
        foreach (string text in new[] { "senora", "ans", "CRAKEBY tomato" }) Assert.Equal("tomato", Assert.Single(await RowsAsync(new SampleQuery { Text = text })).Host);
        await NameAsync("g-11", "Ansel Wrenfold");
        Assert.Empty(await RowsAsync(new SampleQuery { Text = "crakeby" }));
        Assert.Single(await RowsAsync(new SampleQuery { Text = "wrenfold" }));
    }

    [Fact]
    public async Task Lists_are_narrowed_by_every_column_with_words_and_without()
    {
        var first = await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "tomato", Submitter = "g-11", Area = new Area("Tansy Head", 44, -31, 80_000) });
        var second = await SearchStore.TakeInAsync(ledger, new TakenIn { Host = "potato", Submitter = "g-12", Area = new Area("tansy.head", 44, -31, 80_000) });
        await TestStore.AppendAsync(ledger, first, new HandedOver("d-02"));
        await TestStore.AppendAsync(ledger, second, new Closed("answered"));
        (SampleQuery Query, EntryId[] Samples)[] expected =
        [
            (new SampleQuery { Open = true }, [first]), (new SampleQuery { Open = false }, [second]), (new SampleQuery { Host = "potato" }, [second]), (new SampleQuery { Host = "potat" }, []),
            (new SampleQuery { With = "d-02" }, [first]), (new SampleQuery { With = "D-02" }, []), (new SampleQuery { Submitter = "g-12" }, [second]), (new SampleQuery { Submitter = "d-01" }, []),
            (new SampleQuery { Scope = new SampleScope("g-11", []) }, [first]), (new SampleQuery { Scope = new SampleScope("d-01", []) }, [second, first]), (new SampleQuery { Scope = new SampleScope("s-09", ["Tansy Head"]) }, [first]),
            (new SampleQuery { Scope = new SampleScope("s-09", ["tansy.head", "Tansy Head"]) }, [second, first]), (new SampleQuery { Scope = new SampleScope("s-09", []) }, []),
            (new SampleQuery { Scope = new SampleScope("g-11", []), Host = "potato" }, []), (new SampleQuery { ByWaiting = true }, [first]), (new SampleQuery { ByWaiting = true, Open = false }, []),
        ];
        foreach (var (query, samples) in expected)
        {
            Assert.Equal(samples.Select(sample => sample.ToString()), (await RowsAsync(query)).Select(row => row.Sample));
            Assert.Equal(samples.Select(sample => sample.ToString()), (await RowsAsync(query with { Text = "d-01" })).Select(row => row.Sample));
        }
    }

    [Fact]
    public async Task Rows_of_another_knowledge_are_made_anew_and_no_others()
    {
        for (int i = 0; i < 20; i++) await TestStore.TakeInAsync(ledger);
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(BuiltIn.SolanumBytes()).Replace("\"version\":\"2026.1\"", "\"version\":\"2026.9\"", StringComparison.Ordinal));
        var other = SampleReader.Of(KnowledgeBase.Read(bytes).OrThrow());
        Assert.NotEqual(SampleReader.BuiltIn.Knowledge.Hash, other.Knowledge.Hash);
        Assert.Equal(0, await ledger.RefreshAsync(null, TestContext.Current.CancellationToken));
        using (var later = await Ledger.OpenAsync(ledger.Place, TimeProvider.System, other, TestContext.Current.CancellationToken))
        {
            await TestStore.TakeInAsync(later);
            Assert.Equal(20, await later.RefreshAsync(null, TestContext.Current.CancellationToken));
            Assert.All(await SearchStore.RowsAsync(later, new SampleQuery()), row => Assert.Equal(other.Knowledge.Hash, row.Knowledge));
            Assert.Empty((await TestStore.CheckAsync(later)).Faults);
        }

        Assert.Equal(21, await ledger.RefreshAsync(null, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_check_names_rows_that_do_not_fit_and_a_rebuild_puts_them_right()
    {
        var missing = await TestStore.TakeInAsync(ledger);
        var behind = await TestStore.TakeInAsync(ledger);
        var good = await KeysAsync(ledger, new SampleQuery());
        await TestStore.ExecuteAsync(ledger, $"""DELETE FROM samples WHERE "Sample" = '{missing}'""");
        await TestStore.ExecuteAsync(ledger, $"""UPDATE samples SET "Entries" = 1 WHERE "Sample" = '{behind}'""");
        Assert.Equal([$"sample {behind}", $"sample {missing}"], (await TestStore.CheckAsync(ledger)).Faults.Select(fault => fault.What));
        Assert.Equal(2, await ledger.RebuildAsync(cancel: TestContext.Current.CancellationToken));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        Assert.Equal(good, await KeysAsync(ledger, new SampleQuery { Text = "tomato" }));
    }

    private async Task<bool> IsInTheFilesAsync(string word)
    {
        foreach (string file in Directory.EnumerateFiles(ledger.Folder))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var bytes = new MemoryStream();
            await stream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
            if (System.Text.Encoding.Latin1.GetString(bytes.ToArray()).Contains(word, StringComparison.Ordinal)) return true;
        }

        return false;
    }

    private async Task NameAsync(string person, string name)
    {
        await ledger.WriteContextAsync(
            async context =>
            {
                await PersonWords.WriteAsync(context, person, name, TestContext.Current.CancellationToken);
                return true;
            },
            _ => true,
            TestContext.Current.CancellationToken);
        await using var context = ledger.Ask();
        Assert.NotEmpty(await context.PersonWords.Where(row => row.Person == person).ToListAsync(TestContext.Current.CancellationToken));
    }

    private Task<IReadOnlyList<SampleRow>> RowsAsync(SampleQuery query) => SearchStore.RowsAsync(ledger, query);

    private static async Task<IEnumerable<long>> KeysAsync(Ledger ledger, SampleQuery query) => (await SearchStore.RowsAsync(ledger, query)).Select(row => row.Key);
}

public sealed class SampleRowsTests_on_SQLite() : SampleRowsTests(StoreKind.Sqlite);

public sealed class SampleRowsTests_on_PostgreSQL() : SampleRowsTests(StoreKind.Postgres);
