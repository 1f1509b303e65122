using System.CommandLine;

namespace Abaxial.Cli;

internal static class KnowledgeCheckCommand
{
    public static Command Create(Terminal terminal) => new("check", "x" + terminal.Width);
}
