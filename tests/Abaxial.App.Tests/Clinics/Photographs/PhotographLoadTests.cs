using System.Diagnostics;
using System.Globalization;
using Abaxial.Web.Photographs;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Many, and large: memory stays bounded, and all are there.</summary>
public sealed class PhotographLoadTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ten_thousand_photographs_are_all_there_and_memory_does_not_grow_with_them()
    {
        const int count = 10_000;
        var sizes = clinic.Services.GetRequiredService<PhotographSizes>();
        var stored = new System.Collections.Concurrent.ConcurrentDictionary<string, int>();
        await Parallel.ForAsync(0, 100, Cancel, async (i, cancel) => await TakeAsync(i, cancel));
        long before = Used();
        await Parallel.ForAsync(100, count, new ParallelOptions { CancellationToken = Cancel, MaxDegreeOfParallelism = 8 }, async (i, cancel) => await TakeAsync(i, cancel));
        Assert.Equal(count, stored.Count);
        Assert.All(stored.Keys, sha256 => Assert.True(File.Exists(clinic.Ledger.Photographs.PathOf(sha256))));
        Assert.Equal(2 * count, Sending.Files(clinic.Ledger, "derived").Count);
        long grown = Used() - before;
        Assert.True(grown < 256L << 20, $"The program grew by {grown >> 20} MiB.");

        async Task TakeAsync(int i, CancellationToken cancel)
        {
            var taken = await sizes.TakeInAsync(new MemoryStream(Pictures.Jpeg(16, 16, i)), cancel);
            Assert.Null(taken.Problem);
            stored[taken.Adding.Sha256!] = i;
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
            ["claim.webp"] = Pictures.WebPClaiming(16_000, 16_000),
            ["data.png"] = Pictures.PngOf(Pictures.Header(10, 10), ("IDAT", Pictures.PackedZeros(1L << 30)), ("IEND", [])),
            ["words.png"] = Pictures.Png(10, 10, ("zTXt", [.. "Comment\0\0"u8, .. Pictures.PackedZeros(1L << 30)])),
            ["profile.png"] = Pictures.Png(10, 10, ("iCCP", [.. "profile\0\0"u8, .. Pictures.PackedZeros(1L << 30)])),
            ["largest.png"] = Pictures.Png(7_990, 7_990),
        };
        var arguments = new List<string> { "exec", Path.Combine(AppContext.BaseDirectory, "Abaxial.Load.dll"), "photographs", store.Folder };
        foreach (var (name, bytes) in bombs)
        {
            await File.WriteAllBytesAsync(Path.Combine(store.Root, name), bytes, Cancel);
            arguments.AddRange([Path.Combine(store.Root, name), Path.Combine(store.Root, name)]);
        }

        string dotnet = Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet";
        using var program = Process.Start(new ProcessStartInfo(dotnet, arguments) { RedirectStandardOutput = true })!;
        string[] lines = (await program.StandardOutput.ReadToEndAsync(Cancel)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        await program.WaitForExitAsync(Cancel);
        Assert.Equal((0, (bombs.Count * 2) + 1), (program.ExitCode, lines.Length));
        Assert.Equal(2, lines.Count(line => line == "largest.png: stored"));
        Assert.Equal(2, lines.Count(line => line == "side.png: 20000 x 20000 pixels"));
        long peak = long.Parse(lines[^1].Split(' ')[1], CultureInfo.InvariantCulture);
        TestContext.Current.SendDiagnosticMessage($"peak {peak >> 20} MiB");
        Assert.True(peak < 900L << 20, $"The program took {peak >> 20} MiB.");
    }

    private static long Used()
    {
        GC.Collect();
        using var program = Process.GetCurrentProcess();
        return program.WorkingSet64;
    }
}
