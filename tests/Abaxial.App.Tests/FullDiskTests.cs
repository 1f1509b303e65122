using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>The disk of the database is full: whatever is written is refused in words, and nothing half is there.</summary>
public sealed class FullDiskTests
{
    private const string Words = "disk is full";

    /// <summary>SQLite says so by itself once it may have no more pages.</summary>
    [Fact]
    public async Task An_SQLite_file_that_may_not_grow_refuses_in_words()
    {
        await using var store = new TestStore(StoreKind.Sqlite);
        var ledger = await store.OpenAsync();
        await SetPagesAsync(ledger, "(more)");
        await RefusesUntilThereIsRoomAsync(ledger, () => SetPagesAsync(ledger, "1000000"), refusesPhotographs: false); // they lie elsewhere, and a row of one may find a place
    }

    /// <summary>A real file system of one mebibyte, where this may be mounted; elsewhere the limit of pages again.</summary>
    [Fact]
    public async Task A_disk_that_fills_up_under_SQLite_refuses_in_words()
    {
        await using var store = new TestStore(StoreKind.Sqlite);
        Directory.CreateDirectory(store.Folder);
        bool isMounted = Mounting.Run("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", store.Folder);
        try
        {
            var ledger = await store.OpenAsync();
            if (!isMounted) await SetPagesAsync(ledger, "(more)");
            await RefusesUntilThereIsRoomAsync(ledger, isMounted ? GrowAsync : () => SetPagesAsync(ledger, "1000000"), refusesPhotographs: isMounted);
            ledger.Dispose();
        }
        finally
        {
            if (isMounted) Assert.True(Mounting.Run("umount", store.Folder));
        }

        Task GrowAsync()
        {
            Assert.True(Mounting.Run("mount", "-o", "remount,size=16m", store.Folder));
            return Task.CompletedTask;
        }
    }

    /// <summary>The server's own error of a full disk (53100), raised at the twentieth entry, so that every machine can show it.</summary>
    [Fact]
    public async Task A_full_disk_of_the_server_refuses_in_words()
    {
        await using var store = new TestStore(StoreKind.Postgres);
        var ledger = await store.OpenAsync();
        await TestStore.ExecuteAsync(ledger, """
            CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN
              IF (SELECT count(*) FROM entries) >= 20 THEN RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = '53100'; END IF;
              RETURN NULL;
            END $$;
            CREATE TRIGGER no_room AFTER INSERT ON entries FOR EACH ROW EXECUTE FUNCTION no_room();
            CREATE TRIGGER no_room AFTER INSERT ON erasures FOR EACH ROW EXECUTE FUNCTION no_room();
            CREATE TRIGGER no_room AFTER INSERT ON photographs FOR EACH ROW EXECUTE FUNCTION no_room();
            """);
        await RefusesUntilThereIsRoomAsync(ledger, () => TestStore.ExecuteAsync(ledger, "DROP FUNCTION no_room() CASCADE"), refusesPhotographs: true);
    }

    private static async Task RefusesUntilThereIsRoomAsync(Ledger ledger, Func<Task> makeRoom, bool refusesPhotographs)
    {
        var sample = await TestStore.TakeInAsync(ledger);
        int written = 2;
        var last = await AppendAsync(ledger, sample);
        for (; !last.IsRefused; last = await AppendAsync(ledger, sample)) Assert.InRange(++written, 0, 2_000);
        Assert.Contains(Words, Assert.Single(last.Problems).Found, StringComparison.Ordinal);
        Assert.All(await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => ManyAsync(ledger))), appended => Assert.Contains(Words, Assert.Single(appended.Problems).Found, StringComparison.Ordinal));
        if (refusesPhotographs) Assert.Contains(Words, (await ledger.AddPhotographAsync(new MemoryStream(new byte[2_000_000]), TestContext.Current.CancellationToken)).Refusal, StringComparison.Ordinal);
        Assert.Contains(Words, (await Assert.ThrowsAsync<IOException>(() => EraseManyAsync(ledger))).Message, StringComparison.Ordinal);

        int there = (await TestStore.TextsAsync(ledger)).Count;
        Assert.InRange(there, written, written + 40); // a small one may still have found a place after a bigger one
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        await makeRoom();
        Assert.False((await AppendAsync(ledger, sample)).IsRefused);
        Assert.False((await ledger.AddPhotographAsync(new MemoryStream(new byte[100_000]), TestContext.Current.CancellationToken)).IsRefused);
        Assert.Equal(there + 1, (await TestStore.TextsAsync(ledger)).Count);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    private static Task<Appended> AppendAsync(Ledger ledger, EntryId sample) => ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = new Closed(new string('x', 500)) }, TestContext.Current.CancellationToken);

    /// <summary>A sample with so much to it that there is no room for all of it.</summary>
    private static Task<Appended> ManyAsync(Ledger ledger) =>
        ledger.TakeInAsync(new EntryDraft { Author = "d-01", Payload = new TakenIn { Host = "tomato" } }, Enumerable.Repeat(new Closed(new string('x', 500)), 200), TestContext.Current.CancellationToken);

    private static async Task EraseManyAsync(Ledger ledger)
    {
        for (int i = 0; i < 500; i++) await ledger.EraseAsync($"g-{i}-{new string('x', 40)}", "a-01", TestContext.Current.CancellationToken);
    }

    /// <summary>The setting belongs to the one connection that the pool holds while one thing is done at a time.</summary>
    private static async Task SetPagesAsync(Ledger ledger, string most)
    {
        await using var context = ledger.Ask();
        await context.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA page_count";
        long now = (long)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
        command.CommandText = $"PRAGMA max_page_count = {(most == "(more)" ? $"{now + 12}" : most)}";
        await command.ExecuteScalarAsync(TestContext.Current.CancellationToken);
    }
}
