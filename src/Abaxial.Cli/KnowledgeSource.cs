using Abaxial.Files.Knowledge;
using Abaxial.Knowledge;

namespace Abaxial.Cli;

/// <summary>The knowledge that a command was asked to use.</summary>
internal static class KnowledgeSource
{
    /// <summary>The word that stands for the program's own knowledge where a folder may stand.</summary>
    public const string BuiltInWord = "built-in";

    /// <summary>The program's own, or that of a folder.</summary>
    /// <param name="terminal">Says where relative paths start.</param>
    /// <param name="folder">A folder; null or <see cref="BuiltInWord"/> for the program's own.</param>
    /// <exception cref="UsageException">The folder cannot be read, or has problems.</exception>
    public static KnowledgeBase Read(Terminal terminal, string? folder)
    {
        if (folder is null or BuiltInWord) return BuiltIn.Solanum();
        var compiled = Compile(terminal, folder);
        if (compiled.Knowledge is { } knowledge) return knowledge;
        throw new UsageException($"the knowledge in '{folder}' has problems:{Environment.NewLine}{string.Join(Environment.NewLine, compiled.Problems.Select(problem => Line(folder, problem)))}");
    }

    /// <summary>A folder's knowledge with its problems.</summary>
    /// <exception cref="UsageException">The folder cannot be read.</exception>
    public static CompiledKnowledge Compile(Terminal terminal, string folder)
    {
        if (File.Exists(terminal.PathOf(folder))) throw new UsageException($"'{folder}' is a file; accepted: a folder of knowledge, as knowledge/solanum.");
        try
        {
            return KnowledgeFolder.Compile(terminal.PathOf(folder));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"the knowledge in '{folder}' cannot be read: {problem.Message}");
        }
    }

    public static string Line(string folder, KnowledgeFileProblem problem) => $"{Path.Combine(folder, problem.File)}({problem.Line}): {problem.Found}";
}
