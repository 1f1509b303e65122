using System.Collections.Immutable;
using System.Data.Common;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>
/// The ledger of a clinic: a database, which is an SQLite file in a folder or lies on a PostgreSQL server, and the photographs in the folder. It may be used from many threads,
/// and from several programs at once. Whatever it says is done is on the disk.
/// </summary>
public sealed class Ledger : IDisposable
{
    private readonly TimeProvider clock;

    private Ledger(StorePlace place, ILedgerDatabase database, TimeProvider clock, SampleReader reader)
    {
        Place = place;
        Database = database;
        Reader = reader;
        this.clock = clock;
        Writers = new WriteQueue(database);
        Photographs = new PhotographFolder(Path.Combine(place.Folder, "photographs"));
    }

    public StorePlace Place { get; }

    public string Folder => Place.Folder;

    public PhotographFolder Photographs { get; }

    /// <summary>The knowledge that the rows of samples are made with.</summary>
    internal SampleReader Reader { get; }

    internal ILedgerDatabase Database { get; }

    internal WriteQueue Writers { get; }

    /// <summary>Whether a folder holds a ledger on SQLite.</summary>
    public static bool IsIn(string folder) => File.Exists(Path.Combine(folder, SqliteDatabase.Name));

    /// <summary>Whether there is a ledger at a place.</summary>
    /// <exception cref="InvalidDataException">The connection string cannot be read.</exception>
    /// <exception cref="IOException">The database cannot be reached, or does not let us in.</exception>
    public static async Task<bool> IsAtAsync(StorePlace place, CancellationToken cancel = default)
    {
        using var database = DatabaseAt(place);
        try
        {
            return await database.IsThereAsync(cancel);
        }
        catch (Exception fault) when (database.TroubleIn(fault) is { } trouble)
        {
            throw trouble.ToException(fault);
        }
    }

    /// <summary>Opens the ledger on SQLite in a folder; makes a new one where there is none, and brings an older one up to date.</summary>
    /// <exception cref="InvalidDataException">It was written by a newer version of this program, or is no ledger.</exception>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static Task<Ledger> OpenAsync(string folder, TimeProvider clock, CancellationToken cancel = default) => OpenAsync(new StorePlace(folder), clock, cancel);

    /// <summary>Opens the ledger at a place; makes a new one where there is none, and brings an older one up to date.</summary>
    /// <exception cref="InvalidDataException">It was written by a newer version of this program, is no ledger, or the connection string cannot be read.</exception>
    /// <exception cref="IOException">The folder cannot be written to, or the database cannot be reached or does not let us in.</exception>
    public static Task<Ledger> OpenAsync(StorePlace place, TimeProvider clock, CancellationToken cancel = default) => OpenAsync(place, clock, SampleReader.BuiltIn, cancel);

    /// <inheritdoc cref="OpenAsync(StorePlace, TimeProvider, CancellationToken)"/>
    /// <param name="place">The place.</param>
    /// <param name="clock">Says what time it is.</param>
    /// <param name="reader">The knowledge that samples are read and weighed with for lists and search.</param>
    /// <param name="cancel">Stops the opening.</param>
    public static async Task<Ledger> OpenAsync(StorePlace place, TimeProvider clock, SampleReader reader, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(reader);
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(clock);
        place = place with { Folder = Path.GetFullPath(place.Folder) };
        if (place.Postgres is not null && IsIn(place.Folder)) throw new IOException($"'{place.Folder}' holds a store on SQLite. A store on PostgreSQL keeps its photographs in a folder of its own; backup and restore bring the one into the other.");
        var database = DatabaseAt(place);
        try
        {
            Directory.CreateDirectory(place.Folder);
            var ledger = new Ledger(place, database, clock, reader);
            await LedgerOpening.RunAsync(ledger, cancel);
            ledger.Photographs.Prepare();
            return ledger;
        }
        catch (Exception fault)
        {
            database.Dispose();
            if (database.TroubleIn(fault) is { } trouble) throw trouble.ToException(fault);
            if (fault is DbException) throw new InvalidDataException($"{place} cannot be opened: {fault.Message}", fault);
            throw;
        }
    }

    /// <summary>A context to ask; whoever asks for it disposes of it.</summary>
    public LedgerContext Ask() => Database.Ask();

    /// <summary>Writes one entry.</summary>
    public Task<Appended> AppendAsync(EntryDraft draft, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return AppendAsync(writing => writing.AppendAsync(draft, cancel), cancel);
    }

    /// <summary>Takes a sample in, gives it the year's next number and writes what else is known of it: all of it or nothing.</summary>
    /// <returns>The entry that took it in, or the refusal.</returns>
    public Task<Appended> TakeInAsync(EntryDraft takenIn, IEnumerable<Payload> more, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(takenIn);
        ArgumentNullException.ThrowIfNull(more);
        return AppendAsync(TakeIn, cancel);

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
        if (erases) await Database.ClearDeletedAsync(cancel);
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
        return new Erased(samples, texts, await Database.ClearDeletedAsync(cancel));

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
    public Task<PhotographAdding> AddPhotographAsync(Stream bytes, CancellationToken cancel = default) => AddPhotographAsync(bytes, PhotographFolder.Unseen, cancel);

    /// <summary>Stores a photograph that a judge lets pass, who sees the bytes before they are stored.</summary>
    public async Task<PhotographAdding> AddPhotographAsync(Stream bytes, PhotographJudge judge, CancellationToken cancel = default)
    {
        var (adding, judgement) = await Photographs.AddAsync(bytes, judge, cancel);
        if (adding.IsRefused) return adding;
        try
        {
            var (isNew, _) = await WriteAsync(writing => writing.NoteAsync(adding, judgement, cancel), noted => noted.IsChanged, cancel);
            if (isNew) LedgerFigures.CountPhotograph();
            return adding with { WasThere = !isNew };
        }
        catch (IOException full) when (Disk.IsFull(full))
        {
            return new PhotographAdding { IsDiskFull = true, Refusal = "The disk is full: the photograph was not stored." };
        }
    }

    /// <summary>Writes the rows that were made with other knowledge than <see cref="OpenAsync(StorePlace, TimeProvider, SampleReader, CancellationToken)"/> was given; others may write meanwhile.</summary>
    /// <returns>How many there were.</returns>
    public Task<long> RefreshAsync(IProgress<StoreProgress>? progress = null, CancellationToken cancel = default) => SampleRefresh.StaleAsync(this, progress, cancel);

    /// <summary>Writes the row of every sample anew; others may write meanwhile.</summary>
    /// <param name="batch">Samples of one transaction: the fewer, the less others wait; the more, the sooner it is done.</param>
    /// <param name="progress">Told of what is done.</param>
    /// <param name="cancel">Stops it after a whole transaction.</param>
    /// <returns>How many samples there are.</returns>
    public Task<long> RebuildAsync(int batch = SampleRefresh.Batch, IProgress<StoreProgress>? progress = null, CancellationToken cancel = default) => SampleRefresh.AllAsync(this, batch, progress, cancel);

    /// <summary>The entries of a sample, in the order in which they were received.</summary>
    public async Task<ImmutableArray<Entry>> EntriesOfAsync(EntryId sample, CancellationToken cancel = default)
    {
        await using var context = Ask();
        string id = sample.ToString();
        return [.. (await context.Entries.AsNoTracking().Where(row => row.Sample == id).OrderBy(row => row.Row).Select(row => row.Text).ToListAsync(cancel)).Select(LedgerWriting.Parsed)];
    }

    /// <summary>What an exception met while asking says about the database, in words for people: that it is away, full or damaged; null where it says nothing about it.</summary>
    public string? TroubleIn(Exception fault) => Database.TroubleIn(fault)?.Words;

    /// <summary>Closes what is open, so that the folder can be moved or taken away.</summary>
    public void Dispose() => Database.Dispose();

    private static ILedgerDatabase DatabaseAt(StorePlace place) => place.Postgres is { } connection ? new PostgresDatabase(connection) : new SqliteDatabase(place.Folder);

    private async Task<Appended> AppendAsync(Func<LedgerWriting, Task<Appended>> write, CancellationToken cancel)
    {
        try
        {
            return await WriteAsync(write, appended => !appended.IsRefused, cancel);
        }
        catch (IOException full) when (Disk.IsFull(full))
        {
            return Appended.Refuse("", full.Message, "an entry for which there is room on the disk");
        }
    }

    private async Task<T> WriteAsync<T>(Func<LedgerWriting, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel)
    {
        LedgerWriting? writing = null;
        var result = await WriteContextAsync(async context =>
        {
            writing = new LedgerWriting(context, clock);
            var written = await write(writing);
            if (isKept(written)) await new SampleRows(context, Reader).WriteAsync(writing.Touched, cancel);
            if (writing.HasForgotten) await WordIndex.PurgeAsync(context, cancel);
            return written;
        }, isKept, cancel);
        if (isKept(result)) LedgerFigures.CountEntries(writing!.Written);
        return result;
    }

    /// <summary>Runs something as the only writer; where it is not to be kept nothing is written.</summary>
    internal Task<T> WriteContextAsync<T>(Func<LedgerContext, Task<T>> write, Func<T, bool> isKept, CancellationToken cancel) => Writers.RunAsync(write, isKept, cancel);
}
