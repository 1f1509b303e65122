using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Speaking;

namespace Abaxial.Cli;

/// <summary><c>abaxial knowledge show</c>: a cause with its rows, or a character across all causes.</summary>
internal static class KnowledgeShowCommand
{
    public static Command Create(Terminal terminal)
    {
        var id = new Argument<string>("ID") { Description = "The id of a cause or of a character." };
        var host = new Option<string?>("--host") { Description = "Only what holds for this host.", HelpName = "HOST" };
        var folder = new Option<string?>("--knowledge") { Description = "A folder of knowledge to use in place of the program's own.", HelpName = "FOLDER" };
        var command = new Command("show", "Shows a cause with its rows and sources, or a character across all causes.") { id, host, folder };
        command.SetAction(parsed => Run(terminal, parsed.GetRequiredValue(id), parsed.GetValue(host), parsed.GetValue(folder)));
        return command;
    }

    private static int Run(Terminal terminal, string id, string? host, string? folder)
    {
        var knowledge = KnowledgeSource.Read(terminal, folder);
        if (host is not null && !knowledge.Document.Hosts.Contains(host)) throw new UsageException($"there is no host '{host}'; accepted: {string.Join(", ", knowledge.Document.Hosts)}.");
        using var output = terminal.Writer();
        var page = new Page(output, terminal);
        var speech = new Speech(knowledge);
        if (knowledge.FindCause(id) is { } cause) CausePage.Write(page, cause, host, speech);
        else if (knowledge.FindCharacter(id) is { } character) CharacterPage.Write(page, character, host, speech);
        else throw new UsageException($"there is no cause or character '{id}'.{Nearest(id, knowledge.Causes.Select(other => other.Id).Concat(knowledge.Characters.Select(other => other.Id)))}");
        return ExitCode.Done;
    }

    private static string Nearest(string id, IEnumerable<string> ids)
    {
        var near = NearWords.Near(id, ids).Take(8).ToList();
        return near.Count == 0 ? "" : $" Is it one of these: {string.Join(", ", near)}?";
    }
}
