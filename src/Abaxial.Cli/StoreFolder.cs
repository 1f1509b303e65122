using System.CommandLine;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary>The store that a command was asked to use.</summary>
internal static class StoreFolder
{
    public static Option<string> Option() => new("--store") { Description = "The folder of the store; left out: store.", HelpName = "FOLDER", DefaultValueFactory = _ => "store" };

    /// <summary>Where the store lies: the photographs in the folder, the database there too or on the server that the environment names.</summary>
    public static StorePlace PlaceOf(Terminal terminal, string folder) => StorePlace.Of(terminal.PathOf(folder), terminal.Database);

    /// <summary>Runs something with a store that is there.</summary>
    /// <exception cref="UsageException">There is none, or it cannot be opened.</exception>
    public static int Use(Terminal terminal, string folder, Func<Ledger, Task<int>> use)
    {
        var place = PlaceOf(terminal, folder);
        if (!InWords(() => Ledger.IsAtAsync(place))) throw new UsageException(place.Postgres is null ? $"there is no store in '{folder}'." : $"there is no store in the {place}.");
        return UseOrMake(terminal, folder, use);
    }

    /// <summary>Runs something with a store; makes it where there is none.</summary>
    /// <exception cref="UsageException">It cannot be opened, or goes away meanwhile.</exception>
    public static int UseOrMake(Terminal terminal, string folder, Func<Ledger, Task<int>> use)
    {
        using var ledger = InWords(() => Ledger.OpenAsync(PlaceOf(terminal, folder), TimeProvider.System));
        try
        {
            return use(ledger).GetAwaiter().GetResult();
        }
        catch (Exception fault) when (ledger.TroubleIn(fault) is { } trouble)
        {
            throw new UsageException(trouble);
        }
    }

    /// <summary>Waits for something to be done with a store, and says in words why it cannot be.</summary>
    /// <exception cref="UsageException">It cannot be done.</exception>
    public static T InWords<T>(Func<Task<T>> done)
    {
        try
        {
            return done().GetAwaiter().GetResult();
        }
        catch (Exception problem) when (problem is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            throw new UsageException(problem.Message);
        }
    }
}
