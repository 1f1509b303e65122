using System.Diagnostics;
using Abaxial.Data;
using Abaxial.Web.Photographs;

namespace Abaxial.Load;

/// <summary>Takes files in as photographs, all at once, and says what became of each and how much memory the program ever took.</summary>
internal static class PhotographBombs
{
    public static async Task<int> RunAsync(string folder, string[] files)
    {
        var options = new PhotographOptions();
        using var ledger = await Ledger.OpenAsync(folder, TimeProvider.System);
        using var worker = new PhotographWorker(options);
        await worker.StartAsync(CancellationToken.None);
        var sizes = new PhotographSizes(ledger, worker, options);
        foreach (string line in await Task.WhenAll(files.Select(file => TakeAsync(sizes, file)))) Console.WriteLine(line);
        await worker.StopAsync(CancellationToken.None);
        using var program = Process.GetCurrentProcess();
        Console.WriteLine($"peak {program.PeakWorkingSet64}");
        return 0;
    }

    private static async Task<string> TakeAsync(PhotographSizes sizes, string file)
    {
        await using var bytes = File.OpenRead(file);
        var taken = await sizes.TakeInAsync(bytes);
        return $"{Path.GetFileName(file)}: {taken.Problem?.Found ?? taken.Adding.Refusal ?? "stored"}";
    }
}
