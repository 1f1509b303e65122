using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Knowledge;

namespace Abaxial.Cli;

/// <summary><c>abaxial knowledge check</c>: what is wrong with the knowledge, or how much of it there is and where it is thin.</summary>
internal static class KnowledgeCheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string?>("FOLDER") { Arity = ArgumentArity.ZeroOrOne, Description = "A folder of knowledge; left out: the program's own." };
        var command = new Command("check", "Names what is wrong with the knowledge, with file and line; where nothing is, says how much there is and where it is thin.") { folder };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder)));
        return command;
    }

    private static int Run(Terminal terminal, string? folder)
    {
        if (folder is null or KnowledgeSource.BuiltInWord) return Write(terminal, BuiltIn.Solanum());
        var compiled = KnowledgeSource.Compile(terminal, folder);
        if (compiled.Knowledge is { } knowledge) return Write(terminal, knowledge);
        foreach (var problem in compiled.Problems) terminal.Error.WriteLine(KnowledgeSource.Line(folder, problem));
        return ExitCode.SomeRefused;
    }

    private static int Write(Terminal terminal, KnowledgeBase knowledge)
    {
        using var output = terminal.Writer();
        KnowledgeCountsPage.Write(new Page(output, terminal), knowledge);
        return ExitCode.Done;
    }
}
