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
        await using var alone = await ledger.Database.LockTablesAsync(context, cancel);
        if (await IsUpToDateAsync(ledger, context, cancel)) return;

        await context.Database.MigrateAsync(cancel);
        Disk.FlushFolder(ledger.Folder);
        Disk.FlushFolder(Path.GetDirectoryName(ledger.Folder) ?? ledger.Folder);
        var store = await context.Store.SingleOrDefaultAsync(cancel);
        if (store is null) context.Store.Add(store = new StoreRow { Id = 1, Device = NewDevice() });
        await context.SaveChangesAsync(cancel);
        if (await HasRowsAsync(context, cancel)) return;
        store.HasSampleRows = false; // until they are made, also where a copy of another store says otherwise
        await context.SaveChangesAsync(cancel);
        await SampleRefresh.AllAsync(ledger, null, cancel);
        store.HasSampleRows = true;
        await context.SaveChangesAsync(cancel);
    }

    /// <summary>Whether every sample has its row; a copy of a store comes without any.</summary>
    private static async Task<bool> HasRowsAsync(LedgerContext context, CancellationToken cancel) =>
        await context.Store.AnyAsync(store => store.HasSampleRows, cancel) && (await context.Samples.AnyAsync(cancel) || !await context.Entries.AnyAsync(cancel));

    /// <summary>An id for a store as a device.</summary>
    public static string NewDevice() => $"store-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10))}";

    private static async Task<bool> IsUpToDateAsync(Ledger ledger, LedgerContext context, CancellationToken cancel)
    {
        if (!await ledger.Database.IsThereAsync(cancel)) return false;
        var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
        var known = context.Database.GetMigrations().ToList();
        var newer = applied.Except(known).ToList();
        if (newer.Count > 0) throw new InvalidDataException($"The store in {ledger.Place} was written by a newer version of this program ({newer[0]}).");
        return applied.Count == known.Count && await HasRowsAsync(context, cancel);
    }
}
