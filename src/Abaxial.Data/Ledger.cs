using System.Collections.Immutable;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>
/// The ledger of a clinic in a folder: one SQLite file and the photographs beside it. It may be used from many threads, and from several programs at once. Whatever it says is
/// done is on the disk.
/// </summary>
public sealed class Ledger : IDisposable
{
    private const string File = "ledger.db";

    private readonly DbContextOptions<SqliteLedgerContext> options;
    private readonly TimeProvider clock;
    private readonly SemaphoreSlim oneWriter = new(1, 1); // waits in order, which SQLite's own lock does not

    private Ledger(string folder, TimeProvider clock, SampleReader reader)
    {
        Reader = reader;
        Folder = Path.GetFullPath(folder);
        this.clock = clock;
        options = SqliteLedgerContext.OptionsFor(DatabaseFile, mayCreate: true);
        Photographs = new PhotographFolder(Path.Combine(Folder, "photographs"));
    }

    public string Folder { get; }

    public PhotographFolder Photographs { get; }

    /// <summary>The knowledge that the rows of samples are made with.</summary>
    internal SampleReader Reader { get; }

    internal string DatabaseFile => Path.Combine(Folder, File);

    /// <summary>Whether a folder holds a ledger.</summary>
    public static bool IsIn(string folder) => System.IO.File.Exists(Path.Combine(folder, File));

    /// <summary>Opens the ledger of a folder; makes a new one where there is none, and brings an older one up to date.</summary>
    /// <exception cref="InvalidDataException">It was written by a newer version of this program, or is no ledger.</exception>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static Task<Ledger> OpenAsync(string folder, TimeProvider clock, CancellationToken cancel = default) => OpenAsync(folder, clock, SampleReader.BuiltIn, cancel);

    /// <inheritdoc cref="OpenAsync(string, TimeProvider, CancellationToken)"/>
    /// <param name="folder">The folder.</param>
    /// <param name="clock">Says what time it is.</param>
    /// <param name="reader">The knowledge that samples are read and weighed with for lists and search.</param>
    /// <param name="cancel">Stops the opening.</param>
    public static async Task<Ledger> OpenAsync(string folder, TimeProvider clock, SampleReader reader, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(clock);
        Directory.CreateDirectory(folder);
        var ledger = new Ledger(folder, clock, reader);
        try
        {
            await LedgerOpening.RunAsync(ledger, cancel);
        }
        catch (SqliteException fault)
        {
            throw new InvalidDataException($"'{ledger.DatabaseFile}' cannot be opened: {fault.Message}", fault);
        }

        ledger.Photographs.Prepare();
        return ledger;
    }

    /// <summary>A context to ask; whoever asks for it disposes of it.</summary>
    public LedgerContext Ask() => new SqliteLedgerContext(options);

    /// <summary>Writes one entry.</summary>
    public Task<Appended> AppendAsync(EntryDraft draft, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return WriteAsync(writing => writing.AppendAsync(draft, cancel), appended => !appended.IsRefused, cancel);
    }

    /// <summary>Takes a sample in, gives it the year's next number and writes what else is known of it: all of it or nothing.</summary>
    /// <returns>The entry that took it in, or the refusal.</returns>
    public Task<Appended> TakeInAsync(EntryDraft takenIn, IEnumerable<Payload> more, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(takenIn);
        ArgumentNullException.ThrowIfNull(more);
        return WriteAsync(TakeIn, appended => !appended.IsRefused, cancel);

        async Task<Appended> TakeIn(LedgerWriting writing)
        {
            var first = await writing.AppendAsync(takenIn, cancel);
            if (first.IsRefused || first.WasThere) return first;
            var next = await writing.NumberAsync(first.Entry.Id, takenIn.Author, cancel);
            foreach (var payload in more)
            {
                if (!next.IsRefused) next = await writing.AppendAsync(new EntryDraft { Sample = first.Entry.Id, Author = takenIn.Author, Made = takenIn.Made, Payload = payload }, cancel);
            }

            return next.IsRefused ? next : first;
        }
    }

    /// <summary>Takes in entries of other devices, with the texts that they seal: any order, any number of times.</summary>
    public async Task<Merged> MergeAsync(IReadOnlyList<ReadOnlyMemory<byte>> entries, IReadOnlyList<SealedText> texts, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(texts);
        int added = 0, there = 0;
        bool erases = false;
        var refused = ImmutableArray.CreateBuilder<(int, ImmutableArray<Weighing.CaseProblem>)>();
        await WriteAsync(Merge, _ => true, cancel);
        if (erases) await CutLogAsync(cancel);
        return new Merged(added, there, refused.ToImmutable());

        async Task<bool> Merge(LedgerWriting writing)
        {
            for (int i = 0; i < entries.Count; i++)
            {
                var outcome = await writing.MergeAsync(entries[i], cancel);
                if (outcome.IsRefused) refused.Add((i, outcome.Problems));
                else if (outcome.WasThere) there++;
                else added++;
                erases |= outcome.Entry?.Kind == EntryKind.PersonErased && !outcome.WasThere;
            }

            foreach (var text in texts.Where(text => text.Fault() is null)) await writing.KeepAsync(text, cancel);
            return true;
        }
    }

    /// <summary>Deletes every text about a person, and writes an entry that says so into each sample that seals one.</summary>
    public async Task<Erased> EraseAsync(string person, string author, CancellationToken cancel = default)
    {
        var (samples, texts) = await WriteAsync(Erase, _ => true, cancel);
        return new Erased(samples, texts, await CutLogAsync(cancel));

        async Task<(ImmutableArray<EntryId>, int)> Erase(LedgerWriting writing)
        {
            var holding = await writing.SamplesOfAsync(person, cancel);
            foreach (var sample in holding)
            {
                var told = await writing.AppendAsync(new EntryDraft { Sample = sample, Author = author, Payload = new PersonErased(person) }, cancel);
                if (told.IsRefused) throw new ArgumentException($"'{author}' or '{person}' is no id.", nameof(person));
            }

            return (holding, await writing.ForgetAsync(person, cancel));
        }
    }

    /// <summary>Stores a photograph. Once it says so the bytes are on the disk under their hash.</summary>
    public async Task<PhotographAdding> AddPhotographAsync(Stream bytes, CancellationToken cancel = default)
    {
        var adding = await Photographs.AddAsync(bytes, cancel);
        if (adding.IsRefused) return adding;
        await WriteContextAsync(async context =>
        {
            if (await context.Photographs.FindAsync([adding.Sha256], cancel) is not null) return false;
            context.Photographs.Add(new PhotographRow { Sha256 = adding.Sha256, Bytes = adding.Bytes, Received = clock.GetUtcNow() });
            await context.SaveChangesAsync(cancel);
            return true;
        }, isKept => isKept, cancel);
        return adding;
    }

    /// <summary>Writes the rows that were made with other knowledge than <see cref="OpenAsync(string, TimeProvider, SampleReader, CancellationToken)"/> was given; others may write meanwhile.</summary>
    /// <returns>How many there were.</returns>
    public Task<long> RefreshAsync(IProgress<StoreProgress>? progress = null, CancellationToken cancel = default) => SampleRefresh.StaleAsync(this, progress, cancel);

    /// <summary>Writes the row of every sample anew; others may write meanwhile.</summary>
    /// <returns>How many samples there are.</returns>
    public Task<long> RebuildAsync(IProgress<StoreProgress>? progress = null, CancellationToken cancel = default) => SampleRefresh.AllAsync(this, progress, cancel);

    /// <summary>The entries of a sample, in the order in which they were received.</summary>
    public async Task<ImmutableArray<Entry>> EntriesOfAsync(EntryId sample, CancellationToken cancel = default)
    {
        await using var context = Ask();
        string id = sample.ToString();
        return [.. (await context.Entries.AsNoTracking().Where(row => row.Sample == id).OrderBy(row => row.Row).Select(row => row.Text).ToListAsync(cancel)).Select(LedgerWriting.Parsed)];
    }

    /// <summary>Copies the log into the database and cuts it, so that nothing deleted is left in it.</summary>
    /// <returns>False where a long reader kept it from being cut.</returns>
    internal async Task<bool> CutLogAsync(CancellationToken cancel)
    {
        await using var context = Ask();
        await context.Database.OpenConnectionAsync(cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA busy_timeout = 2000";
        await command.ExecuteNonQueryAsync(cancel);
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)"; // its first column says whether somebody was in the way
        for (int attempt = 0; attempt < 5; attempt++)
        {
            if (Convert.ToInt64(await command.ExecuteScalarAsync(cancel), System.Globalization.CultureInfo.InvariantCulture) == 0) return true;
        }

        return false;
    }

    /// <summary>Closes what is open, so that the folder can be moved or taken away.</summary>
    public void Dispose()
    {
        oneWriter.Dispose();
        using var context = Ask();
        SqliteConnection.ClearPool((SqliteConnection)context.Database.GetDbConnection());
    }

    private Task<T> WriteAsync<T>(Func<LedgerWriting, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel) =>
        WriteContextAsync(async context =>
        {
            var writing = new LedgerWriting(context, clock);
            var result = await write(writing);
            if (isKept(result)) await new SampleRows(context, Reader).WriteAsync(writing.Touched, cancel);
            return result;
        }, isKept, cancel);

    /// <summary>Runs something as the only writer; where it is not to be kept nothing is written.</summary>
    internal async Task<T> WriteContextAsync<T>(Func<LedgerContext, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel)
    {
        await oneWriter.WaitAsync(cancel);
        try
        {
            await using var context = Ask();
            await using var transaction = await context.Database.BeginTransactionAsync(cancel); // takes the write lock at once
            var result = await write(context);
            if (isKept(result)) await transaction.CommitAsync(cancel);
            return result;
        }
        finally
        {
            oneWriter.Release();
        }
    }
}
