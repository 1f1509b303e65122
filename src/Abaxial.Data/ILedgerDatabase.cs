using Microsoft.EntityFrameworkCore.Storage;

namespace Abaxial.Data;

/// <summary>What SQLite and PostgreSQL do each in their own way; all else of the store is the same for both (decision 0016).</summary>
internal interface ILedgerDatabase : IDisposable
{
    /// <summary>A context to ask; whoever asks for it disposes of it.</summary>
    LedgerContext Ask();

    /// <summary>Whether the database can be asked for a store; on PostgreSQL false only where it holds none.</summary>
    Task<bool> IsThereAsync(CancellationToken cancel);

    /// <summary>Opens the context's connection and keeps every other program from making or changing tables until the result is disposed of, or this program ends.</summary>
    Task<IAsyncDisposable> LockTablesAsync(LedgerContext context, CancellationToken cancel);

    /// <summary>Begins a transaction that is the only one that writes, in all programs.</summary>
    Task<IDbContextTransaction> BeginWritingAsync(LedgerContext context, CancellationToken cancel);

    /// <summary>Begins a transaction that reads the store as it is at one moment and keeps no writer waiting.</summary>
    Task<IDbContextTransaction> BeginReadingAsync(LedgerContext context, CancellationToken cancel);

    /// <summary>What the database itself finds wrong with its files; null where it finds nothing or does not look.</summary>
    Task<string?> DamageAsync(LedgerContext context, CancellationToken cancel);

    /// <summary>Sees to it that what was deleted goes from the database's own files, as far as it can.</summary>
    /// <returns>Whether nothing of it is left there.</returns>
    Task<bool> ClearDeletedAsync(CancellationToken cancel);

    /// <summary>Copies the database as it is at one moment into an SQLite file that is not there yet.</summary>
    Task CopyAsync(string file, IProgress<StoreProgress>? progress, CancellationToken cancel);

    /// <summary>What an exception says about the database; null where it says nothing about it.</summary>
    DatabaseTrouble? TroubleIn(Exception fault);
}

/// <summary>What is wrong with a database, in words that a person can act on.</summary>
internal sealed record DatabaseTrouble(TroubleKind Kind, string Words)
{
    /// <summary>The exception that the callers of the store meet.</summary>
    public Exception ToException(Exception cause) => Kind switch
    {
        TroubleKind.Full => Disk.Full(Words, cause),
        TroubleKind.Damaged => new InvalidDataException(Words, cause),
        _ => new IOException(Words, cause),
    };
}

internal enum TroubleKind
{
    /// <summary>No room on the disk.</summary>
    Full,

    /// <summary>It cannot be reached, or does not let us in.</summary>
    Away,

    /// <summary>What it holds is damaged.</summary>
    Damaged,
}
