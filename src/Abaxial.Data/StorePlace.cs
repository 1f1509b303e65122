using Npgsql;

namespace Abaxial.Data;

/// <summary>Where a store lies.</summary>
/// <param name="Folder">The folder that holds the photographs, and the database too where that is SQLite.</param>
/// <param name="Postgres">How the PostgreSQL database is reached (a connection string in Npgsql's form); null for SQLite in the folder.</param>
public sealed record StorePlace(string Folder, string? Postgres = null)
{
    /// <summary>The environment variable that a connection string is read from: on a command line others could read it.</summary>
    public const string Variable = "ABAXIAL_DATABASE";

    /// <summary>The place as the environment gives it: PostgreSQL where <see cref="Variable"/> holds a connection string, otherwise SQLite in the folder.</summary>
    public static StorePlace Of(string folder, string? connection) => new(folder, string.IsNullOrWhiteSpace(connection) ? null : connection);

    /// <summary>Names the place for people. A connection string may hold a password: nothing of it is said but the database and the server.</summary>
    public override string ToString()
    {
        if (Postgres is null) return $"'{Folder}'";
        try
        {
            var builder = new NpgsqlConnectionStringBuilder(Postgres);
            return $"database '{builder.Database ?? builder.Username}' at {builder.Host}";
        }
        catch (Exception unreadable) when (unreadable is ArgumentException or FormatException or InvalidCastException)
        {
            return "a database whose connection string cannot be read";
        }
    }
}
