using System.Diagnostics;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>The bare page as it is published: trimmed, interpreted, as the field page will be.</summary>
internal static class PublishedPage
{
    /// <summary>Publishes the page.</summary>
    /// <returns>The folder to be served.</returns>
    /// <exception cref="InvalidOperationException">It could not be published; the message holds what the build said.</exception>
    public static async Task<string> PublishAsync()
    {
        string target = Path.Combine(Repository.Root, "artifacts", "publish", "Abaxial.Tests.Page", "release");
        if (Directory.Exists(target)) Directory.Delete(target, recursive: true); // of an older one, files with other fingerprints would stay

        // No build server may outlive the command: it would hold the pipes that are read below open.
        var start = new ProcessStartInfo(DotnetHost) { WorkingDirectory = Repository.Root, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in (string[])["publish", "tests/Abaxial.Tests.Page", "-c", "Release", "-nodeReuse:false", "-p:UseSharedCompilation=false"]) start.ArgumentList.Add(argument);
        foreach (string name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToArray()) start.Environment.Remove(name);

        using var process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start.");
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"The page could not be published.{Environment.NewLine}{await output}{await errors}");
        return Path.Combine(target, "wwwroot");
    }

    private static string DotnetHost => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";
}
