using System.Text.RegularExpressions;

namespace Abaxial.Tests;

/// <summary>The documents of the repository.</summary>
public sealed partial class DocumentTests
{
    [Fact]
    public void Every_link_between_them_leads_somewhere()
    {
        string[] folders = ["docs", "demo", "knowledge"];
        var documents = Directory.EnumerateFiles(Repository.Root, "*.md").Concat(folders.SelectMany(folder => Directory.EnumerateFiles(Repository.PathOf(folder), "*.md", SearchOption.AllDirectories)));
        var dead = from document in documents
                   from link in Link().Matches(File.ReadAllText(document)).Select(match => match.Groups[1].Value)
                   where !link.Contains(':', StringComparison.Ordinal)
                   where !Path.Exists(Path.Combine(Path.GetDirectoryName(document)!, link))
                   select $"{Path.GetRelativePath(Repository.Root, document)}: {link}";
        Assert.Empty(dead);
    }

    [GeneratedRegex(@"\]\(([^)#\s]+)(#[^)]*)?\)")]
    private static partial Regex Link();
}
