using System.CommandLine;

namespace Abaxial.Cli;

internal static class KnowledgeTrialCommand
{
    public static Command Create(Terminal terminal) => new("trial", "x" + terminal.Width);
}
