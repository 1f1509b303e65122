using Abaxial.Benchmarks.Workload;
using Abaxial.Browser.Tests.Browsing;

namespace Abaxial.Benchmarks.Figures;

/// <summary>The published page in Debian's Chromium: its size, its first load, and the milliseconds an answer and a tap take.</summary>
internal static class BrowserFigures
{
    private const int Times = 40;
    private static readonly string[] Cases = ["02-garden-septoria", "14-pink-rot", "08-spray-burn-or-not"];

    public static async Task PrintAsync()
    {
        string folder = await PublishedPage.PublishAsync();
        await using var site = await StaticSite.ServeAsync(folder);
        await using var page = await OpenPage.OpenAsync(site.Address);
        Console.WriteLine($"{Machine.Describe()}, {page.Browser}");
        PrintSize(folder);
        Console.WriteLine($"Ready {Machine.Digits(page.FirstLoad.TotalSeconds)} s after the first request, from loopback with an empty cache.");
        Console.WriteLine("| case | slowed | answer without bands and next looks (ms) | without next looks (ms) | whole answer (ms) | a tap, middle (ms) | a tap, longest (ms) |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
        foreach (int slowed in (int[])[1, 4])
        {
            foreach (string name in Cases) await PrintCaseAsync(page, name, slowed);
        }
    }

    private static async Task PrintCaseAsync(OpenPage page, string name, int slowed)
    {
        string text = IslandCases.Text(name);
        string[] taps = Taps.LookByLook(text);
        await page.SlowDownAsync(1);
        await page.MillisecondsPerAnswerAsync(text, Times, bands: true, nextLooks: true); // warms it: hot loops are compiled after some turns
        await page.TapAsync(taps);
        await page.SlowDownAsync(slowed);
        double bare = await page.MillisecondsPerAnswerAsync(text, Times, bands: false, nextLooks: false);
        double banded = await page.MillisecondsPerAnswerAsync(text, Times, bands: true, nextLooks: false);
        double whole = await page.MillisecondsPerAnswerAsync(text, Times, bands: true, nextLooks: true);
        double[] tapped = await page.TapAsync(taps);
        Array.Sort(tapped);
        Console.WriteLine($"| {name} | {slowed}x | {Machine.Digits(bare)} | {Machine.Digits(banded)} | {Machine.Digits(whole)} | {Machine.Digits(tapped[tapped.Length / 2])} | {Machine.Digits(tapped[^1])} |");
    }

    private static void PrintSize(string folder)
    {
        var files = new DirectoryInfo(folder).GetFiles("*", SearchOption.AllDirectories);
        double Mebibytes(Func<FileInfo, bool> which) => files.Where(which).Sum(file => file.Length) / 1048576.0;
        double plain = Mebibytes(file => file.Extension is not (".br" or ".gz"));
        double brotli = Mebibytes(file => file.Extension == ".br");
        Console.WriteLine($"Published: {Machine.Digits(plain)} MiB, {Machine.Digits(brotli)} MiB as Brotli sends it.");
    }
}
