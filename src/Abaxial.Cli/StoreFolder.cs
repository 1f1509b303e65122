using System.CommandLine;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary>The store that a command was asked to use.</summary>
internal static class StoreFolder
{
    public static Option<string> Option() => new("--store") { Description = "The folder of the store; left out: store.", HelpName = "FOLDER", DefaultValueFactory = _ => "store" };

    /// <summary>Runs something with a store that is there.</summary>
    /// <exception cref="UsageException">There is none, or it cannot be opened.</exception>
    public static int Use(Terminal terminal, string folder, Func<Ledger, Task<int>> use)
    {
        if (!Ledger.IsIn(terminal.PathOf(folder))) throw new UsageException($"there is no store in '{folder}'.");
        return UseOrMake(terminal, folder, use);
    }

    /// <summary>Runs something with a store; makes it where there is none.</summary>
    /// <exception cref="UsageException">It cannot be opened.</exception>
    public static int UseOrMake(Terminal terminal, string folder, Func<Ledger, Task<int>> use)
    {
        using var ledger = Open(terminal.PathOf(folder));
        return use(ledger).GetAwaiter().GetResult();
    }

    private static Ledger Open(string folder)
    {
        try
        {
            return Ledger.OpenAsync(folder, TimeProvider.System).GetAwaiter().GetResult();
        }
        catch (Exception problem) when (problem is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            throw new UsageException(problem.Message);
        }
    }
}
