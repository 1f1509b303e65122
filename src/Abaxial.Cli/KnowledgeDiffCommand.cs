using System.CommandLine;

namespace Abaxial.Cli;

internal static class KnowledgeDiffCommand
{
    public static Command Create(Terminal terminal) => new("diff", "x" + terminal.Width);
}
