using System.Text;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

public abstract class ErasingTests(StoreKind kind) : IAsyncLifetime
{
    private static readonly string Secret = $"Ansel Crakeby of Kestle Bight, behind the weighhouse. {string.Concat(Enumerable.Range(0, 300).Select(line => $"Line {line} of what he told us. "))}";

    private readonly TestStore store = new(kind);
    private readonly SealedText text = TestStore.Seal("g-11", Secret);
    private Ledger ledger = null!;
    private EntryId sample;

    public async ValueTask InitializeAsync()
    {
        ledger = await store.OpenAsync();
        sample = await TestStore.TakeInAsync(ledger);
        await TestStore.AppendAsync(ledger, sample, new MessageNoted("in", text.Seal()), text);
        var other = TestStore.Seal("g-12", "Odile Wrenfold");
        await TestStore.AppendAsync(ledger, await TestStore.TakeInAsync(ledger), new MessageNoted("in", other.Seal()), other);
        Assert.True(await IsInAsync(ledger, "weighhouse"));
    }

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task An_erased_person_is_gone_from_the_store_and_the_check_is_clean()
    {
        var erased = await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        Assert.Equal((1, kind == StoreKind.Sqlite), (erased.Texts, erased.IsWrittenOver)); // a server keeps bytes of its own: docs/method/ledger.md
        Assert.Equal([sample], erased.Samples);
        Assert.False(await IsInAsync(ledger, "weighhouse"));
        Assert.False(await IsInAsync(ledger, "Line 250 of what"));
        Assert.True(await IsInAsync(ledger, "Wrenfold"));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        Assert.Equal(["g-11"], SampleFold.Of(sample, await ledger.EntriesOfAsync(sample, TestContext.Current.CancellationToken), BuiltIn.Solanum()).Erased);
    }

    [Fact]
    public async Task An_erased_person_is_in_no_backup_made_after()
    {
        await Backup.WriteAsync(ledger, Path.Combine(store.Root, "before.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        await Backup.WriteAsync(ledger, Path.Combine(store.Root, "after.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Contains("weighhouse", await BytesAsync(Path.Combine(store.Root, "before.tar")), StringComparison.Ordinal);
        Assert.DoesNotContain("weighhouse", await BytesAsync(Path.Combine(store.Root, "after.tar")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Texts_about_an_erased_person_that_arrive_later_are_not_kept()
    {
        await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        await TestStore.MergeAsync(ledger, [], text);
        Assert.False(await IsInAsync(ledger, "weighhouse"));
        var again = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = new MessageNoted("in", text.Seal()), Texts = [text] }, TestContext.Current.CancellationToken);
        Assert.Equal("/texts", Assert.Single(again.Problems).At);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Fact]
    public async Task Erasing_reaches_a_store_that_hears_of_it()
    {
        var there = await store.OpenAsync("there");
        await TestStore.MergeAsync(there, await TestStore.TextsAsync(ledger), text, TestStore.Seal("g-12", "Odile Wrenfold"));
        Assert.True(await IsInAsync(there, "weighhouse"));
        await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        await TestStore.MergeAsync(there, await TestStore.TextsAsync(ledger));
        Assert.False(await IsInAsync(there, "weighhouse"));
        Assert.Empty((await TestStore.CheckAsync(there)).Faults);
    }

    [Fact]
    public async Task Erasing_twice_or_somebody_unknown_writes_nothing_more()
    {
        await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken);
        int entries = (await TestStore.TextsAsync(ledger)).Count;
        Assert.Empty((await ledger.EraseAsync("g-11", "a-01", TestContext.Current.CancellationToken)).Samples);
        Assert.Equal(entries, (await TestStore.TextsAsync(ledger)).Count);
    }

    /// <summary>Whether a word stands in any byte of the files in the folder, or on PostgreSQL in any row of any table.</summary>
    private static async Task<bool> IsInAsync(Ledger ledger, string word)
    {
        foreach (string file in Directory.EnumerateFiles(ledger.Folder, "*", SearchOption.AllDirectories))
        {
            if ((await BytesAsync(file)).Contains(word, StringComparison.Ordinal)) return true;
        }

        return ledger.Place.Postgres is not null && await IsInRowsAsync(ledger, word);
    }

    private static async Task<bool> IsInRowsAsync(Ledger ledger, string word)
    {
        await using var context = ledger.Ask();
        var tables = await context.Database.SqlQueryRaw<string>("""SELECT tablename AS "Value" FROM pg_tables WHERE schemaname = 'public'""").ToListAsync(TestContext.Current.CancellationToken);
        Assert.NotEmpty(tables);
        foreach (string table in tables)
        {
            string asking = $"""SELECT count(*)::int AS "Value" FROM "{table}" AS whole WHERE whole::text LIKE """ + "{0}";
            if (await context.Database.SqlQueryRaw<int>(asking, $"%{word}%").SingleAsync(TestContext.Current.CancellationToken) > 0) return true;
        }

        return false;
    }

    private static async Task<string> BytesAsync(string file)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        return Encoding.Latin1.GetString(bytes.ToArray());
    }
}

public sealed class ErasingTests_on_SQLite() : ErasingTests(StoreKind.Sqlite);

public sealed class ErasingTests_on_PostgreSQL() : ErasingTests(StoreKind.Postgres);
