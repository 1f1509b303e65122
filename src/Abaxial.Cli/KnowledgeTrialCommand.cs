using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Files.Trials;
using Abaxial.Speaking;

namespace Abaxial.Cli;

/// <summary><c>abaxial knowledge trial</c>: weighs textbook cases and shows which come out wrong.</summary>
internal static class KnowledgeTrialCommand
{
    public static Command Create(Terminal terminal)
    {
        var trials = new Argument<string?>("FOLDER") { Arity = ArgumentArity.ZeroOrOne, Description = "A folder of trials; left out: the project's own." };
        var markdown = new Option<bool>("--markdown") { Description = "Write a page in Markdown." };
        var folder = new Option<string?>("--knowledge") { Description = "A folder of knowledge to try in place of the program's own.", HelpName = "FOLDER" };
        var command = new Command("trial", "Weighs textbook cases: what was expected against what leads, and every case that fails, in full.") { trials, markdown, folder };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(trials), parsed.GetValue(folder), parsed.GetValue(markdown)));
        return command;
    }

    private static int Run(Terminal terminal, string? folder, string? knowledgeFolder, bool markdown)
    {
        var knowledge = KnowledgeSource.Read(terminal, knowledgeFolder);
        var trials = TrialFolder.Read(folder is null ? TrialFolder.Find(terminal) : terminal.PathOf(folder));
        if (trials.IsEmpty) throw new UsageException("there are no trials in that folder.");
        var judge = new TrialJudge(knowledge);
        var results = trials.AsParallel().AsOrdered().Select(judge.Judge).ToList();

        using var output = terminal.Writer();
        var speech = new Speech(knowledge);
        if (markdown) TrialMarkdown.Write(output, results, speech);
        else TrialPage.Write(new Page(output, terminal), results, speech);
        return results.All(result => result.IsPassed) ? ExitCode.Done : ExitCode.SomeRefused;
    }
}
