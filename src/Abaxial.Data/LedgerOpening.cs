using System.Security.Cryptography;
using Abaxial.Data.Search;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>Makes a store, or brings it up to date. A program that was killed while doing so leaves a store that the next one finishes.</summary>
internal static class LedgerOpening
{
    public static async Task RunAsync(Ledger ledger, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        if (await IsUpToDateAsync(ledger, context, cancel)) return;
        using var alone = await LockAsync(Path.Combine(ledger.Folder, "opening.lock"), cancel);
        if (await IsUpToDateAsync(ledger, context, cancel)) return;

        await context.Database.OpenConnectionAsync(cancel);
        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL;", cancel);

        // The framework notes in a table that somebody migrates; where that somebody was killed it would wait for ever. The lock of the file is ours alone.
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock;", cancel);
        await context.Database.MigrateAsync(cancel);
        Disk.FlushFolder(ledger.Folder);
        Disk.FlushFolder(Path.GetDirectoryName(ledger.Folder) ?? ledger.Folder);
        var store = await context.Store.SingleOrDefaultAsync(cancel);
        if (store is null) context.Store.Add(store = new StoreRow { Id = 1, Device = NewDevice() });
        if (!store.HasSampleRows) await SampleRefresh.AllAsync(ledger, null, cancel);
        store.HasSampleRows = true;
        await context.SaveChangesAsync(cancel);
    }

    /// <summary>An id for a store as a device.</summary>
    public static string NewDevice() => $"store-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10))}";

    private static async Task<bool> IsUpToDateAsync(Ledger ledger, LedgerContext context, CancellationToken cancel)
    {
        if (!Ledger.IsIn(ledger.Folder)) return false;
        var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
        var known = context.Database.GetMigrations().ToList();
        var newer = applied.Except(known).ToList();
        if (newer.Count > 0) throw new InvalidDataException($"The store in '{ledger.Folder}' was written by a newer version of this program ({newer[0]}).");
        return applied.Count == known.Count && await context.Store.AnyAsync(store => store.HasSampleRows, cancel);
    }

    /// <summary>A lock that ends with the program, however it ends.</summary>
    private static async Task<FileStream> LockAsync(string file, CancellationToken cancel)
    {
        while (true)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (System.IO.File.Exists(file))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), cancel); // another program is opening the store
            }
        }
    }
}
