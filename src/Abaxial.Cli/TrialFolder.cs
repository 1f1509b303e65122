using System.Collections.Immutable;
using Abaxial.Files.Trials;

namespace Abaxial.Cli;

/// <summary>Finds and reads the folders of trials and demo cases that the project keeps.</summary>
internal static class TrialFolder
{
    /// <summary>The project's folders of cases, from its root.</summary>
    private static readonly string[] Kept = ["trials", Path.Combine("demo", "cases")];

    /// <summary>The folder <c>trials</c> of the project that the current folder lies in.</summary>
    /// <exception cref="UsageException">There is none.</exception>
    public static string Find(Terminal terminal) =>
        Projects(terminal).Select(root => Path.Combine(root, Kept[0])).FirstOrDefault(Directory.Exists)
        ?? throw new UsageException("there is no folder 'trials' here or above: name one.");

    /// <summary>The trials and demo cases of the project that the current folder lies in.</summary>
    /// <exception cref="UsageException">There are none, or they cannot be read.</exception>
    public static ImmutableArray<Trial> ReadKept(Terminal terminal)
    {
        var folders = Projects(terminal).Select(root => Kept.Select(folder => Path.Combine(root, folder)).Where(Directory.Exists).ToList()).FirstOrDefault(found => found.Count > 0)
            ?? throw new UsageException("there are no folders 'trials' or 'demo/cases' here or above: name one with --cases.");
        return [.. folders.SelectMany(folder => Read(folder))];
    }

    /// <exception cref="UsageException">The folder cannot be read, or holds something else.</exception>
    public static ImmutableArray<Trial> Read(string folder)
    {
        try
        {
            return TrialFiles.ReadFolder(folder);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            throw new UsageException($"the cases in '{folder}' cannot be read: {problem.Message}");
        }
    }

    private static IEnumerable<string> Projects(Terminal terminal)
    {
        for (var folder = new DirectoryInfo(terminal.Folder); folder is not null; folder = folder.Parent) yield return folder.FullName;
    }
}
