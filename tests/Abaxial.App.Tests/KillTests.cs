using System.Diagnostics;
using Abaxial.Data;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>A program that writes entries and photographs is killed at random points, also while it makes the store; bench/load/kill-storm does the same 200 times.</summary>
public sealed class KillTests
{
    private const int Kills = 20;
    private const int KillsPerStore = 5;

    [Fact]
    public async Task Whatever_was_acknowledged_is_there_after_a_kill_and_the_check_is_clean()
    {
        var random = new Random(20261125);
        int acknowledged = 0;
        for (int round = 0; round < Kills / KillsPerStore; round++)
        {
            await using var store = new TestStore(StoreKind.Sqlite);
            var told = new List<string>();
            for (int kill = 0; kill < KillsPerStore; kill++)
            {
                told.AddRange(await WriteAndKillAsync(store.Folder, kill == 0 ? 0 : random.Next(1, 60), TimeSpan.FromMilliseconds(kill == 0 ? random.Next(50, 1_000) : random.Next(30))));
                var ledger = await store.OpenAsync();
                var here = await EverythingAsync(ledger);
                Assert.All(told, line => Assert.Contains(line, here));
                Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
            }

            acknowledged += told.Count;
        }

        Assert.True(acknowledged > Kills, $"Only {acknowledged} writes were acknowledged: that shows nothing.");
    }

    /// <summary>Kills a writer after so many writes and a moment, and gives the lines that it wrote, the last one only where it is whole.</summary>
    private static async Task<List<string>> WriteAndKillAsync(string folder, int writes, TimeSpan andThen)
    {
        string program = Path.Combine(AppContext.BaseDirectory, "Abaxial.Load.dll");
        string dotnet = Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet";
        using var writer = Process.Start(new ProcessStartInfo(dotnet, ["exec", program, "storm", folder]) { RedirectStandardOutput = true })!;
        var told = new List<string>();
        while (told.Count < writes && await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line) told.Add(line);
        var rest = writer.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await Task.Delay(andThen, TestContext.Current.CancellationToken);
        Assert.False(writer.HasExited, "The writer ended by itself.");
        writer.Kill();
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        string text = await rest;
        return [.. told, .. text[..(text.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }

    private static async Task<HashSet<string>> EverythingAsync(Ledger ledger)
    {
        await using var context = ledger.Ask();
        return [.. await context.Entries.Select(row => "entry " + row.Id).ToListAsync(TestContext.Current.CancellationToken), .. await context.Photographs.Select(row => "photograph " + row.Sha256).ToListAsync(TestContext.Current.CancellationToken)];
    }
}
