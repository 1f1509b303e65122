using System.CommandLine;

namespace Abaxial.Cli;

internal static class KnowledgeShowCommand
{
    public static Command Create(Terminal terminal) => new("show", "x" + terminal.Width);
}
