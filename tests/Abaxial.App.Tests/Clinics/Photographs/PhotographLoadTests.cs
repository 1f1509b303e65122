using System.Diagnostics;
using System.Globalization;
using Abaxial.Data;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Many, and large: memory stays bounded, and all are there.</summary>
public sealed class PhotographLoadTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>On a disk in memory where there is one: what is shown here has nothing to do with how fast a disk flushes.</summary>
    [Fact]
    public async Task Ten_thousand_photographs_are_all_there_and_memory_does_not_grow_with_them()
    {
        const int count = 10_000;
        string folder = Path.Combine(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            Directory.CreateDirectory(folder);
            string small = Path.Combine(folder, "small.jpg"), store = Path.Combine(folder, "store");
            await File.WriteAllBytesAsync(small, Pictures.Jpeg(16, 16), Cancel);
            string[] lines = await RunAsync("many-photographs", store, small, count.ToString(CultureInfo.InvariantCulture));
            Assert.Equal($"{count} stored", lines[^1]);
            using var ledger = await Ledger.OpenAsync(store, TimeProvider.System, Cancel);
            var report = await TestStore.CheckAsync(ledger);
            Assert.Equal((count, 0), (report.Photographs, report.Faults.Length));
            Assert.Equal(2 * count, Sending.Files(ledger, "derived").Count);
            long[] peaks = [.. lines.Where(line => line.StartsWith("peak ", StringComparison.Ordinal)).Select(PeakOf)];
            Assert.Equal(10, peaks.Length);
            Assert.True(peaks[^1] - peaks[0] < 150L << 20, $"After each thousand: {string.Join(", ", peaks.Select(peak => $"{peak >> 20} MiB"))}.");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>
    /// A program of its own takes everything at once; 20,000 x 20,000 pixels alone would need 1,200 MB. The largest that are taken, of 64 megapixels, need 192 MB each, two at once.
    /// </summary>
    [Fact]
    public async Task Bombs_of_every_kind_at_once_take_no_more_memory_than_the_two_largest_photographs_that_are_taken()
    {
        await using var store = new TestStore();
        var bombs = new Dictionary<string, byte[]>
        {
            ["side.png"] = Pictures.Png(20_000, 20_000),
            ["claim.png"] = Pictures.PngOf(Pictures.Header(60_000, 60_000), ("IDAT", Pictures.PackedZeros(1 << 20)), ("IEND", [])),
            ["claim.jpg"] = Pictures.JpegClaiming(20_000, 20_000),
            ["hollow.jpg"] = Pictures.JpegClaiming(7_900, 7_900),
            ["scans.jpg"] = Pictures.JpegOfScans(7_900, 2_000),
            ["claim.webp"] = Pictures.WebPClaiming(16_000, 16_000),
            ["data.png"] = Pictures.PngOf(Pictures.Header(10, 10), ("IDAT", Pictures.PackedZeros(1L << 30)), ("IEND", [])),
            ["words.png"] = Pictures.Png(10, 10, ("zTXt", [.. "Comment\0\0"u8, .. Pictures.PackedZeros(1L << 30)])),
            ["profile.png"] = Pictures.Png(10, 10, ("iCCP", [.. "profile\0\0"u8, .. Pictures.PackedZeros(1L << 30)])),
            ["largest.png"] = Pictures.Png(7_990, 7_990),
        };
        var arguments = new List<string> { "photographs", store.Folder };
        foreach (var (name, bytes) in bombs)
        {
            await File.WriteAllBytesAsync(Path.Combine(store.Root, name), bytes, Cancel);
            arguments.AddRange([Path.Combine(store.Root, name), Path.Combine(store.Root, name)]);
        }

        string[] lines = await RunAsync([.. arguments]);
        Assert.Equal((bombs.Count * 2) + 1, lines.Length);
        Assert.Equal(2, lines.Count(line => line == "largest.png: stored"));
        Assert.Equal(2, lines.Count(line => line == "side.png: 20000 x 20000 pixels"));
        long peak = PeakOf(lines[^1]);
        Assert.True(peak < 900L << 20, $"The program took {peak >> 20} MiB.");
    }

    private static long PeakOf(string line) => long.Parse(line.Split(' ')[1], CultureInfo.InvariantCulture);

    /// <summary>Runs the program that loads, and gives what it says.</summary>
    private static async Task<string[]> RunAsync(params string[] arguments)
    {
        string dotnet = Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet";
        using var program = Process.Start(new ProcessStartInfo(dotnet, ["exec", Path.Combine(AppContext.BaseDirectory, "Abaxial.Load.dll"), .. arguments]) { RedirectStandardOutput = true })!;
        string[] lines = (await program.StandardOutput.ReadToEndAsync(Cancel)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        await program.WaitForExitAsync(Cancel);
        Assert.Equal(0, program.ExitCode);
        return lines;
    }
}
