using System.CommandLine;
using System.Globalization;
using Abaxial.Cli.Pages;
using Abaxial.Data;

namespace Abaxial.Cli;

/// <summary><c>abaxial ledger check</c>: walks a whole store and names what does not fit.</summary>
internal static class LedgerCheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var store = StoreFolder.Option();
        var command = new Command("check", "Walks the whole store, chains, texts and photographs, and names what does not fit, the first first.") { store };
        command.SetAction(parsed => StoreFolder.Use(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger)));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger)
    {
        CheckReport report;
        using (var progress = new StoreProgressLine(terminal)) report = await LedgerCheck.RunAsync(ledger, progress);
        await using var output = terminal.Writer();
        return Write(new Page(output, terminal), report);
    }

    /// <summary>Writes what a check came to.</summary>
    /// <returns>The exit code.</returns>
    public static int Write(Page page, CheckReport report)
    {
        foreach (var fault in report.Faults) page.Text($"{fault.What}: {fault.Found}", indent: 0, hanging: 2, tone: Tone.Danger);
        string walked = string.Create(CultureInfo.InvariantCulture, $"entries {report.Entries:N0}, samples {report.Samples:N0}, devices {report.Devices:N0}, photographs {report.Photographs:N0}, sealed texts {report.SealedTexts:N0}");
        page.Text(report.IsClean ? $"{walked}: all fits." : $"{walked}: faults {report.Faults.Length}{(report.Faults.Length == LedgerCheck.MostFaults ? " or more" : "")}.", indent: 0, tone: report.IsClean ? Tone.Calm : Tone.Strong);
        return report.IsClean ? ExitCode.Done : ExitCode.SomeRefused;
    }
}
