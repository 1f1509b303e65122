using System.Security.Cryptography;
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
        if (await context.Store.AnyAsync(cancel)) return;
        context.Store.Add(new StoreRow { Id = 1, Device = NewDevice() });
        await context.SaveChangesAsync(cancel);
    }

    /// <summary>An id for a store as a device.</summary>
    public static string NewDevice() => $"store-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10))}";

    private static async Task<bool> IsUpToDateAsync(Ledger ledger, LedgerContext context, CancellationToken cancel)
    {
        if (!await ledger.Database.IsThereAsync(cancel)) return false;
        var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
        var known = context.Database.GetMigrations().ToList();
        var newer = applied.Except(known).ToList();
        if (newer.Count > 0) throw new InvalidDataException($"The store in {ledger.Place} was written by a newer version of this program ({newer[0]}).");
        return applied.Count == known.Count && await context.Store.AnyAsync(cancel);
    }
}
