using System.Formats.Tar;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Abaxial.Data;

/// <summary>Makes a store of a backup.</summary>
public static class Restore
{
    private const int LongestPage = 64 << 10;

    /// <summary>Reads a backup into a folder that is not there or empty, as a store on SQLite, and checks the store that comes of it.</summary>
    public static Task<CheckReport> ReadAsync(string file, string folder, TimeProvider clock, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default) =>
        ReadAsync(file, new StorePlace(folder), clock, progress, cancel);

    /// <summary>Reads a backup into a folder that is not there or empty, and where the place names a PostgreSQL database into that, which must be empty too; checks the store that comes of it.</summary>
    /// <remarks>The restored store writes as a device of its own: the one that was backed up may live on, and two stores must not write one chain.</remarks>
    /// <returns>The check of the restored store, photographs by hash.</returns>
    /// <exception cref="InvalidDataException">The file is no whole backup, or what is in it is not what was put in. Nothing is left in the folder, and in a database at most empty tables.</exception>
    /// <exception cref="IOException">The folder or the database is not empty, or cannot be reached, read or written.</exception>
    public static async Task<CheckReport> ReadAsync(string file, StorePlace place, TimeProvider clock, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(place.Folder)), part = target + ".restoring";
        if (File.Exists(target) || (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any())) throw new IOException($"'{place.Folder}' is not empty: a backup is restored into a new folder only.");
        if (Directory.Exists(part)) throw new IOException($"'{part}' is there from a restoring that did not end: take it away first.");
        try
        {
            Directory.CreateDirectory(part);
            await UnpackAsync(file, part, progress, cancel);
            using (var unpacked = await Ledger.OpenAsync(part, clock, cancel))
            {
                await BecomeOtherDeviceAsync(unpacked, cancel);
                if (place.Postgres is null) return await CheckAndMoveAsync(unpacked, part, target, progress, cancel);
                await MoveAsync(unpacked, place with { Folder = target }, part, clock, progress, cancel);
            }

            using var ledger = await Ledger.OpenAsync(place with { Folder = target }, clock, cancel);
            return await LedgerCheck.RunAsync(ledger, progress, cancel);
        }
        finally
        {
            if (Directory.Exists(part)) Directory.Delete(part, recursive: true);
        }
    }

    private static async Task<CheckReport> CheckAndMoveAsync(Ledger unpacked, string part, string target, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        var report = await LedgerCheck.RunAsync(unpacked, progress, cancel);
        await unpacked.Database.ClearDeletedAsync(cancel);
        unpacked.Dispose();
        MoveFolder(part, target);
        return report;
    }

    /// <summary>Brings what was unpacked into a PostgreSQL database: its rows in one transaction, the photographs just before that is committed.</summary>
    private static async Task MoveAsync(Ledger unpacked, StorePlace place, string part, TimeProvider clock, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        string empty = part + ".database"; // the opening wants a folder; this one stays empty but for those that it makes
        try
        {
            using var ledger = await Ledger.OpenAsync(place with { Folder = empty }, clock, cancel);
            try
            {
                await using LedgerContext from = unpacked.Ask(), to = ledger.Ask();
                await from.Database.OpenConnectionAsync(cancel);
                await using var writing = await ledger.Database.BeginWritingAsync(to, cancel);
                if (await TableCopy.FirstWithRowsAsync(to, cancel) is { } full) throw new IOException($"The {place} is not empty ('{full}' holds something): a backup is restored into an empty one only.");
                await to.Store.ExecuteDeleteAsync(cancel);
                await TableCopy.RunAsync(from, to, progress, cancel);
                await from.Database.CloseConnectionAsync();
                unpacked.Dispose();
                foreach (string database in Directory.EnumerateFiles(part)) File.Delete(database);
                MoveFolder(part, place.Folder);
                await CommitAsync(writing, place.Folder, part, cancel);
            }
            catch (Exception fault) when (ledger.Database.TroubleIn(fault) is { } trouble)
            {
                throw trouble.ToException(fault);
            }
        }
        finally
        {
            if (Directory.Exists(empty)) Directory.Delete(empty, recursive: true);
        }
    }

    private static async Task CommitAsync(IDbContextTransaction writing, string folder, string part, CancellationToken cancel)
    {
        try
        {
            await writing.CommitAsync(cancel);
        }
        catch
        {
            Directory.Move(folder, part);
            throw;
        }
    }

    private static void MoveFolder(string part, string target)
    {
        if (Directory.Exists(target)) Directory.Delete(target);
        Directory.Move(part, target);
        Disk.FlushFolder(Path.GetDirectoryName(target)!);
    }

    private static async Task UnpackAsync(string file, string part, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        BackupPage? page = null;
        long photographs = 0;
        var folder = new PhotographFolder(Path.Combine(part, "photographs"));
        folder.Prepare();
        await using var stream = File.OpenRead(file);
        await using var archive = new TarReader(stream);
        try
        {
            while (page is null && await archive.GetNextEntryAsync(copyData: false, cancel) is { } entry)
            {
                if (entry.EntryType != TarEntryType.RegularFile || entry.DataStream is not { } data) throw new InvalidDataException($"'{file}' holds '{entry.Name}', which is no part of a backup.");
                if (entry.Name == Backup.DatabaseName) await CopyAsync(data, Path.Combine(part, Backup.DatabaseName), cancel);
                else if (entry.Name == Backup.PageName && data.Length <= LongestPage) page = JsonSerializer.Deserialize(data, BackupJson.Default.BackupPage);
                else await AddPhotographAsync(folder, entry.Name, data, file, cancel);
                if (entry.Name.StartsWith(Backup.PhotographPrefix, StringComparison.Ordinal)) photographs++;
                progress?.Report(new StoreProgress("unpacking", stream.Position, stream.Length));
            }
        }
        catch (Exception broken) when (broken is JsonException or EndOfStreamException or FormatException)
        {
            throw new InvalidDataException($"'{file}' is no whole backup: {broken.Message}", broken);
        }

        if (page is not { Format: Backup.Format }) throw new InvalidDataException($"'{file}' is no whole backup: the page at its end is missing.");
        string database = Path.Combine(part, Backup.DatabaseName);
        if (!File.Exists(database) || await Backup.HashOfAsync(database, cancel) != page.Database) throw new InvalidDataException($"The database in '{file}' is not the one that was backed up.");
        if (photographs != page.Photographs) throw new InvalidDataException($"'{file}' holds {photographs} photographs, not {page.Photographs}.");
    }

    private static async Task AddPhotographAsync(PhotographFolder folder, string name, Stream data, string file, CancellationToken cancel)
    {
        if (!name.StartsWith(Backup.PhotographPrefix, StringComparison.Ordinal)) throw new InvalidDataException($"'{file}' holds '{name}', which is no part of a backup.");
        var adding = await folder.AddAsync(data, cancel);
        if (adding.IsRefused) throw new IOException(adding.Refusal);
        if (Backup.PhotographPrefix + adding.Sha256 != name) throw new InvalidDataException($"'{name}' in '{file}' is not the photograph that was backed up.");
    }

    private static async Task CopyAsync(Stream from, string to, CancellationToken cancel)
    {
        await using var file = new FileStream(to, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        await from.CopyToAsync(file, cancel);
        file.Flush(flushToDisk: true);
    }

    private static async Task BecomeOtherDeviceAsync(Ledger ledger, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        await context.Database.OpenConnectionAsync(cancel);
        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL;", cancel);
        (await context.Store.SingleAsync(cancel)).Device = LedgerOpening.NewDevice();
        await context.SaveChangesAsync(cancel);
    }
}
