using System.Diagnostics;
using System.Net;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>The program as it is handed out: a folder that runs from anywhere.</summary>
public sealed class PublishedProgramTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("abaxial-published-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task It_starts_answers_logs_nothing_of_people_and_ends_well_when_told_to()
    {
        var cancel = TestContext.Current.CancellationToken;
        string program = Path.Combine(folder.FullName, "program");
        await PublishAsync(program);
        Assert.Contains("ImageMagick", await File.ReadAllTextAsync(Path.Combine(program, "notices", "Magick.NET.txt"), cancel), StringComparison.Ordinal);
        using var running = Process.Start(Host([Path.Combine(program, "Abaxial.Cli.dll"), "serve", "--demo", "--address", "http://127.0.0.1:0", "--log-level", "debug", "--log-format", "json"], folder.FullName))!;
        var log = running.StandardError.ReadToEndAsync(cancel);
        string? address = null, line;
        while ((line = await running.StandardOutput.ReadLineAsync(cancel)) is not (null or "Ctrl-C stops it."))
        {
            if (line.StartsWith("The clinic is at ", StringComparison.Ordinal)) address = line["The clinic is at ".Length..];
        }

        Assert.True(address is not null, $"It did not start: {(line is null ? await log : "")}");
        using var client = new HttpClient { BaseAddress = new Uri(address) };
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/health/ready?who=Crakeby", cancel)).StatusCode);
        Assert.Contains("26-0014-", await client.GetStringAsync("/", cancel), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/clinic.css", cancel)).StatusCode);

        using var kill = Process.Start("kill", ["-TERM", $"{running.Id}"]);
        await running.WaitForExitAsync(cancel);
        Assert.Equal(0, running.ExitCode);
        string logged = await log;
        Assert.Contains("/health/ready", logged, StringComparison.Ordinal);
        Assert.All(logged.Split('\n', StringSplitOptions.RemoveEmptyEntries), written => Assert.StartsWith("{", written, StringComparison.Ordinal));
        Assert.DoesNotContain("Crakeby", logged, StringComparison.Ordinal);
    }

    private static async Task PublishAsync(string target)
    {
        string root = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "..")), built = Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));
        using var publishing = Process.Start(Host(["publish", "src/Abaxial.Cli", "-c", built == "release" ? "Release" : "Debug", "--no-build", "-o", target, "-nodeReuse:false"], root))!;
        var output = publishing.StandardOutput.ReadToEndAsync();
        var errors = publishing.StandardError.ReadToEndAsync();
        await publishing.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(publishing.ExitCode == 0, $"It could not be published.\n{await output}{await errors}");
    }

    private static ProcessStartInfo Host(string[] arguments, string from)
    {
        string host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";
        var start = new ProcessStartInfo(host, arguments) { WorkingDirectory = from, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase) || name.StartsWith("ABAXIAL", StringComparison.Ordinal)).ToArray()) start.Environment.Remove(name);
        return start;
    }
}
