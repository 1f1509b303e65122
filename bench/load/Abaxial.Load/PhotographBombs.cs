using System.Diagnostics;
using System.Text;
using Abaxial.Data;
using Abaxial.Web.Photographs;

namespace Abaxial.Load;

/// <summary>Takes files in as photographs and says what became of them, and how much memory the program ever took.</summary>
internal static class PhotographBombs
{
    private const int Step = 1_000;
    private const int AtOnce = 8;

    /// <summary>Some files, all at once: a line each, then the peak.</summary>
    public static async Task<int> RunAsync(string folder, string[] files)
    {
        using var ledger = await Ledger.OpenAsync(folder, TimeProvider.System);
        using var worker = new PhotographWorker(new PhotographOptions());
        await worker.StartAsync(CancellationToken.None);
        var sizes = new PhotographSizes(ledger, worker, new PhotographOptions());
        foreach (string line in await Task.WhenAll(files.Select(file => TakeAsync(sizes, file)))) Console.WriteLine(line);
        await worker.StopAsync(CancellationToken.None);
        SayPeak();
        return 0;
    }

    /// <summary>So many photographs, each the same JPEG with a comment of its own: the peak after each thousand, then how many were stored.</summary>
    public static async Task<int> RunManyAsync(string folder, string jpeg, int count)
    {
        byte[] bytes = await File.ReadAllBytesAsync(jpeg);
        using var ledger = await Ledger.OpenAsync(folder, TimeProvider.System);
        using var worker = new PhotographWorker(new PhotographOptions());
        await worker.StartAsync(CancellationToken.None);
        var sizes = new PhotographSizes(ledger, worker, new PhotographOptions());
        int stored = 0;
        for (int from = 0; from < count; from += Step)
        {
            await Parallel.ForAsync(from, Math.Min(count, from + Step), new ParallelOptions { MaxDegreeOfParallelism = AtOnce }, async (i, cancel) =>
            {
                byte[] comment = Encoding.ASCII.GetBytes($"photograph {i}");
                byte[] one = [.. bytes[..2], 0xff, 0xfe, 0, (byte)(comment.Length + 2), .. comment, .. bytes[2..]];
                var taken = await sizes.TakeInAsync(new MemoryStream(one), cancel);
                if (taken.Adding is { IsRefused: false, WasThere: false }) Interlocked.Increment(ref stored);
            });
            SayPeak();
        }

        await worker.StopAsync(CancellationToken.None);
        Console.WriteLine($"{stored} stored");
        return 0;
    }

    private static async Task<string> TakeAsync(PhotographSizes sizes, string file)
    {
        await using var bytes = File.OpenRead(file);
        var taken = await sizes.TakeInAsync(bytes);
        return $"{Path.GetFileName(file)}: {taken.Problem?.Found ?? taken.Adding.Refusal ?? "stored"}";
    }

    private static void SayPeak()
    {
        using var program = Process.GetCurrentProcess();
        Console.WriteLine($"peak {program.PeakWorkingSet64}");
    }
}
