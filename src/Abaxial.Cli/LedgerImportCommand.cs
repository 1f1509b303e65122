using System.CommandLine;
using System.Security.Cryptography;
using Abaxial.Cli.Pages;
using Abaxial.Cli.Streams;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli;

/// <summary><c>abaxial ledger import</c>: takes case files in as samples.</summary>
internal static class LedgerImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var cases = new Argument<string[]>("CASE") { Arity = ArgumentArity.OneOrMore, Description = "Case files; - reads a stream from standard input, one case a line." };
        var store = StoreFolder.Option();
        var author = new Option<string>("--author") { Description = "The id of the person who takes them in; left out: import.", HelpName = "ID", DefaultValueFactory = _ => "import" };
        var command = new Command("import", "Takes case files in as samples, one sample a case; makes the store where there is none.") { cases, store, author };
        command.SetAction(parsed =>
        {
            var inputs = new CaseInputs(terminal, parsed.GetRequiredValue(cases));
            return StoreFolder.UseOrMake(terminal, parsed.GetRequiredValue(store), ledger => RunAsync(terminal, ledger, inputs, parsed.GetRequiredValue(author)));
        });
        return command;
    }

    private static async Task<int> RunAsync(Terminal terminal, Ledger ledger, CaseInputs inputs, string author)
    {
        var knowledge = BuiltIn.Solanum();
        int refused = 0;
        await using var output = terminal.Writer();
        foreach (var input in inputs.Read(knowledge))
        {
            var problems = input.Reading.Problems;
            if (!input.Reading.IsRefused)
            {
                var taken = await TakeInAsync(ledger, input.Reading.Case, author);
                problems = taken.Problems;
                if (!taken.IsRefused)
                {
                    var view = SampleFold.Of(taken.Entry.Sample, await ledger.EntriesOfAsync(taken.Entry.Sample), knowledge);
                    output.WriteLine($"{view.Number}  {view.Sample}  {input.Name ?? $"case {input.Number}"}");
                    continue;
                }
            }

            refused++;
            RefusalPage.Write(new Page(terminal.Error, terminal with { Colour = false }), input.Name ?? $"case {input.Number}", problems, new Speech(knowledge));
        }

        return refused == 0 ? ExitCode.Done : ExitCode.SomeRefused;
    }

    private static Task<Appended> TakeInAsync(Ledger ledger, Case taken, string author)
    {
        // Of the sender nothing is known but the place; it is sealed under an id of its own, so that it can be erased.
        var place = taken.Place is { } exact
            ? new SealedText($"sender-{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(6))}", RandomNumberGenerator.GetBytes(SealedText.SaltLength), CaseIntake.TextOf(exact))
            : null;
        var (takenIn, seen) = CaseIntake.Of(taken, place?.Seal());
        return ledger.TakeInAsync(new EntryDraft { Author = author, Payload = takenIn, Texts = place is null ? [] : [place] }, seen);
    }
}
