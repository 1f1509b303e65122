using Microsoft.Playwright;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>Debian's Chromium, as the tests start it.</summary>
internal static class Chromium
{
    private const string Usual = "/usr/bin/chromium";

    private static readonly string[] Arguments =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    /// <exception cref="InvalidOperationException">There is no Chromium; the message says how to get it.</exception>
    public static async Task<(IPlaywright Playwright, IBrowser Browser)> LaunchAsync()
    {
        if (!File.Exists(Usual)) throw new InvalidOperationException($"{Usual} is not there. On Debian, as root: apt-get update && apt-get install --no-install-recommends chromium");
        var playwright = await Playwright.CreateAsync();
        return (playwright, await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Usual, Args = Arguments }));
    }
}
