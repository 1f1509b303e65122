using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Abaxial.Data;

/// <summary>The ledger in a PostgreSQL database.</summary>
public sealed class PostgresLedgerContext(DbContextOptions<PostgresLedgerContext> options) : LedgerContext(options)
{
    /// <summary>How a database is reached.</summary>
    public static DbContextOptions<PostgresLedgerContext> OptionsFor(string connection) => new DbContextOptionsBuilder<PostgresLedgerContext>().UseNpgsql(connection).Options;

    /// <summary>Texts are compared and sorted by their bytes, as in SQLite and whatever language the server speaks.</summary>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<string>().UseCollation("C");
    }
}

/// <summary>For the tool that writes migrations; it asks no server.</summary>
internal sealed class PostgresLedgerContextFactory : IDesignTimeDbContextFactory<PostgresLedgerContext>
{
    public PostgresLedgerContext CreateDbContext(string[] args) => new(PostgresLedgerContext.OptionsFor("Host=localhost;Database=abaxial"));
}
