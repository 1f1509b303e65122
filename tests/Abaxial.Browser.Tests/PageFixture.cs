using Abaxial.Browser.Tests.Browsing;

namespace Abaxial.Browser.Tests;

/// <summary>Publishes, serves and opens the page once for all tests of a class.</summary>
public sealed class PageFixture : IAsyncLifetime
{
    private StaticSite? site;
    private OpenPage? page;

    internal OpenPage Page => page ?? throw new InvalidOperationException("The page is not open yet.");

    public async ValueTask InitializeAsync()
    {
        site = await StaticSite.ServeAsync(await PublishedPage.PublishAsync());
        page = await OpenPage.OpenAsync(site.Address);
    }

    public async ValueTask DisposeAsync()
    {
        if (page is not null) await page.DisposeAsync();
        if (site is not null) await site.DisposeAsync();
    }
}
