using System.CommandLine;
using System.Globalization;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary><c>abaxial backup</c>: copies a store into one file while it is in use.</summary>
internal static class BackupCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The file to make; it must not be there." };
        var store = StoreFolder.Option();
        var command = new Command("backup", "Copies the store into one file, a tar archive, while it is in use.") { file, store };
        command.SetAction(parsed => StoreFolder.Use(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger, parsed.GetRequiredValue(file))));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger, string file)
    {
        BackupReport report;
        CheckReport check;
        try
        {
            using var progress = new StoreProgressLine(terminal);
            report = await Backup.WriteAsync(ledger, terminal.PathOf(file), TimeProvider.System, progress);
            check = await LedgerCheck.RunAsync(ledger, progress);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new UsageException(problem.Message);
        }

        await using var output = terminal.Writer();
        foreach (var fault in report.Faults) output.WriteLine($"{fault.What}: {fault.Found} It is not in the backup.");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{report.Entries:N0} entries and {report.Photographs:N0} photographs are in {file}."));
        foreach (var fault in check.Faults) output.WriteLine($"{fault.What}: {fault.Found} Keep the backup before this one: the store does not fit.");
        return report.Faults.IsEmpty && check.IsClean ? ExitCode.Done : ExitCode.SomeRefused;
    }
}
