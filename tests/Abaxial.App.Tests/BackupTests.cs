using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Load;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

public abstract class BackupTests(StoreKind kind) : IAsyncLifetime
{
    private const int Writers = 50;

    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_backup_made_while_fifty_writers_write_is_restored_entry_by_entry_and_photograph_by_photograph()
    {
        using var enough = new CancellationTokenSource();
        var started = new CountdownEvent(Writers);
        var writing = Task.WhenAll(Enumerable.Range(0, Writers).Select(writer => Task.Run(() => WriteAsync(writer, started, enough.Token))));
        await Task.Run(() => started.Wait(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        int before = (await TestStore.TextsAsync(ledger)).Count;
        var progress = new Seen();
        var report = await Backup.WriteAsync(ledger, File("busy.tar"), TimeProvider.System, progress, TestContext.Current.CancellationToken);
        await enough.CancelAsync();
        await writing;

        var check = await Restore.ReadAsync(File("busy.tar"), await AgainAsync(), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Empty(report.Faults);
        Assert.Empty(check.Faults);
        Assert.Contains("photographs", progress.Whats);
        var again = await store.OpenAsync("again");
        List<string> here = await TestStore.TextsAsync(ledger), there = await TestStore.TextsAsync(again);
        Assert.InRange(there.Count, before, here.Count);
        Assert.Equal(report.Entries, there.Count);
        Assert.Empty(there.Except(here));
        await using var context = again.Ask();
        var photographs = await context.Photographs.Select(row => row.Sha256).ToListAsync(TestContext.Current.CancellationToken);
        Assert.Equal(report.Photographs, photographs.Count);
        Assert.NotEmpty(photographs);
        foreach (string photograph in photographs)
        {
            Assert.Equal(await Bytes(ledger, photograph), await Bytes(again, photograph));
        }
    }

    [Fact]
    public async Task A_restored_store_writes_as_another_device_and_merges_with_the_one_that_lived_on()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        await BackUpAndRestoreAsync();
        var again = await store.OpenAsync("again");
        await TestStore.AppendAsync(ledger, sample, new HandedOver("d-02"));
        await TestStore.AppendAsync(again, sample, new HandedOver("d-03"));
        Assert.Empty((await TestStore.MergeAsync(again, await TestStore.TextsAsync(ledger))).Refused);
        Assert.Empty((await TestStore.MergeAsync(ledger, await TestStore.TextsAsync(again))).Refused);
        Assert.Equal(await TestStore.TextsAsync(ledger), await TestStore.TextsAsync(again));
        Assert.Equal(2, (await TestStore.CheckAsync(again)).Devices);
    }

    [Fact]
    public async Task A_damaged_backup_is_refused_and_leaves_nothing()
    {
        await TestStore.TakeInAsync(ledger);
        await ledger.AddPhotographAsync(new MemoryStream(RandomNumberGenerator.GetBytes(5_000)), TestContext.Current.CancellationToken);
        await Backup.WriteAsync(ledger, File("whole.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        byte[] whole = await System.IO.File.ReadAllBytesAsync(File("whole.tar"), TestContext.Current.CancellationToken);
        int database = whole.AsSpan().IndexOf("SQLite format 3"u8), photograph = whole.AsSpan().IndexOf("photographs/"u8) + 3_000;
        foreach (byte[] damaged in new[] { whole[..(whole.Length / 2)], whole[..^4_000], Changed(whole, database + 5_000), Changed(whole, photograph), "not a backup"u8.ToArray(), [] })
        {
            await System.IO.File.WriteAllBytesAsync(File("damaged.tar"), damaged, TestContext.Current.CancellationToken);
            var problem = await Assert.ThrowsAnyAsync<Exception>(async () => await Restore.ReadAsync(File("damaged.tar"), await AgainAsync(), TimeProvider.System, null, TestContext.Current.CancellationToken));
            Assert.True(problem is InvalidDataException or IOException, problem.ToString());
            Assert.False(Directory.Exists(File("again")) || Directory.Exists(File("again.restoring")));
        }
    }

    [Fact]
    public async Task A_folder_that_is_not_empty_and_a_file_that_is_there_are_not_written_over()
    {
        await Backup.WriteAsync(ledger, File("whole.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<IOException>(() => Restore.ReadAsync(File("whole.tar"), ledger.Place, TimeProvider.System, null, TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<IOException>(() => Backup.WriteAsync(ledger, File("whole.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken));
        Assert.Equal(["store", "whole.tar"], Directory.EnumerateFileSystemEntries(store.Root).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_clinic_can_move_to_the_other_kind_of_database_and_back_with_everything()
    {
        await OneOfEverything.FillAsync(ledger);
        var (texts, sealedTexts) = (await TestStore.TextsAsync(ledger), await SealedTextsAsync(ledger));
        await using var other = new TestStore(kind == StoreKind.Sqlite ? StoreKind.Postgres : StoreKind.Sqlite);
        await Backup.WriteAsync(ledger, File("there.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Empty((await Restore.ReadAsync(File("there.tar"), await other.PlaceAsync("store", withTables: false), TimeProvider.System, null, TestContext.Current.CancellationToken)).Faults);
        var there = await other.OpenAsync();
        Assert.Equal(texts, await TestStore.TextsAsync(there));
        var sample = await TestStore.TakeInAsync(there);
        await TestStore.AppendAsync(there, sample, new HandedOver("d-02"));

        var progress = new Seen();
        await Backup.WriteAsync(there, File("back.tar"), TimeProvider.System, progress, TestContext.Current.CancellationToken);
        Assert.Empty((await Restore.ReadAsync(File("back.tar"), await AgainAsync(), TimeProvider.System, progress, TestContext.Current.CancellationToken)).Faults);
        var back = await store.OpenAsync("again");
        Assert.Equal(await TestStore.TextsAsync(there), await TestStore.TextsAsync(back));
        Assert.Equal(sealedTexts, await SealedTextsAsync(back));
        Assert.Equal(3, (await TestStore.TextsAsync(back)).Except(texts).Count());
        Assert.Superset(new HashSet<string>(["database", "photographs", "unpacking"]), progress.Whats);
    }

    [Fact]
    public async Task A_photograph_that_is_damaged_is_named_and_left_out()
    {
        var added = await ledger.AddPhotographAsync(new MemoryStream([1, 2, 3]), TestContext.Current.CancellationToken);
        await System.IO.File.WriteAllBytesAsync(ledger.Photographs.PathOf(added.Sha256!), [1, 2, 4], TestContext.Current.CancellationToken);
        var report = await Backup.WriteAsync(ledger, File("whole.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Equal($"photograph {added.Sha256}", Assert.Single(report.Faults).What);
        var check = await Restore.ReadAsync(File("whole.tar"), await AgainAsync(), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Equal("It is not here.", Assert.Single(check.Faults).Found);
    }

    private async Task WriteAsync(int writer, CountdownEvent started, CancellationToken enough)
    {
        var sample = await TestStore.TakeInAsync(ledger, $"d-{writer}");
        for (int round = 0; !enough.IsCancellationRequested; round++)
        {
            var photograph = await ledger.AddPhotographAsync(new MemoryStream(RandomNumberGenerator.GetBytes(2_000)), TestContext.Current.CancellationToken);
            await TestStore.AppendAsync(ledger, sample, new PhotographAdded(photograph.Sha256!, "image/jpeg", photograph.Bytes));
            if (round == 0) started.Signal();
        }
    }

    private async Task BackUpAndRestoreAsync()
    {
        await Backup.WriteAsync(ledger, File("whole.tar"), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Assert.Empty((await Restore.ReadAsync(File("whole.tar"), await AgainAsync(), TimeProvider.System, null, TestContext.Current.CancellationToken)).Faults);
    }

    /// <summary>A new folder, and an empty database where the kind has one.</summary>
    private Task<StorePlace> AgainAsync() => store.PlaceAsync("again", withTables: false);

    private string File(string name) => Path.Combine(store.Root, name);

    private static async Task<List<string>> SealedTextsAsync(Ledger ledger)
    {
        await using var context = ledger.Ask();
        return [.. (await context.SealedTexts.ToListAsync(TestContext.Current.CancellationToken)).Select(row => $"{row.Sha256} {row.Person} {Convert.ToHexStringLower(row.Salt)} {row.Text}").Order(StringComparer.Ordinal)];
    }

    private static Task<byte[]> Bytes(Ledger ledger, string photograph) => System.IO.File.ReadAllBytesAsync(ledger.Photographs.PathOf(photograph), TestContext.Current.CancellationToken);

    private static byte[] Changed(byte[] whole, int at)
    {
        byte[] changed = [.. whole];
        changed[at] ^= 0x55;
        return changed;
    }

    private sealed class Seen : IProgress<StoreProgress>
    {
        public HashSet<string> Whats { get; } = [];

        public void Report(StoreProgress value) => Whats.Add(value.What);
    }
}

public sealed class BackupTests_on_SQLite() : BackupTests(StoreKind.Sqlite);

public sealed class BackupTests_on_PostgreSQL() : BackupTests(StoreKind.Postgres);
