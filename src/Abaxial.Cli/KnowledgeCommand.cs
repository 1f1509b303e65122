using System.CommandLine;

namespace Abaxial.Cli;

/// <summary><c>abaxial knowledge</c>: looks into what the answers rest on.</summary>
internal static class KnowledgeCommand
{
    public static Command Create(Terminal terminal) => new("knowledge", "Checks, shows, compares and tries the knowledge that the answers rest on.")
    {
        KnowledgeCheckCommand.Create(terminal),
        KnowledgeShowCommand.Create(terminal),
        KnowledgeDiffCommand.Create(terminal),
        KnowledgeTrialCommand.Create(terminal),
    };
}
