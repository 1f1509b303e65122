using System.Text;
using Abaxial.Cli;

namespace Abaxial.Tests.Cli;

/// <summary>What one run of the command line gave.</summary>
internal sealed record CliResult(int ExitCode, string Out, string Error)
{
    public string[] Lines => Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>Runs the command line in this process, in a folder of its own that is removed with it.</summary>
internal sealed class CliRun : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("abaxial-cli-");

    public string Folder => folder.FullName;

    public bool Colour { get; init; }

    public bool Ascii { get; init; }

    /// <summary>Writes a file and gives its name, as a command is to be given it.</summary>
    public string Write(string name, string text) => Write(name, Encoding.UTF8.GetBytes(text));

    public string Write(string name, byte[] bytes)
    {
        string path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return name;
    }

    public CliResult Run(params string[] args) => RunWith("", args);

    public CliResult RunWith(string input, params string[] args) => RunWith(new MemoryStream(Encoding.UTF8.GetBytes(input)), args);

    public CliResult RunWith(Stream input, params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var terminal = new Terminal { In = input, Out = output, Error = error, Folder = Folder, Colour = Colour, Ascii = Ascii };
        int exitCode = CommandLine.Run(args, terminal, WeighCommand.Create, WeatherCommand.Create, KnowledgeCommand.Create);
        return new CliResult(exitCode, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    public void Dispose() => folder.Delete(recursive: true);
}
