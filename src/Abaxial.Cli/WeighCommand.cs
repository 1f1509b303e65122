using System.Collections.Immutable;
using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Cli.Streams;
using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli;

/// <summary><c>abaxial weigh</c>: answers case files.</summary>
internal sealed class WeighCommand
{
    /// <summary>Cases that are held at once for each core.</summary>
    private const int AheadPerCore = 16;

    private readonly Terminal terminal;
    private readonly KnowledgeBase knowledge;
    private readonly Weigher weigher;
    private readonly bool json;
    private readonly bool flatPrior;
    private readonly string language;

    /// <exception cref="UsageException">The knowledge does not speak the language.</exception>
    private WeighCommand(Terminal terminal, KnowledgeBase knowledge, bool json, bool flatPrior, string language)
    {
        this.terminal = terminal;
        this.knowledge = knowledge;
        this.json = json;
        this.flatPrior = flatPrior;
        this.language = language;
        if (!knowledge.Texts.Languages.Contains(language)) throw new UsageException($"there is no language '{language}'; accepted: {string.Join(", ", knowledge.Texts.Languages)}.");
        weigher = new Weigher(knowledge);
    }

    public static Command Create(Terminal terminal)
    {
        var cases = new Argument<string[]>("CASE") { Arity = ArgumentArity.OneOrMore, Description = "Case files; - reads a stream from standard input, one case a line." };
        cases.Validators.Add(found =>
        {
            var option = found.Tokens.FirstOrDefault(token => token.Value.Length > 1 && token.Value[0] == '-');
            if (option is not null) found.AddError($"there is no option '{option.Value}'; a file of that name is written ./{option.Value}.");
        });
        var json = new Option<bool>("--json") { Description = "Print JSON: one document for one file, one document a line for several files or a stream." };
        var flat = new Option<bool>("--flat-prior") { Description = "Weigh as if every cause were equally common before the looks." };
        var folder = new Option<string?>("--knowledge") { Description = "A folder of knowledge to use in place of the program's own.", HelpName = "FOLDER" };
        var language = new Option<string>("--language") { Description = "The language of what people read: en, es. JSON is the same in each.", HelpName = "LANGUAGE", DefaultValueFactory = _ => "en" };
        var command = new Command("weigh", "Weighs cases: what each is likely to be, where late blight stands, what to do and what to look at next.") { cases, json, flat, folder, language };
        command.SetAction(parsed =>
        {
            var inputs = new CaseInputs(terminal, parsed.GetRequiredValue(cases));
            return new WeighCommand(terminal, KnowledgeSource.Read(terminal, parsed.GetValue(folder)), parsed.GetValue(json), parsed.GetValue(flat), parsed.GetRequiredValue(language)).Run(inputs);
        });
        return command;
    }

    private int Run(CaseInputs inputs)
    {
        int done = 0, refused = 0;
        var progress = new Progress(terminal);
        try
        {
            OrderedPipeline.RunAsync(inputs.Read(knowledge), Weigh, Take, AheadPerCore * Environment.ProcessorCount).GetAwaiter().GetResult();
        }
        finally
        {
            progress.Clear();
        }

        return refused == 0 ? ExitCode.Done : ExitCode.SomeRefused;

        void Take(Weighed weighed)
        {
            if (weighed.IsRefused)
            {
                refused++;
                progress.Clear();
            }

            if (!json && inputs.AreSeveral && done > 0) terminal.Out.Write("\n"u8);
            terminal.Out.Write(weighed.Out);
            terminal.Out.Flush();
            if (weighed.Error.Length > 0) terminal.Error.Write(weighed.Error);
            done++;
            progress.Show(done, refused);
        }
    }

    private Weighed Weigh(CaseInput input)
    {
        var reading = input.Reading;
        if (reading.IsRefused)
        {
            return json
                ? new Weighed(true, [.. RefusalWriter.ToUtf8(input.Number, reading.Problems), (byte)'\n'], "")
                : new Weighed(true, [], ForPeople(input, reading.Problems));
        }

        var answer = weigher.Weigh(reading.Case, new WeighOptions { FlatPrior = flatPrior });
        return new Weighed(false, json ? [.. AnswerWriter.ToUtf8(answer), (byte)'\n'] : ForPeople(input, reading.Case, answer), "");
    }

    private byte[] ForPeople(CaseInput input, Case weighed, Answer answer)
    {
        var flat = flatPrior ? null : weigher.Weigh(weighed, new WeighOptions { FlatPrior = true, NextLooks = false });
        using var buffer = new MemoryStream();
        using (var writer = (terminal with { Out = buffer }).Writer())
        {
            var page = new Page(writer, terminal);
            var speech = new Speech(knowledge, language);
            page.Line(NameOf(input, speech), Tone.Faint);
            AnswerPage.Write(page, weighed, answer, flat, language);
        }

        return buffer.ToArray();
    }

    private string ForPeople(CaseInput input, ImmutableArray<CaseProblem> problems)
    {
        using var writer = new StringWriter();
        var speech = new Speech(knowledge, language);
        RefusalPage.Write(new Page(writer, terminal with { Colour = false }), NameOf(input, speech), problems, speech);
        return writer.ToString();
    }

    private static string NameOf(CaseInput input, Speech speech) => input.Name ?? speech.Say("case.number", ChanceWords.Number(input.Number));

    /// <summary>What became of one case: the bytes to print, and what to tell people of a refusal.</summary>
    private sealed record Weighed(bool IsRefused, byte[] Out, string Error);
}
