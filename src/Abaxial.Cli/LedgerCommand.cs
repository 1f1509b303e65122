using System.CommandLine;

namespace Abaxial.Cli;

/// <summary><c>abaxial ledger</c>: looks into the record of samples.</summary>
internal static class LedgerCommand
{
    public static Command Create(Terminal terminal) => new("ledger", "Checks, lists and shows the record of samples, and takes case files in.")
    {
        LedgerCheckCommand.Create(terminal),
        LedgerImportCommand.Create(terminal),
        LedgerListCommand.Create(terminal),
        LedgerRefreshCommand.Create(terminal),
        LedgerShowCommand.Create(terminal),
    };
}
