using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

public abstract class LedgerTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task An_entry_that_was_appended_is_there_when_the_store_is_opened_again()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var handed = await TestStore.AppendAsync(ledger, sample, new HandedOver("d-02"));
        using var again = await Ledger.OpenAsync(ledger.Place, TimeProvider.System, TestContext.Current.CancellationToken);
        var entries = await again.EntriesOfAsync(sample, TestContext.Current.CancellationToken);
        Assert.Equal([EntryKind.TakenIn, EntryKind.Numbered, EntryKind.HandedOver], entries.Select(entry => entry.Kind));
        Assert.Equal(handed, entries[2]);
        Assert.Equal([entries[1].Id], entries[2].Heads);
        Assert.True((await TestStore.CheckAsync(again)).IsClean);
    }

    [Fact]
    public async Task The_same_draft_sent_twice_is_written_once_and_another_with_its_id_is_refused()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var draft = new EntryDraft { Id = EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV"), Sample = sample, Author = "d-01", Payload = new HandedOver("d-02") };
        var first = await ledger.AppendAsync(draft, TestContext.Current.CancellationToken);
        var second = await ledger.AppendAsync(draft, TestContext.Current.CancellationToken);
        Assert.Equal((false, true), (first.WasThere, second.WasThere));
        Assert.Equal(first.Entry, second.Entry);
        var other = await ledger.AppendAsync(draft with { Payload = new HandedOver("d-03") }, TestContext.Current.CancellationToken);
        Assert.Equal("/id", Assert.Single(other.Problems).At);
        Assert.Equal(3, (await TestStore.TextsAsync(ledger)).Count);
    }

    [Fact]
    public async Task What_cannot_be_is_refused_with_its_place_and_nothing_is_written()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var unknown = EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV");
        var seal = TestStore.Seal("g-11", "Ansel Crakeby");
        (string At, EntryDraft Draft)[] drafts =
        [
            ("/sample", new EntryDraft { Sample = unknown, Author = "d-01", Payload = new HandedOver("d-02") }),
            ("/sample", new EntryDraft { Sample = sample, Author = "d-01", Payload = new TakenIn { Host = "tomato" } }),
            ("/sample", new EntryDraft { Author = "d-01", Payload = new HandedOver("d-02") }),
            ("/to", new EntryDraft { Sample = sample, Author = "d-01", Payload = new HandedOver("Hesper Dunnick") }),
            ("/author", new EntryDraft { Sample = sample, Author = "Hesper Dunnick", Payload = new HandedOver("d-02") }),
            ("/payload/sha256", new EntryDraft { Sample = sample, Author = "d-01", Payload = new PhotographAdded(new string('a', 64), "image/jpeg", 5) }),
            ("/payload", new EntryDraft { Sample = sample, Author = "d-01", Payload = new MessageNoted("in", seal.Seal()) }),
            ("/texts", new EntryDraft { Sample = sample, Author = "d-01", Payload = new HandedOver("d-02"), Texts = [seal] }),
            ("/texts", new EntryDraft { Sample = sample, Author = "d-01", Payload = new MessageNoted("in", seal.Seal()), Texts = [seal with { Salt = new byte[1] }] }),
        ];
        foreach (var (at, draft) in drafts) Assert.Equal(at, Assert.Single((await ledger.AppendAsync(draft, TestContext.Current.CancellationToken)).Problems).At);
        Assert.Equal(2, (await TestStore.TextsAsync(ledger)).Count);
        Assert.True((await TestStore.CheckAsync(ledger)).IsClean);
    }

    [Fact]
    public async Task A_sample_is_taken_in_whole_or_not_at_all()
    {
        var refused = await ledger.TakeInAsync(new EntryDraft { Author = "d-01", Payload = new TakenIn { Host = "tomato" } }, [new HandedOver("no id")], TestContext.Current.CancellationToken);
        Assert.True(refused.IsRefused);
        Assert.Empty(await TestStore.TextsAsync(ledger));
    }

    [Fact]
    public async Task What_is_entered_later_says_so()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var yesterday = TimeProvider.System.GetUtcNow().AddDays(-1);
        var appended = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "s-02", Made = yesterday, Payload = new HandedOver("d-01") }, TestContext.Current.CancellationToken);
        Assert.Equal(yesterday, appended.Entry!.Made);
        Assert.True(appended.Entry.EnteredLater > yesterday);
    }

    [Fact]
    public async Task Fifty_writers_in_two_programs_write_one_unbroken_chain_and_no_number_twice()
    {
        using var other = await Ledger.OpenAsync(ledger.Place, TimeProvider.System, TestContext.Current.CancellationToken);
        await Task.WhenAll(Enumerable.Range(0, 50).Select(writer => Task.Run(async () =>
        {
            var mine = writer % 2 == 0 ? ledger : other;
            var sample = await TestStore.TakeInAsync(mine, $"d-{writer}");
            for (int i = 0; i < 3; i++) await TestStore.AppendAsync(mine, sample, new HandedOver($"d-{i}"));
        })));
        var report = await TestStore.CheckAsync(ledger);
        Assert.Empty(report.Faults);
        Assert.Equal((250, 50, 1), (report.Entries, report.Samples, report.Devices));
        Assert.Equal(50, (await TestStore.TextsAsync(ledger)).Where(text => text.Contains("\"numbered\"", StringComparison.Ordinal)).Select(text => text[text.IndexOf("\"number\"", StringComparison.Ordinal)..][..22]).Distinct().Count());
    }

    [Fact]
    public async Task Two_stores_that_hear_of_each_other_in_any_order_hold_the_same()
    {
        var there = await store.OpenAsync("there");
        for (int i = 0; i < 4; i++)
        {
            await TestStore.AppendAsync(ledger, await TestStore.TakeInAsync(ledger), new HandedOver($"d-{i}"));
            await TestStore.AppendAsync(there, await TestStore.TakeInAsync(there), new HandedOver($"d-{i}"));
        }

        List<string> here = await TestStore.TextsAsync(ledger), other = await TestStore.TextsAsync(there);
        var shuffle = new Random(7);
        foreach (string text in here.Concat(here).OrderBy(_ => shuffle.Next())) Assert.Empty((await TestStore.MergeAsync(there, [text])).Refused);
        var merged = await TestStore.MergeAsync(ledger, other.OrderBy(_ => shuffle.Next()));
        Assert.Equal((12, 0, 0), (merged.Added, merged.WereThere, merged.Refused.Length));
        Assert.Equal(12, (await TestStore.MergeAsync(ledger, other)).WereThere);
        Assert.Equal(await TestStore.TextsAsync(ledger), await TestStore.TextsAsync(there));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        Assert.Empty((await TestStore.CheckAsync(there)).Faults);
    }

    [Fact]
    public async Task An_entry_that_was_changed_on_the_way_or_breaks_a_chain_is_refused()
    {
        var there = await store.OpenAsync("there");
        await TestStore.AppendAsync(there, await TestStore.TakeInAsync(there), new HandedOver("d-02"));
        var texts = (await TestStore.TextsAsync(there)).OrderBy(text => text.IndexOf("\"place\":3", StringComparison.Ordinal)).ToList();
        string last = texts.Single(text => text.Contains("\"place\":3,", StringComparison.Ordinal));
        Assert.Empty((await TestStore.MergeAsync(ledger, texts)).Refused);

        string changed = last.Replace("d-02", "d-03", StringComparison.Ordinal);
        string otherId = changed.Replace($"\"id\":\"{last[(last.IndexOf("\"id\":", StringComparison.Ordinal) + 6)..][..26]}", "\"id\":\"01ARZ3NDEKTSV4RRFFQ69G5FAV", StringComparison.Ordinal);
        string afterNothing = otherId.Replace("\"place\":3", "\"place\":4", StringComparison.Ordinal);
        var merged = await TestStore.MergeAsync(ledger, [changed, otherId, afterNothing, "{}"]);
        Assert.Equal(["/id", "/place", "/previous", "/author"], merged.Refused.Select(refused => refused.Problems[0].At));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Fact]
    public async Task An_entry_whose_forerunners_are_still_on_their_way_is_kept_and_the_check_names_it()
    {
        var there = await store.OpenAsync("there");
        await TestStore.AppendAsync(there, await TestStore.TakeInAsync(there), new HandedOver("d-02"));
        string last = (await TestStore.TextsAsync(there)).Single(text => text.Contains("\"place\":3,", StringComparison.Ordinal));
        Assert.Equal(1, (await TestStore.MergeAsync(ledger, [last])).Added);
        Assert.Contains((await TestStore.CheckAsync(ledger)).Faults, fault => fault.Found.StartsWith("Entries 1 to 2", StringComparison.Ordinal));
        await TestStore.MergeAsync(ledger, await TestStore.TextsAsync(there));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Fact]
    public async Task A_store_of_a_newer_version_is_not_opened()
    {
        await TestStore.ExecuteAsync(ledger, """INSERT INTO "__EFMigrationsHistory" VALUES ('99990101000000_Later', '99.0.0')""");
        var refused = await Assert.ThrowsAsync<InvalidDataException>(() => Ledger.OpenAsync(ledger.Place, TimeProvider.System, TestContext.Current.CancellationToken));
        Assert.Contains("99990101000000_Later", refused.Message, StringComparison.Ordinal);
    }
}

public sealed class LedgerTests_on_SQLite() : LedgerTests(StoreKind.Sqlite);

public sealed class LedgerTests_on_PostgreSQL() : LedgerTests(StoreKind.Postgres);
