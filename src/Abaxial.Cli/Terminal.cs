using System.IO.Pipes;
using System.Text;
using Abaxial.Data;
using Microsoft.Win32.SafeHandles;

namespace Abaxial.Cli;

/// <summary>Where a run reads from and writes to, and what that place can show.</summary>
internal sealed record Terminal
{
    /// <summary>The variables that say in which characters the terminal writes; the first that is set counts.</summary>
    private static readonly string[] LocaleVariables = ["LC_ALL", "LC_CTYPE", "LANG"];

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public required Stream In { get; init; }

    public required Stream Out { get; init; }

    public required TextWriter Error { get; init; }

    /// <summary>Somebody watches standard error: progress may be shown there.</summary>
    public bool ErrorIsWatched { get; init; }

    /// <summary>Whether what is written to <see cref="Out"/> may be coloured.</summary>
    public bool Colour { get; init; }

    /// <summary>Only plain ASCII can be shown.</summary>
    public bool Ascii { get; init; }

    /// <summary>Columns.</summary>
    public int Width { get; init; } = 80;

    /// <summary>How the PostgreSQL database of the store is reached; null where stores are on SQLite in their folder.</summary>
    public string? Database { get; init; }

    /// <summary>The folder that relative paths start from.</summary>
    public string Folder { get; init; } = Environment.CurrentDirectory;

    public static Terminal OfProcess()
    {
        bool watched = !Console.IsOutputRedirected;
        return new Terminal
        {
            In = Console.OpenStandardInput(),
            Out = StandardOutput(),
            Error = Console.Error,
            ErrorIsWatched = !Console.IsErrorRedirected,
            Colour = watched && WantsColour(Environment.GetEnvironmentVariable),
            Ascii = NamesOtherCharset(Environment.GetEnvironmentVariable),
            Width = watched ? WindowWidth() : 80,
            Database = Environment.GetEnvironmentVariable(StorePlace.Variable),
        };
    }

    /// <summary>A writer on <see cref="Out"/>; dispose it to have everything written.</summary>
    public TextWriter Writer() => new StreamWriter(Out, Utf8, bufferSize: 16 << 10, leaveOpen: true) { NewLine = "\n" };

    public string PathOf(string path) => Path.Combine(Folder, path);

    /// <summary>The framework's own stream for standard output swallows the end of a pipe's reader, and the program would weigh on for nobody.</summary>
    private static Stream StandardOutput()
    {
        if (!OperatingSystem.IsWindows() && Console.IsOutputRedirected)
        {
            try
            {
                return new AnonymousPipeClientStream(PipeDirection.Out, new SafePipeHandle(1, ownsHandle: false));
            }
            catch (IOException)
            {
                // Not a pipe: a file, or nothing at all.
            }
        }

        return Console.OpenStandardOutput();
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.WindowWidth is > 0 and var columns ? Math.Clamp(columns, 60, 100) : 80;
        }
        catch (IOException)
        {
            return 80;
        }
    }

    /// <summary>Whether the environment has colour on a terminal: NO_COLOR is empty, and the terminal is more than a dumb one.</summary>
    internal static bool WantsColour(Func<string, string?> variable) => string.IsNullOrEmpty(variable("NO_COLOR")) && variable("TERM") is not (null or "dumb");

    /// <summary>Whether the environment names characters other than those of Unicode.</summary>
    internal static bool NamesOtherCharset(Func<string, string?> variable)
    {
        string? locale = LocaleVariables.Select(variable).FirstOrDefault(value => !string.IsNullOrEmpty(value));
        int dot = locale?.IndexOf('.', StringComparison.Ordinal) ?? -1;
        return dot >= 0 && !locale![(dot + 1)..].StartsWith("UTF", StringComparison.OrdinalIgnoreCase);
    }
}
