using Abaxial.Files.Knowledge;

namespace Abaxial.Tests.Knowledge;

/// <summary>A copy of the knowledge folder that can be broken; deleted when disposed of.</summary>
internal sealed class BrokenFolder : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("abaxial-knowledge-").FullName;

    public BrokenFolder()
    {
        string from = Path.Combine(AppContext.BaseDirectory, "knowledge");
        foreach (string file in Directory.EnumerateFiles(from, "*.yaml", SearchOption.AllDirectories))
        {
            string to = Path.Combine(path, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    public CompiledKnowledge Compile() => KnowledgeFolder.Compile(path);

    public string Read(string file) => File.ReadAllText(Path.Combine(path, file));

    public void Write(string file, string text) => File.WriteAllText(Path.Combine(path, file), text);

    /// <summary>Replaces the first place where a text stands, which must stand there.</summary>
    /// <returns>The line, from 1, on which it stood.</returns>
    public int Replace(string file, string old, string now)
    {
        string text = Read(file);
        int at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{old}' does not stand in {file}.");
        Write(file, string.Concat(text.AsSpan(0, at), now, text.AsSpan(at + old.Length)));
        return text.AsSpan(0, at).Count('\n') + 1;
    }

    public void Dispose() => Directory.Delete(path, recursive: true);
}
