using Abaxial.Data;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Load;

/// <summary>Looks in a store for everything that was said to be in it, and checks it.</summary>
internal static class StormVerdict
{
    public static async Task<int> RunAsync(string folder, string acknowledged)
    {
        using var ledger = await Ledger.OpenAsync(StorePlace.Of(folder, Environment.GetEnvironmentVariable(StorePlace.Variable)), TimeProvider.System);
        var lines = await File.ReadAllLinesAsync(acknowledged);
        await using var context = ledger.Ask();
        var here = (await context.Entries.Select(row => "entry " + row.Id).ToListAsync()).Concat(await context.Photographs.Select(row => "photograph " + row.Sha256).ToListAsync()).ToHashSet();
        var lost = lines.Where(line => IsWhole(line) && !here.Contains(line)).ToList();
        foreach (string line in lost) Console.Error.WriteLine($"lost: {line}");
        var report = await LedgerCheck.RunAsync(ledger);
        foreach (var fault in report.Faults) Console.Error.WriteLine($"{fault.What}: {fault.Found}");
        Console.WriteLine($"{lines.Length} acknowledged, {lost.Count} lost; {report.Entries} entries, {report.Photographs} photographs, {report.Faults.Length} faults");
        return lost.Count == 0 && report.IsClean ? 0 : 2;
    }

    /// <summary>The last line may have been cut off by the kill: then nobody was told.</summary>
    private static bool IsWhole(string line) => line.Split(' ') is ["entry", { Length: 26 }] or ["photograph", { Length: 64 }];
}
