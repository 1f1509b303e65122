using System.Diagnostics;
using Abaxial.Data;
using Npgsql;

[assembly: AssemblyFixture(typeof(Abaxial.App.Tests.PostgresServer))]

namespace Abaxial.App.Tests;

/// <summary>
/// A real PostgreSQL server for the tests, started by .ci/postgres when the first test asks for it, in a folder of its own. It ends with the tests, or with their process, however that ends. Every
/// store gets a database of its own, copied from one that holds the tables.
/// </summary>
public sealed class PostgresServer : IAsyncDisposable
{
    private const string Template = "with_tables";

    private static readonly SemaphoreSlim Alone = new(1, 1);
    private static string? reached;
    private static Process? holding;
    private static int made;

    /// <summary>Makes an empty database, or one that holds the tables of a store and nothing else.</summary>
    /// <returns>How it is reached.</returns>
    public static async Task<string> NewDatabaseAsync(bool withTables)
    {
        await Alone.WaitAsync();
        try
        {
            reached ??= await StartAsync();
            string name = $"t{++made}";
            await ExecuteAsync(reached, $"CREATE DATABASE {name} TEMPLATE {(withTables ? Template : "template0")}");
            return Reach(reached, name);
        }
        finally
        {
            Alone.Release();
        }
    }

    public static async Task DropAsync(string connection)
    {
        string name = new NpgsqlConnectionStringBuilder(connection).Database!;
        await ExecuteAsync(reached!, $"DROP DATABASE {name} WITH (FORCE)");
    }

    public static async Task ExecuteAsync(string connection, string sql)
    {
        await using var open = new NpgsqlConnection(connection);
        await open.OpenAsync();
        await using var command = new NpgsqlCommand(sql, open);
        await command.ExecuteNonQueryAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (holding is null) return;
        holding.StandardInput.Close();
        await holding.WaitForExitAsync();
        holding.Dispose();
    }

    private static async Task<string> StartAsync()
    {
        string folder = Path.Combine(Path.GetTempPath(), $"abaxial-pg-{Path.GetRandomFileName()}");
        holding = Process.Start(new ProcessStartInfo("bash", [Path.Combine(AppContext.BaseDirectory, "postgres-server"), "hold", folder]) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        string connection = await holding.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("PostgreSQL did not start: see above. The tests need it; .ci/install installs it.");
        await ExecuteAsync(connection, $"CREATE DATABASE {Template} TEMPLATE template0");
        string template = Reach(connection, Template);
        using (await Ledger.OpenAsync(new StorePlace(folder + "-photographs", template), TimeProvider.System)) await ExecuteAsync(template, "DELETE FROM store");
        Directory.Delete(folder + "-photographs", recursive: true);
        NpgsqlConnection.ClearAllPools();
        return connection;
    }

    private static string Reach(string connection, string database) => new NpgsqlConnectionStringBuilder(connection) { Database = database }.ConnectionString;
}
