using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary><c>abaxial restore</c>: makes a store of a backup, and checks it.</summary>
internal static class RestoreCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "A backup." };
        var store = new Option<string>("--store") { Description = "The folder of the new store; it must be new or empty.", HelpName = "FOLDER", Required = true };
        var command = new Command("restore", "Makes a store of a backup in a new folder, and checks it.") { file, store };
        command.SetAction(parsed => Run(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(store)));
        return command;
    }

    private static int Run(Terminal terminal, string file, string store)
    {
        if (!File.Exists(terminal.PathOf(file))) throw new UsageException($"there is no file '{file}'.");
        CheckReport report;
        using (var progress = new StoreProgressLine(terminal)) report = StoreFolder.InWords(() => Restore.ReadAsync(terminal.PathOf(file), StoreFolder.PlaceOf(terminal, store), TimeProvider.System, progress));
        using var output = terminal.Writer();
        return LedgerCheckCommand.Write(new Page(output, terminal), report);
    }
}
