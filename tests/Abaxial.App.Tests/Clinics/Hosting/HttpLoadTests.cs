using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>The load script's program, against a server that answers as the clinic does and counts.</summary>
public sealed class HttpLoadTests
{
    [Fact]
    public async Task It_lists_searches_opens_and_adds_and_counts_what_was_not_answered_well()
    {
        var asked = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        await using var server = Server(asked);
        await server.StartAsync(TestContext.Current.CancellationToken);
        var (code, output) = await RunAsync("http", server.Urls.First(), "--users", "4", "--seconds", "3");
        Assert.Equal(2, code); // looks are refused there
        Assert.True(asked.Keys.Order(StringComparer.Ordinal).SequenceEqual(["add", "list", "one", "search"]), output);
        string[] adding = Assert.Single(output.Split('\n'), line => line.StartsWith("| add a look |", StringComparison.Ordinal)).Split('|', StringSplitOptions.TrimEntries);
        Assert.Equal(adding[2], adding[8]);
        Assert.EndsWith("| 0 |", Assert.Single(output.Split('\n'), line => line.StartsWith("| search |", StringComparison.Ordinal)).Trim(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http", "http://192.0.2.1:80")]
    [InlineData("http", "http://127.0.0.1:80", "--seconds", "601")]
    [InlineData("http", "http://127.0.0.1:80", "--users", "0")]
    public async Task It_loads_this_machine_alone_and_for_a_while(params string[] args) => Assert.Equal(64, (await RunAsync(args)).Code);

    private static WebApplication Server(ConcurrentDictionary<string, int> asked)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.MapGet("/api/samples", (string? q, string? order) =>
        {
            if (q is not null) Count("search");
            else if (order is not null) Count("list");
            return new { samples = new[] { new { sample = "01K1H7Z0000000000000000000" } }, next = (string?)null };
        });
        app.MapGet("/api/samples/{sample}", (string sample) =>
        {
            Count("one");
            return sample;
        });
        app.MapPost("/api/samples/{sample}/entries", () =>
        {
            Count("add");
            return TypedResults.StatusCode(StatusCodes.Status400BadRequest);
        });
        return app;

        void Count(string what) => asked.AddOrUpdate(what, 1, (_, before) => before + 1);
    }

    private static async Task<(int Code, string Output)> RunAsync(params string[] args)
    {
        string host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";
        using var running = Process.Start(new ProcessStartInfo(host, ["exec", Path.Combine(AppContext.BaseDirectory, "Abaxial.Load.dll"), .. args]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = running.StandardError.ReadToEndAsync();
        string output = await running.StandardOutput.ReadToEndAsync();
        await running.WaitForExitAsync();
        return (running.ExitCode, output + await errors);
    }
}
