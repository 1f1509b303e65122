using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Abaxial.Data;

/// <summary>The ledger in one SQLite file.</summary>
public sealed class SqliteLedgerContext(DbContextOptions<SqliteLedgerContext> options) : LedgerContext(options)
{
    /// <summary>How a file is opened.</summary>
    public static DbContextOptions<SqliteLedgerContext> OptionsFor(string file, bool mayCreate, bool pooling = true)
    {
        var connection = new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Mode = mayCreate ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite,
            ForeignKeys = true,
            DefaultTimeout = 60,
            Pooling = pooling,
        };
        return new DbContextOptionsBuilder<SqliteLedgerContext>().UseSqlite(connection.ToString()).AddInterceptors(new Settings()).Options;
    }

    /// <summary>
    /// What every connection is told: a commit is on the disk before it is said to be done, a writer waits for another, and what is deleted is written over.
    /// </summary>
    private sealed class Settings : DbConnectionInterceptor
    {
        private const string Pragmas = "PRAGMA busy_timeout = 60000; PRAGMA synchronous = FULL; PRAGMA secure_delete = ON;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}

/// <summary>For the tool that writes migrations.</summary>
internal sealed class SqliteLedgerContextFactory : IDesignTimeDbContextFactory<SqliteLedgerContext>
{
    public SqliteLedgerContext CreateDbContext(string[] args) => new(SqliteLedgerContext.OptionsFor("ledger.db", mayCreate: true));
}
