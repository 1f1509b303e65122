using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>Whatever is changed behind the ledger's back, the check names it.</summary>
public abstract class CheckTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;
    private EntryId sample;
    private string photograph = "";

    public async ValueTask InitializeAsync()
    {
        ledger = await store.OpenAsync();
        sample = await TestStore.TakeInAsync(ledger);
        var text = TestStore.Seal("g-11", "Ansel Crakeby, Kestle Bight");
        await TestStore.AppendAsync(ledger, sample, new MessageNoted("in", text.Seal()), text);
        photograph = (await ledger.AddPhotographAsync(new MemoryStream([1, 2, 3]), TestContext.Current.CancellationToken)).Sha256!;
        await TestStore.AppendAsync(ledger, sample, new PhotographAdded(photograph, "image/jpeg", 3));
        await TestStore.AppendAsync(ledger, sample, new HandedOver("d-02"));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_changed_byte_anywhere_in_an_entry_s_text_is_found_by_the_entry_s_name()
    {
        var random = new Random(3);
        foreach (var (row, id, text) in await EntriesAsync())
        {
            for (int attempt = 0; attempt < 12; attempt++)
            {
                int at = random.Next(text.Length);
                string changed = text[..at] + (text[at] == '7' ? '8' : '7') + text[(at + 1)..];
                await ExecuteAsync("""UPDATE entries SET "Text" = @value WHERE "Row" = @row""", ("@value", changed), ("@row", row));
                Assert.Equal($"entry {id}", (await TestStore.CheckAsync(ledger)).Faults[0].What);
            }

            await ExecuteAsync("""UPDATE entries SET "Text" = @value WHERE "Row" = @row""", ("@value", text), ("@row", row));
        }

        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Theory]
    [InlineData("Id", "01ARZ3NDEKTSV4RRFFQ69G5FAV")]
    [InlineData("Sample", "01ARZ3NDEKTSV4RRFFQ69G5FAV")]
    [InlineData("Device", "another")]
    [InlineData("Place", 70L)]
    [InlineData("Kind", "closed")]
    [InlineData("Hash", "0000000000000000000000000000000000000000000000000000000000000000")]
    public async Task A_changed_column_of_an_entry_is_found(string column, object value)
    {
        await ExecuteAsync($"""UPDATE entries SET "{column}" = @value WHERE "Place" = 3""", ("@value", value));
        var report = await TestStore.CheckAsync(ledger);
        Assert.Contains(report.Faults, fault => fault.What.StartsWith("entry ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_entry_that_was_changed_together_with_its_hash_is_found_by_the_one_after_it()
    {
        var entries = await EntriesAsync();
        string changed = entries[2].Text.Replace("d-01", "d-09", StringComparison.Ordinal);
        await ExecuteAsync("""UPDATE entries SET "Text" = @value, "Hash" = @hash WHERE "Row" = @row""", ("@value", changed), ("@hash", Entry.HashOf(changed)), ("@row", entries[2].Row));
        Assert.Equal($"entry {entries[3].Id}", (await TestStore.CheckAsync(ledger)).Faults[0].What);
    }

    [Fact]
    public async Task An_entry_that_was_taken_out_is_found_wherever_it_stood()
    {
        var entries = await EntriesAsync();
        for (int i = 0; i < entries.Count; i++)
        {
            await using var damaged = new TestStore(kind);
            await Backup.WriteAsync(ledger, Path.Combine(damaged.Root, "copy.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
            await Restore.ReadAsync(Path.Combine(damaged.Root, "copy.tar"), await damaged.PlaceAsync(), TimeProvider.System, null, TestContext.Current.CancellationToken);
            var copy = await damaged.OpenAsync();
            await TestStore.ExecuteAsync(copy, """DELETE FROM entries WHERE "Row" = @row""", ("@row", entries[i].Row));
            Assert.NotEmpty((await TestStore.CheckAsync(copy)).Faults);
        }
    }

    [Theory]
    [InlineData("""UPDATE sealed_texts SET "Text" = 'Odile Wrenfold'""", "text ")]
    [InlineData("""UPDATE sealed_texts SET "Person" = 'g-12'""", "text ")]
    [InlineData("""UPDATE sealed_texts SET "Salt" = "Salt" || "Salt" """, "text ")]
    [InlineData("""DELETE FROM sealed_texts""", "entry ")]
    [InlineData("""DELETE FROM photographs""", "entry ")]
    [InlineData("""UPDATE photographs SET "Bytes" = 4""", "photograph ")]
    [InlineData("""UPDATE chains SET "Place" = 9""", "device ")]
    [InlineData("""UPDATE chains SET "Hash" = 'x'""", "device ")]
    [InlineData("""DELETE FROM chains""", "device ")]
    [InlineData("""DELETE FROM numbers""", "sample ")]
    [InlineData("""UPDATE numbers SET "Running" = 7""", "sample ")]
    [InlineData("INSERT INTO numbers VALUES ('26-0099-X', '01ARZ3NDEKTSV4RRFFQ69G5FAV', 26, 99)", "sample ")]
    [InlineData("INSERT INTO erasures VALUES ('g-11')", "person ")]
    [InlineData("""DELETE FROM store""", "the database")]
    public async Task Whatever_else_was_changed_is_found(string change, string what)
    {
        await ExecuteAsync(change);
        Assert.Contains((await TestStore.CheckAsync(ledger)).Faults, fault => fault.What.StartsWith(what, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_photograph_that_was_changed_or_taken_away_is_found_by_its_name()
    {
        string file = ledger.Photographs.PathOf(photograph);
        await File.WriteAllBytesAsync(file, [1, 2, 4], TestContext.Current.CancellationToken);
        Assert.Equal($"photograph {photograph}", Assert.Single((await TestStore.CheckAsync(ledger)).Faults).What);
        File.Delete(file);
        Assert.Equal($"photograph {photograph}", Assert.Single((await TestStore.CheckAsync(ledger)).Faults).What);
    }

    [Fact]
    public async Task An_entry_whose_author_had_seen_one_that_is_not_here_is_named()
    {
        var there = await store.OpenAsync("there");
        await TestStore.MergeAsync(there, await TestStore.TextsAsync(ledger));
        var late = await TestStore.AppendAsync(there, sample, new HandedOver("d-03"));
        var later = await TestStore.AppendAsync(there, sample, new HandedOver("d-04"));
        await TestStore.MergeAsync(ledger, [later.Canonical()]);
        Assert.Contains((await TestStore.CheckAsync(ledger)).Faults, fault => fault.What == $"entry {later.Id}" && fault.Found.Contains(late.Id.ToString(), StringComparison.Ordinal));
    }

    private async Task<List<(long Row, string Id, string Text)>> EntriesAsync()
    {
        await using var context = ledger.Ask();
        return [.. (await context.Entries.OrderBy(row => row.Place).ToListAsync(TestContext.Current.CancellationToken)).Select(row => (row.Row, row.Id, row.Text))];
    }

    private Task ExecuteAsync(string sql, params (string Name, object Value)[] values) => TestStore.ExecuteAsync(ledger, sql, values);
}

public sealed class CheckTests_on_SQLite() : CheckTests(StoreKind.Sqlite);

public sealed class CheckTests_on_PostgreSQL() : CheckTests(StoreKind.Postgres);
