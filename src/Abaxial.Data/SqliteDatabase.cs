using System.Globalization;
using Abaxial.Data.Search;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Abaxial.Data;

/// <summary>The ledger's database in one file (decision 0012).</summary>
internal sealed class SqliteDatabase(string folder) : ILedgerDatabase
{
    /// <summary>The name of the file in the folder of the store.</summary>
    public const string Name = "ledger.db";

    private readonly string file = Path.Combine(folder, Name);
    private readonly DbContextOptions<SqliteLedgerContext> options = SqliteLedgerContext.OptionsFor(Path.Combine(folder, Name), mayCreate: true);

    public LedgerContext Ask() => new SqliteLedgerContext(options);

    public Task<bool> IsThereAsync(CancellationToken cancel) => Task.FromResult(File.Exists(file));

    public async Task<IAsyncDisposable> LockTablesAsync(LedgerContext context, CancellationToken cancel)
    {
        var alone = await LockAsync(Path.Combine(folder, "opening.lock"), cancel);
        await context.Database.OpenConnectionAsync(cancel);
        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL;", cancel);

        // The framework notes in a table that somebody migrates; where that somebody was killed it would wait for ever. The lock of the file is ours alone.
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock;", cancel);
        return alone;
    }

    public Task<IDbContextTransaction> BeginWritingAsync(LedgerContext context, CancellationToken cancel) => context.Database.BeginTransactionAsync(cancel); // takes the write lock at once

    public async Task<IDbContextTransaction> BeginReadingAsync(LedgerContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        var moment = ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
        return (await context.Database.UseTransactionAsync(moment, cancel))!;
    }

    public async Task<string?> DamageAsync(LedgerContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        await WordIndex.ReadAnewAsync(context, cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = (SqliteTransaction?)context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = "PRAGMA integrity_check(1)";
        return await command.ExecuteScalarAsync(cancel) is not "ok" and var problem ? $"{problem}" : null;
    }

    /// <summary>Copies the log into the database and cuts it; false where a long reader kept it from being cut. What is deleted in the database itself is written over at once.</summary>
    public async Task<bool> ClearDeletedAsync(CancellationToken cancel)
    {
        await using var context = Ask();
        await context.Database.OpenConnectionAsync(cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA busy_timeout = 2000";
        await command.ExecuteNonQueryAsync(cancel);
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)"; // its first column says whether somebody was in the way
        for (int attempt = 0; attempt < 5; attempt++)
        {
            if (Convert.ToInt64(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture) == 0) return true;
        }

        return false;
    }

    public async Task CopyAsync(string file, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        await ClearDeletedAsync(cancel);
        long total = new FileInfo(this.file).Length;
        var copying = Task.Run(() => Copy(file), cancel);
        while (await Task.WhenAny(copying, Task.Delay(TimeSpan.FromMilliseconds(100), cancel)) != copying)
        {
            progress?.Report(new StoreProgress("database", File.Exists(file) ? new FileInfo(file).Length : 0, total));
        }

        await copying;
    }

    public DatabaseTrouble? TroubleIn(Exception fault)
    {
        if (fault is OperationCanceledException) return null;
        for (Exception? at = fault; at is not null; at = at.InnerException)
        {
            if (at is not SqliteException sqlite) continue;
            return sqlite.SqliteErrorCode switch
            {
                13 => new DatabaseTrouble(TroubleKind.Full, "The disk is full: nothing was written."),
                11 or 26 => new DatabaseTrouble(TroubleKind.Damaged, $"'{file}' cannot be read: {sqlite.Message}"),
                5 or 6 => new DatabaseTrouble(TroubleKind.Away, $"Another program kept '{file}' locked for over a minute: nothing was written."),
                8 or 10 or 14 => new DatabaseTrouble(TroubleKind.Away, $"'{file}' cannot be opened, read or written: {sqlite.Message}"),
                _ => null,
            };
        }

        return null;
    }

    /// <summary>Closes what is open, so that the folder can be moved or taken away.</summary>
    public void Dispose()
    {
        using var context = Ask();
        SqliteConnection.ClearPool((SqliteConnection)context.Database.GetDbConnection());
    }

    /// <summary>All pages in one step: between steps a writer would make the backup begin anew.</summary>
    private void Copy(string to)
    {
        File.Delete(to);
        using var source = Ask();
        source.Database.OpenConnection();
        using var target = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = to, Pooling = false }.ToString());
        target.Open();
        ((SqliteConnection)source.Database.GetDbConnection()).BackupDatabase(target);
        using var command = target.CreateCommand();
        command.CommandText = "PRAGMA journal_mode = DELETE"; // one file, without a log beside it
        command.ExecuteNonQuery();
    }

    /// <summary>A lock that ends with the program, however it ends.</summary>
    private static async Task<FileStream> LockAsync(string file, CancellationToken cancel)
    {
        while (true)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(file))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), cancel); // another program is opening the store
            }
        }
    }
}
