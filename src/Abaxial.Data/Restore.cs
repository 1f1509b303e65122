using System.Formats.Tar;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>Makes a store of a backup.</summary>
public static class Restore
{
    private const int LongestPage = 64 << 10;

    /// <summary>Reads a backup into a folder that is not there or empty, and checks the store that comes of it.</summary>
    /// <remarks>The restored store writes as a device of its own: the one that was backed up may live on, and two stores must not write one chain.</remarks>
    /// <returns>The check of the restored store, photographs by hash.</returns>
    /// <exception cref="InvalidDataException">The file is no whole backup, or what is in it is not what was put in. Nothing is left in the folder.</exception>
    /// <exception cref="IOException">The folder is not empty, or the disk cannot be read or written.</exception>
    public static async Task<CheckReport> ReadAsync(string file, string folder, TimeProvider clock, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)), part = target + ".restoring";
        if (File.Exists(target) || (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any())) throw new IOException($"'{folder}' is not empty: a backup is restored into a new folder only.");
        if (Directory.Exists(part)) throw new IOException($"'{part}' is there from a restoring that did not end: take it away first.");
        try
        {
            Directory.CreateDirectory(part);
            await UnpackAsync(file, part, progress, cancel);
            CheckReport report;
            using (var ledger = await Ledger.OpenAsync(part, clock, cancel))
            {
                await BecomeOtherDeviceAsync(ledger, cancel);
                report = await LedgerCheck.RunAsync(ledger, progress, cancel);
                await ledger.CutLogAsync(cancel);
            }

            if (Directory.Exists(target)) Directory.Delete(target);
            Directory.Move(part, target);
            Disk.FlushFolder(Path.GetDirectoryName(target)!);
            return report;
        }
        finally
        {
            if (Directory.Exists(part)) Directory.Delete(part, recursive: true);
        }
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
