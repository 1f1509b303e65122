using System.Diagnostics;
using Microsoft.Playwright;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>The published page, open in Debian's Chromium.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    private readonly IPlaywright playwright;
    private readonly IBrowser browser;
    private readonly IPage page;

    private OpenPage(IPlaywright playwright, IBrowser browser, IPage page, TimeSpan firstLoad)
    {
        this.playwright = playwright;
        this.browser = browser;
        this.page = page;
        FirstLoad = firstLoad;
    }

    /// <summary>From the first request, with an empty cache, until the library could be called.</summary>
    public TimeSpan FirstLoad { get; }

    public string Browser => $"Chromium {browser.Version}";

    /// <summary>Opens the page and waits until the library can be called.</summary>
    /// <exception cref="InvalidOperationException">There is no Chromium, or the page did not start; the message says which.</exception>
    public static async Task<OpenPage> OpenAsync(Uri address)
    {
        var (playwright, browser) = await Chromium.LaunchAsync();
        var page = await browser.NewPageAsync();
        var said = new List<string>();
        page.Console += (_, message) => said.Add(message.Text);
        page.PageError += (_, problem) => said.Add(problem);
        long start = Stopwatch.GetTimestamp();
        await page.GotoAsync(address.ToString());
        await page.WaitForFunctionAsync("document.getElementById('state').textContent !== 'starting'", null, new PageWaitForFunctionOptions { Timeout = 120_000 });
        var firstLoad = Stopwatch.GetElapsedTime(start);
        string? state = await page.TextContentAsync("#state");
        if (state != "ready") throw new InvalidOperationException($"The page did not start: {state} {string.Join(Environment.NewLine, said)}");
        return new OpenPage(playwright, browser, page, firstLoad);
    }

    /// <summary>The answer or refusal that the library gives in the browser.</summary>
    public Task<string> WeighAsync(string caseJson) => page.EvaluateAsync<string>("text => abaxial.weigh(text)", caseJson);

    /// <summary>Weighs one text after the other, and gives the milliseconds that each took: reading, weighing and writing, as a tap on the page would.</summary>
    public async Task<double[]> TapAsync(IReadOnlyList<string> caseJsons) =>
        await page.EvaluateAsync<double[]>("texts => texts.map(text => { const start = performance.now(); abaxial.weigh(text); return performance.now() - start; })", caseJsons);

    /// <summary>Milliseconds an answer, warm, without reading and writing.</summary>
    public Task<double> MillisecondsPerAnswerAsync(string caseJson, int times, bool bands, bool nextLooks) =>
        page.EvaluateAsync<double>("([text, times, bands, nextLooks]) => abaxial.millisecondsPerAnswer(text, times, bands, nextLooks)", new object[] { caseJson, times, bands, nextLooks });

    /// <summary>Makes the page's processor so many times slower; 1 for as it is.</summary>
    public async Task SlowDownAsync(int times)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = times });
    }

    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        playwright.Dispose();
    }
}
