using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Abaxial.Samples;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>Something in a store that does not fit.</summary>
/// <param name="What">What does not fit: an entry, a photograph, a text, the database.</param>
/// <param name="Found">What is wrong with it, in a sentence.</param>
public sealed record StoreFault(string What, string Found);

/// <summary>What a check of a store came to.</summary>
/// <param name="Entries">Entries walked.</param>
/// <param name="Samples">Samples that they belong to.</param>
/// <param name="Devices">Devices that wrote them.</param>
/// <param name="Photographs">Photographs in the store.</param>
/// <param name="SealedTexts">Texts about people in the store.</param>
/// <param name="Faults">What does not fit, in the order in which it was found; at most <see cref="LedgerCheck.MostFaults"/>.</param>
public sealed record CheckReport(long Entries, long Samples, long Devices, long Photographs, long SealedTexts, ImmutableArray<StoreFault> Faults)
{
    public bool IsClean => Faults.IsEmpty;
}

/// <summary>How far something long is.</summary>
/// <param name="What">What is being done.</param>
/// <param name="Done">How much of it is done.</param>
/// <param name="Total">How much there is; 0 where that is not known.</param>
public readonly record struct StoreProgress(string What, long Done, long Total);

/// <summary>Walks a whole store, as it stood when the walk began, and holds everything in it against everything else.</summary>
public sealed class LedgerCheck
{
    /// <summary>Faults that a report names.</summary>
    public const int MostFaults = 100;

    private readonly Ledger ledger;
    private readonly LedgerContext context;
    private readonly IProgress<StoreProgress>? progress;
    private readonly List<StoreFault> faults = [];
    private readonly EntryFacts facts = new();

    private LedgerCheck(Ledger ledger, LedgerContext context, IProgress<StoreProgress>? progress)
    {
        this.ledger = ledger;
        this.context = context;
        this.progress = progress;
    }

    /// <summary>Checks a store. It may be written to meanwhile.</summary>
    public static async Task<CheckReport> RunAsync(Ledger ledger, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        await using var context = ledger.Ask();
        var check = new LedgerCheck(ledger, context, progress);
        try
        {
            return await check.RunAsync(cancel);
        }
        catch (Exception damage) when (damage is SqliteException or FormatException or InvalidCastException or InvalidOperationException)
        {
            check.Note("the database", $"It is damaged: {damage.Message}");
            return check.Report(0, 0, 0);
        }
    }

    private async Task<CheckReport> RunAsync(CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        await using (var command = context.Database.GetDbConnection().CreateCommand())
        {
            command.CommandText = "PRAGMA integrity_check(1)";
            if (await command.ExecuteScalarAsync(cancel) is not "ok" and var problem) Note("the database", $"It is damaged: {problem}");
        }

        // One moment of the store, however long the walk takes; it keeps no writer waiting.
        await using var moment = ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
        await context.Database.UseTransactionAsync(moment, cancel);
        long devices = await WalkChainsAsync(cancel);
        foreach (var (head, entry) in facts.Missing()) Note($"entry {entry}", $"Its author had seen entry {head} of its sample, which is not here.");
        long texts = await WalkTextsAsync(cancel);
        long photographs = await WalkPhotographsAsync(cancel);
        await WalkIndexesAsync(cancel);
        return Report(devices, texts, photographs);
    }

    private CheckReport Report(long devices, long texts, long photographs) => new(facts.Count, facts.Samples, devices, photographs, texts, [.. faults]);

    private async Task<long> WalkChainsAsync(CancellationToken cancel)
    {
        long total = await context.Entries.LongCountAsync(cancel);
        var ends = await context.Chains.AsNoTracking().ToDictionaryAsync(row => row.Device, cancel);
        var at = new Dictionary<string, (long Place, string Hash)>(StringComparer.Ordinal);
        await foreach (var row in context.Entries.AsNoTracking().OrderBy(row => row.Device).ThenBy(row => row.Place).AsAsyncEnumerable().WithCancellation(cancel))
        {
            var before = at.GetValueOrDefault(row.Device, (Place: 0, Hash: Entry.NothingBefore));
            WalkEntry(row, before.Place, before.Hash);
            at[row.Device] = (row.Place, row.Hash);
            if (facts.Count % 256 == 0) progress?.Report(new StoreProgress("entries", facts.Count, total));
        }

        foreach (var (device, last) in at)
        {
            if (!ends.Remove(device, out var end)) Note($"device {device}", "The end of its chain is not noted.");
            else if ((end.Place, end.Hash) != last) Note($"device {device}", $"Its chain should end with entry {end.Place}, and ends with entry {last.Place}: entries were changed or taken out at its end.");
        }

        foreach (var end in ends.Values) Note($"device {end.Device}", $"Its chain should end with entry {end.Place}, and no entry of it is here.");
        return at.Count;
    }

    private void WalkEntry(EntryRow row, long place, string hash)
    {
        string name = $"entry {row.Id}";
        var reading = EntryReader.Read(Encoding.UTF8.GetBytes(row.Text));
        string? fault = Entry.HashOf(row.Text) != row.Hash ? "Its content is not what its hash was taken over."
            : reading.IsRefused ? "It cannot be read."
            : row.Id != reading.Entry.Id.ToString() || row.Sample != reading.Entry.Sample.ToString() || row.Device != reading.Entry.Device || row.Place != reading.Entry.Place || row.Kind != reading.Entry.Kind ? "It is not stored under what it says itself."
            : EntryChain.Misfit(reading.Entry, place, hash);
        if (fault is not null) Note(name, fault);
        facts.Add(row.Id, reading.Entry);
    }

    private async Task<long> WalkTextsAsync(CancellationToken cancel)
    {
        var erased = (await context.Erasures.Select(row => row.Person).ToListAsync(cancel)).ToHashSet(StringComparer.Ordinal);
        foreach (string person in facts.Erased.Except(erased)) Note($"person {person}", "An entry says that the person was erased, and the store does not know it.");
        foreach (string person in erased.Except(facts.Erased).Intersect(facts.Seals.Select(pair => pair.Seal.Person))) Note($"person {person}", "The store says that the person was erased, and no entry does.");
        var here = new HashSet<string>(StringComparer.Ordinal);
        await foreach (var row in context.SealedTexts.AsNoTracking().AsAsyncEnumerable().WithCancellation(cancel))
        {
            var text = new SealedText(row.Person, row.Salt, row.Text);
            if (text.Fault() is not null || text.Seal().Sha256 != row.Sha256) Note($"text {row.Sha256}", "It is not what was sealed.");
            if (erased.Contains(row.Person)) Note($"text {row.Sha256}", "It is about a person who was erased.");
            here.Add(row.Sha256);
        }

        foreach (var (seal, entry) in facts.Seals.Where(pair => !here.Contains(pair.Seal.Sha256) && !erased.Contains(pair.Seal.Person))) Note($"entry {entry}", $"A text that it seals is not here ({seal.Sha256}).");
        return here.Count;
    }

    private async Task<long> WalkPhotographsAsync(CancellationToken cancel)
    {
        var rows = await context.Photographs.AsNoTracking().OrderBy(row => row.Sha256).ToListAsync(cancel);
        long done = 0;
        foreach (var row in rows)
        {
            if (await FaultOfPhotographAsync(ledger.Photographs, row, cancel) is { } fault) Note($"photograph {row.Sha256}", fault);
            progress?.Report(new StoreProgress("photographs", ++done, rows.Count));
        }

        var here = rows.Select(row => row.Sha256).ToHashSet(StringComparer.Ordinal);
        foreach (var (photograph, entry) in facts.Photographs.Where(pair => !here.Contains(pair.Sha256))) Note($"entry {entry}", $"The photograph that it names is not here ({photograph}).");
        return rows.Count;
    }

    /// <summary>What is wrong with a photograph; null where nothing is.</summary>
    internal static async Task<string?> FaultOfPhotographAsync(PhotographFolder folder, PhotographRow row, CancellationToken cancel)
    {
        try
        {
            await using var file = File.OpenRead(folder.PathOf(row.Sha256));
            bool isSame = file.Length == row.Bytes && Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancel)) == row.Sha256;
            return isSame ? null : "Its bytes are not what its hash was taken over.";
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            return "It is not here.";
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return $"It cannot be read: {unreadable.Message}";
        }
    }

    private async Task WalkIndexesAsync(CancellationToken cancel)
    {
        var stored = await context.Numbers.AsNoTracking().ToListAsync(cancel);
        var keys = stored.Select(row => (row.Number, row.Sample)).ToHashSet();
        foreach (var (number, sample) in facts.Numbers.Except(keys)) Note($"sample {sample}", $"Its number {number} is not noted.");
        foreach (var (number, sample) in keys.Except(facts.Numbers)) Note($"sample {sample}", $"The number {number} is noted for it, and no entry gave it.");
        foreach (var row in stored.Where(row => SampleNumber.TryParse(row.Number, out var number) && (number.Year, number.Running) != (row.Year, row.Running))) Note($"sample {row.Sample}", $"Its number {row.Number} is not stored under its year.");
        if (await context.Store.CountAsync(cancel) != 1) Note("the database", "It does not say which device it writes as.");
    }

    private void Note(string what, string found)
    {
        if (faults.Count < MostFaults) faults.Add(new StoreFault(what, found));
    }
}
