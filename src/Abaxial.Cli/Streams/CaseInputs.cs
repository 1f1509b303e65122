using Abaxial.Files.Cases;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Cli.Streams;

/// <summary>The case files and streams that a command was given, opened one after the other.</summary>
internal sealed class CaseInputs
{
    private const string StandardInput = "-";

    private readonly Terminal terminal;
    private readonly IReadOnlyList<string> names;

    /// <exception cref="UsageException">A file is not there, or standard input is named twice.</exception>
    public CaseInputs(Terminal terminal, IReadOnlyList<string> names)
    {
        this.terminal = terminal;
        this.names = names;
        if (names.Count(name => name == StandardInput) > 1) throw new UsageException("- can be named once only: standard input is read once.");
        string? missing = names.FirstOrDefault(name => name != StandardInput && !File.Exists(terminal.PathOf(name)));
        if (missing is "") throw new UsageException("a case file has an empty name.");
        if (missing is not null) throw new UsageException(Directory.Exists(terminal.PathOf(missing)) ? $"'{missing}' is a folder, not a case file." : $"there is no file '{missing}'.");
    }

    /// <summary>More than one case may come.</summary>
    public bool AreSeveral => names.Count > 1 || names[0] == StandardInput;

    /// <summary>Reads the cases one after the other.</summary>
    /// <param name="knowledge">The knowledge that ids are looked up in.</param>
    /// <exception cref="UsageException">A file cannot be read.</exception>
    public IEnumerable<CaseInput> Read(KnowledgeBase knowledge)
    {
        int number = 0;
        foreach (string name in names)
        {
            if (name != StandardInput)
            {
                yield return new CaseInput(++number, name, ReadFile(name, knowledge));
                continue;
            }

            using var cases = CaseFiles.ReadLines(terminal.In, knowledge).GetEnumerator();
            while (MoveNext(cases)) yield return new CaseInput(++number, null, cases.Current.Reading);
        }
    }

    private static bool MoveNext(IEnumerator<NumberedCase> cases)
    {
        try
        {
            return cases.MoveNext();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"standard input cannot be read: {problem.Message}");
        }
    }

    private CaseReading ReadFile(string name, KnowledgeBase knowledge)
    {
        try
        {
            using var file = new FileStream(terminal.PathOf(name), FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, bufferSize: 0);
            return CaseFiles.ReadWhole(file, knowledge);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new UsageException($"'{name}' cannot be read: {problem.Message}");
        }
    }
}
