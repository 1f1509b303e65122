using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Files.Trials;
using Abaxial.Knowledge;

namespace Abaxial.Cli;

/// <summary><c>abaxial knowledge diff</c>: what two versions of the knowledge say otherwise, and which cases it changes.</summary>
internal static class KnowledgeDiffCommand
{
    public static Command Create(Terminal terminal)
    {
        var before = new Argument<string>("A") { Description = "A folder of knowledge, or built-in." };
        var after = new Argument<string>("B") { Description = "Another, or built-in." };
        var cases = new Option<string?>("--cases") { Description = "A folder of cases or trials; left out: the project's own.", HelpName = "FOLDER" };
        var command = new Command("diff", "Compares two versions of the knowledge: rows, settings, and the cases that change leader or standing.") { before, after, cases };
        command.SetAction(parsed => Run(terminal, parsed.GetRequiredValue(before), parsed.GetRequiredValue(after), parsed.GetValue(cases)));
        return command;
    }

    private static int Run(Terminal terminal, string before, string after, string? cases)
    {
        var trials = cases is null ? TrialFolder.ReadKept(terminal) : TrialFolder.Read(terminal.PathOf(cases));
        KnowledgeBase old = KnowledgeSource.Read(terminal, before), now = KnowledgeSource.Read(terminal, after);
        TrialJudge oldJudge = new(old), nowJudge = new(now);
        var results = trials.AsParallel().AsOrdered().Select(trial => (Before: oldJudge.Judge(trial), After: nowJudge.Judge(trial))).ToList();

        using var output = terminal.Writer();
        DifferencePage.Write(new Page(output, terminal), KnowledgeDifference.Between(old, now), results, old, now);
        return ExitCode.Done;
    }
}
