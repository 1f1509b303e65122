using System.CommandLine;
using System.Globalization;
using Abaxial.Cli.Pages;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Speaking;
using Abaxial.Weighing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Cli;

/// <summary><c>abaxial ledger list</c>: the samples of a store, a line each.</summary>
internal static class LedgerListCommand
{
    public static Command Create(Terminal terminal)
    {
        var store = StoreFolder.Option();
        var command = new Command("list", "Lists the samples: number, what was taken in, what leads, where late blight stands.") { store };
        command.SetAction(parsed => StoreFolder.Use(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger)));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger)
    {
        var knowledge = BuiltIn.Solanum();
        var weigher = new Weigher(knowledge);
        var speech = new Speech(knowledge);
        await using var output = terminal.Writer();
        var page = new Page(output, terminal);
        await using var context = ledger.Ask();
        var samples = context.Entries.AsNoTracking().Where(row => row.Kind == EntryKind.TakenIn).OrderBy(row => row.Row).Select(row => row.Sample).AsAsyncEnumerable();
        await foreach (string sample in samples)
        {
            var id = EntryId.Parse(sample);
            page.Line(Line(SampleFold.Of(id, await ledger.EntriesOfAsync(id), knowledge), weigher, speech));
        }

        return ExitCode.Done;
    }

    private static string Line(SampleView view, Weigher weigher, Speech speech)
    {
        string day = view.Timeline[0].Entry.Made.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string first = $"{view.Number?.ToString() ?? view.Sample.ToString(),-10}  {day}  {view.TakenIn?.Host ?? "",-7}  {(view.ClosedBecause is null ? "open" : "closed"),-6}";
        if (view.Cases.IsEmpty || view.Cases[0].Reading.Case is not { } taken) return first;
        var answer = weigher.Weigh(taken, new WeighOptions { NextLooks = false });
        return $"{first}  {answer.Standing.Word(),-9}  {speech.Name(answer.Causes[0].Cause)}";
    }
}
