using System.Net.Sockets;
using Npgsql;

namespace Abaxial.Data;

/// <summary>Says in words what is wrong with a PostgreSQL database or the way to it. A password is never said.</summary>
internal static class PostgresTrouble
{
    private const string Form = "Host=…;Database=…;Username=…;Password=…";

    /// <summary>Reads a connection string.</summary>
    /// <exception cref="InvalidDataException">It cannot be read, or names no server.</exception>
    public static NpgsqlConnectionStringBuilder Read(string connection)
    {
        NpgsqlConnectionStringBuilder read;
        try
        {
            read = new NpgsqlConnectionStringBuilder(connection);
        }
        catch (Exception unreadable) when (unreadable is ArgumentException or FormatException or InvalidCastException)
        {
            throw new InvalidDataException($"The connection string cannot be read; accepted is the form {Form}."); // without its cause, which may quote it
        }

        if (string.IsNullOrEmpty(read.Host)) throw new InvalidDataException($"The connection string names no server; accepted is the form {Form}.");
        if (!read.ContainsKey("Command Timeout")) read.CommandTimeout = 60; // as long as a writer waits for another on SQLite
        return read;
    }

    /// <summary>What an exception says about the database; null where it says nothing about it.</summary>
    public static DatabaseTrouble? In(Exception fault, NpgsqlConnectionStringBuilder reached)
    {
        string server = reached.Host!.StartsWith('/') ? $"in {reached.Host}" : $"at {reached.Host}:{reached.Port}";
        if (fault is OperationCanceledException) return null;
        for (Exception? at = fault; at is not null; at = at.InnerException)
        {
            if (at is PostgresException said) return Of(said, server, reached);
            if (at is NpgsqlException or SocketException or TimeoutException) return new DatabaseTrouble(TroubleKind.Away, $"The database server {server} cannot be reached, or went away before it said that it was done: {Innermost(at)}");
        }

        return null;
    }

    private static DatabaseTrouble? Of(PostgresException said, string server, NpgsqlConnectionStringBuilder reached) => said.SqlState switch
    {
        PostgresErrorCodes.DiskFull => new DatabaseTrouble(TroubleKind.Full, "The disk of the database server is full: nothing was written."),
        PostgresErrorCodes.InvalidCatalogName => Away($"There is no database '{reached.Database ?? reached.Username}' on the server {server}: have it made first."),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => Away($"The database server {server} refuses the user '{reached.Username}' or the password."),
        PostgresErrorCodes.InsufficientPrivilege => Away($"The user '{reached.Username}' may not do that in the database '{reached.Database}': {said.MessageText}."),
        PostgresErrorCodes.TooManyConnections => Away($"The database server {server} takes no more connections."),
        PostgresErrorCodes.CannotConnectNow or PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown => Away($"The database server {server} is starting or stopping: {said.MessageText}."),
        PostgresErrorCodes.ReadOnlySqlTransaction => Away($"The database server {server} only reads: {said.MessageText}."),
        PostgresErrorCodes.QueryCanceled or PostgresErrorCodes.LockNotAvailable => Away($"The database server {server} did not come to it in time: {said.MessageText}."),
        ['5', '3' or '8', ..] => Away($"The database server {server} cannot go on: {said.MessageText}."),
        ['X', 'X', ..] => new DatabaseTrouble(TroubleKind.Damaged, $"The database is damaged: {said.MessageText}."),
        _ => null,
    };

    private static DatabaseTrouble Away(string words) => new(TroubleKind.Away, words);

    private static string Innermost(Exception fault) => fault.GetBaseException().Message;
}
