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
        if (missing is not null) throw new UsageException(Directory.Exists(terminal.PathOf(missing)) ? $"'{missing}' is a folder, not a case file." : $"There is no file '{missing}'.");
    }

    /// <summary>More than one case may come.</summary>
    public bool AreSeveral => names.Count > 1 || names[0] == StandardInput;

    /// <summary>Reads the cases one after the other.</summary>
    /// <exception cref="UsageException">A file cannot be read.</exception>
    public IEnumerable<CaseInput> Read()
    {
        int number = 0;
        foreach (string name in names)
        {
            if (name != StandardInput)
            {
                yield return ReadFile(name, ++number);
                continue;
            }
        }
    }

    private CaseInput ReadFile(string name, int number)
    {
        using var file = Open(name);
        var buffer = new byte[Math.Min(file is { CanSeek: true, Length: > 0 } ? file.Length : CaseLimits.Bytes, CaseLimits.Bytes) + 1];
        int length;
        try
        {
            length = file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(name, problem);
        }

        bool isTooLong = length > CaseLimits.Bytes;
        return new CaseInput(number, name, isTooLong ? default : buffer.AsMemory(0, length), isTooLong);
    }

    private FileStream Open(string name)
    {
        try
        {
            return new FileStream(terminal.PathOf(name), FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, bufferSize: 0);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw Unreadable(name, problem);
        }
    }

    private static UsageException Unreadable(string name, Exception problem) => new($"'{name}' cannot be read: {problem.Message}");
}
