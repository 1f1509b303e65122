using System.CommandLine;
using System.Globalization;
using Abaxial.Cli.Pages;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary><c>abaxial ledger refresh</c>: makes the rows of lists and search anew from the entries.</summary>
internal static class LedgerRefreshCommand
{
    public static Command Create(Terminal terminal)
    {
        var store = StoreFolder.Option();
        var command = new Command("refresh", "Makes the lists and the search anew from the entries: where the check says so, or the knowledge changed. Others may work meanwhile.") { store };
        command.SetAction(parsed => StoreFolder.Use(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger)));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger)
    {
        long samples;
        using (var progress = new StoreProgressLine(terminal)) samples = await ledger.RebuildAsync(progress: progress);
        await using var output = terminal.Writer();
        new Page(output, terminal).Line(string.Create(CultureInfo.InvariantCulture, $"samples {samples:N0}: lists and search made anew."));
        return ExitCode.Done;
    }
}
