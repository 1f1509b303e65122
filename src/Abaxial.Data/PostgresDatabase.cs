using System.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Abaxial.Data;

/// <summary>The ledger's database on a PostgreSQL server (decision 0016).</summary>
internal sealed class PostgresDatabase : ILedgerDatabase
{
    // Numbers of PostgreSQL's advisory locks, which hold within one database; they end with the connection that holds them.
    private const long Opening = 0x61626178_00000001;
    private const long Writing = 0x61626178_00000002;

    private readonly NpgsqlConnectionStringBuilder reached;
    private readonly DbContextOptions<PostgresLedgerContext> options;

    /// <exception cref="InvalidDataException">The connection string cannot be read. What it is stays unsaid: a password may stand in it.</exception>
    public PostgresDatabase(string connection)
    {
        reached = PostgresTrouble.Read(connection);
        options = PostgresLedgerContext.OptionsFor(reached.ConnectionString);
    }

    public LedgerContext Ask() => new PostgresLedgerContext(options);

    public async Task<bool> IsThereAsync(CancellationToken cancel)
    {
        await using var context = Ask();
        await context.Database.OpenConnectionAsync(cancel);
        return (await context.Database.GetAppliedMigrationsAsync(cancel)).Any();
    }

    public async Task<IAsyncDisposable> LockTablesAsync(LedgerContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({Opening})", cancel);
        return new Unlocking(context);
    }

    /// <remarks>Whatever the server or the role has set, a commit of ours is on the disk before it is said to be done.</remarks>
    public async Task<IDbContextTransaction> BeginWritingAsync(LedgerContext context, CancellationToken cancel)
    {
        var transaction = await context.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, cancel);
        try
        {
            await context.Database.ExecuteSqlAsync(
                $"SELECT pg_advisory_xact_lock({Writing}), CASE current_setting('synchronous_commit') WHEN 'off' THEN set_config('synchronous_commit', 'on', true) END", cancel);
            return transaction;
        }
        catch
        {
            await transaction.DisposeAsync();
            throw;
        }
    }

    public async Task<IDbContextTransaction> BeginReadingAsync(LedgerContext context, CancellationToken cancel) =>
        await context.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);

    /// <summary>PostgreSQL looks at its own files with tools of its own; what it cannot read, the walk over all rows meets.</summary>
    public Task<string?> DamageAsync(LedgerContext context, CancellationToken cancel) => Task.FromResult<string?>(null);

    /// <summary>Frees the place of deleted texts. That is no writing over: docs/method/ledger.md says what the server keeps, and how long.</summary>
    public async Task<bool> ClearDeletedAsync(CancellationToken cancel)
    {
        await using var context = Ask();
        context.Database.SetCommandTimeout(TimeSpan.FromHours(1));
        await context.Database.ExecuteSqlRawAsync("VACUUM sealed_texts, samples, sample_seals, sample_words, person_words", cancel);
        return false;
    }

    public async Task CopyAsync(string file, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        await using var from = Ask();
        await using var moment = await BeginReadingAsync(from, cancel);
        await using var to = new SqliteLedgerContext(SqliteLedgerContext.OptionsFor(file, mayCreate: true, pooling: false));
        await to.Database.OpenConnectionAsync(cancel);
        await to.Database.MigrateAsync(cancel);
        await to.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = DELETE;", cancel); // one file, without a log beside it
        await using var writing = await to.Database.BeginTransactionAsync(cancel);
        await TableCopy.RunAsync(from, to, progress, cancel);
        await writing.CommitAsync(cancel);
    }

    public DatabaseTrouble? TroubleIn(Exception fault) => PostgresTrouble.In(fault, reached);

    /// <summary>Closes what is open.</summary>
    public void Dispose()
    {
        using var context = Ask();
        NpgsqlConnection.ClearPool((NpgsqlConnection)context.Database.GetDbConnection());
    }

    private sealed class Unlocking(LedgerContext context) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync() => await context.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({Opening})");
    }
}
