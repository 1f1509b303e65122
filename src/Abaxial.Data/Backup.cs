using System.Collections.Immutable;
using System.Formats.Tar;
using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>What a backup came to.</summary>
/// <param name="Entries">Entries in it.</param>
/// <param name="Photographs">Photographs in it.</param>
/// <param name="Faults">Photographs that are not in it, and why.</param>
public sealed record BackupReport(long Entries, long Photographs, ImmutableArray<StoreFault> Faults);

/// <summary>
/// Copies a store into one file, a tar archive, while it is written to: the database as of one moment, as an SQLite file whatever kind it is of, then the photographs that it
/// knows, then a page that says what is in it. The page stands last, so that half an archive is seen to be one.
/// </summary>
public static class Backup
{
    internal const string DatabaseName = "ledger.db";
    internal const string PhotographPrefix = "photographs/";
    internal const string PageName = "backup.json";
    internal const string Format = "abaxial-backup/1";

    /// <summary>Makes a backup.</summary>
    /// <exception cref="IOException">The file exists, or cannot be written, or the database went away; nothing is left of it.</exception>
    public static async Task<BackupReport> WriteAsync(Ledger ledger, string file, TimeProvider clock, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(clock);
        if (File.Exists(file)) throw new IOException($"There is a file '{file}' already.");
        string part = file + ".part", copy = file + ".database";
        try
        {
            File.Delete(copy);
            await ledger.Database.CopyAsync(copy, progress, cancel);
            var report = await WriteArchiveAsync(ledger, copy, part, clock, progress, cancel);
            File.Move(part, file);
            Disk.FlushFolder(Path.GetDirectoryName(Path.GetFullPath(file))!);
            return report;
        }
        catch (Exception fault) when (ledger.Database.TroubleIn(fault) is { } trouble)
        {
            throw trouble.ToException(fault);
        }
        finally
        {
            File.Delete(part);
            File.Delete(copy);
        }
    }

    private static async Task<BackupReport> WriteArchiveAsync(Ledger ledger, string copy, string part, TimeProvider clock, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        var faults = ImmutableArray.CreateBuilder<StoreFault>();
        long entries, kept = 0;
        List<PhotographRow> photographs;
        await using (var context = new SqliteLedgerContext(SqliteLedgerContext.OptionsFor(copy, mayCreate: false, pooling: false)))
        {
            entries = await context.Entries.LongCountAsync(cancel);
            photographs = await context.Photographs.AsNoTracking().OrderBy(row => row.Sha256).ToListAsync(cancel);
        }

        await using var stream = new FileStream(part, FileMode.Create, FileAccess.Write, FileShare.None);
        await using (var archive = new TarWriter(stream, TarEntryFormat.Pax, leaveOpen: true))
        {
            await archive.WriteEntryAsync(copy, DatabaseName, cancel);
            for (int i = 0; i < photographs.Count; i++)
            {
                var row = photographs[i];
                if (await LedgerCheck.FaultOfPhotographAsync(ledger.Photographs, row, cancel) is { } fault)
                {
                    faults.Add(new StoreFault($"photograph {row.Sha256}", fault));
                    continue;
                }

                await archive.WriteEntryAsync(ledger.Photographs.PathOf(row.Sha256), PhotographPrefix + row.Sha256, cancel);
                kept++;
                progress?.Report(new StoreProgress("photographs", i + 1, photographs.Count));
            }

            var page = new BackupPage(Format, clock.GetUtcNow(), await HashOfAsync(copy, cancel), entries, kept);
            using var bytes = new MemoryStream(JsonSerializer.SerializeToUtf8Bytes(page, BackupJson.Default.BackupPage));
            await archive.WriteEntryAsync(new PaxTarEntry(TarEntryType.RegularFile, PageName) { DataStream = bytes }, cancel);
        }

        stream.Flush(flushToDisk: true);
        return new BackupReport(entries, kept, faults.ToImmutable());
    }

    internal static async Task<string> HashOfAsync(string file, CancellationToken cancel)
    {
        await using var stream = File.OpenRead(file);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancel));
    }
}

/// <summary>The page that says what is in a backup.</summary>
internal sealed record BackupPage(string Format, DateTimeOffset Made, string Database, long Entries, long Photographs);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(BackupPage))]
internal sealed partial class BackupJson : JsonSerializerContext;
