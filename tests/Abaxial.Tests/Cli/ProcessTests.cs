using System.Diagnostics;

namespace Abaxial.Tests.Cli;

/// <summary>The program as a process of its own: what only shows there.</summary>
public sealed class ProcessTests
{
    [Fact]
    public async Task The_process_answers_a_stream_and_gives_the_exit_code()
    {
        using var process = Start("weigh", "-", "--json");
        await process.StandardInput.WriteAsync($"{ExampleCases.Septoria}\n{ExampleCases.Ringed}\n");
        process.StandardInput.Close();
        string output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        string error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, process.ExitCode);
        Assert.Equal(2, output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Empty(error);
    }

    [Fact]
    public async Task A_file_that_is_not_there_exits_with_64()
    {
        using var process = Start("weigh", "no-such-case.json");
        string error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(64, process.ExitCode);
        Assert.Equal("abaxial: there is no file 'no-such-case.json'.\n", error.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task When_nobody_reads_on_the_process_ends_quietly()
    {
        using var process = Start("weigh", "-", "--json");
        var feeding = Feed(process);
        Assert.NotNull(await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken));
        process.StandardOutput.Close();
        string error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        await feeding;
        Assert.Empty(error);
        Assert.Equal(0, process.ExitCode);
    }

    /// <summary>Feeds cases without end, until the process no longer takes them.</summary>
    private static async Task Feed(Process process)
    {
        try
        {
            while (true) await process.StandardInput.WriteAsync($"{ExampleCases.Septoria}\n");
        }
        catch (IOException)
        {
            // The process is gone, as it should.
        }
    }

    private static Process Start(params string[] args)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Abaxial.Cli.dll"));
        foreach (string arg in args) start.ArgumentList.Add(arg);
        return Process.Start(start)!;
    }
}
