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

/// <summary><c>abaxial ledger show</c>: the history of one sample and what it comes to.</summary>
internal static class LedgerShowCommand
{
    public static Command Create(Terminal terminal)
    {
        var sample = new Argument<string>("SAMPLE") { Description = "The number of a sample, or its id." };
        var store = StoreFolder.Option();
        var command = new Command("show", "Shows every entry of a sample, what became of it, and the answer for each plant or lot.") { sample, store };
        command.SetAction(parsed => StoreFolder.Use(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger, parsed.GetRequiredValue(sample))));
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger, string called)
    {
        var knowledge = BuiltIn.Solanum();
        await using var output = terminal.Writer();
        var page = new Page(output, terminal);
        foreach (var sample in await FindAsync(ledger, called))
        {
            var view = SampleFold.Of(sample, await ledger.EntriesOfAsync(sample), knowledge);
            page.Line($"{view.Number} {view.Sample}".TrimStart(), Tone.Strong);
            foreach (var item in view.Timeline) page.Text(Line(item), hanging: 4, tone: item.State == ItemState.Stands ? Tone.Plain : Tone.Faint);
            foreach (var part in view.Cases) Write(page, part, knowledge);
        }

        return ExitCode.Done;
    }

    private static async Task<IReadOnlyList<EntryId>> FindAsync(Ledger ledger, string called)
    {
        await using var context = ledger.Ask();
        if (EntryId.TryParse(called, out var id) && await context.Entries.AnyAsync(row => row.Sample == id.ToString())) return [id];
        if (!SampleNumber.TryParse(called, out var number)) throw new UsageException($"'{called}' is no number of a sample: a digit is wrong, or two changed places. As {SampleNumber.From(26, 1)}.");
        string written = number.ToString();
        var found = await context.Numbers.Where(row => row.Number == written).OrderBy(row => row.Sample).Select(row => row.Sample).ToListAsync();
        return found.Count > 0 ? [.. found.Select(EntryId.Parse)] : throw new UsageException($"there is no sample {number} in the store.");
    }

    private static string Line(TimelineItem item)
    {
        string made = item.Entry.Made.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        string became = item.State switch
        {
            ItemState.Stands => "",
            ItemState.Corrected => $" [corrected by {item.By}]",
            ItemState.Struck => $" [struck by {item.By}]",
            ItemState.WithoutEffect => " [without effect]",
            _ => " [not understood by this version]",
        };
        return $"{made}  {item.Entry.Id}  {item.Entry.Author}  {item.Entry.Kind} {item.Entry.Payload}{became}";
    }

    private static void Write(Page page, SampleCase part, KnowledgeBase knowledge)
    {
        page.Blank();
        if (part.Reading.IsRefused)
        {
            RefusalPage.Write(page, $"plant or lot {part.Number}", part.Reading.Problems, new Speech(knowledge));
            return;
        }

        var weigher = new Weigher(knowledge);
        var flat = weigher.Weigh(part.Reading.Case, new WeighOptions { FlatPrior = true, NextLooks = false });
        AnswerPage.Write(page, part.Reading.Case, weigher.Weigh(part.Reading.Case), flat);
    }
}
