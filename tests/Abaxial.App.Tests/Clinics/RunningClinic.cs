using Abaxial.Data;
using Abaxial.Web;
using Abaxial.Web.Hosting;
using Abaxial.Web.Photographs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics;

/// <summary>A clinic that listens on a free port of loopback, over a store of its own. Visitors are its diagnostician, as in a demo.</summary>
public sealed class RunningClinic : IAsyncLifetime
{
    private readonly TestStore store = new();
    private WebApplication? app;

    /// <summary>A test asks faster than anybody; the limits have tests of their own.</summary>
    private static RequestLimits Generous { get; } = new() { RequestsPerMinute = 1_000_000, UploadsPerMinute = 1_000_000, SignInsPerMinute = 1_000_000 };

    public PhotographOptions Photographs { get; init; } = new();

    public IServiceProvider Services => App.Services;

    public Ledger Ledger => App.Services.GetRequiredService<Ledger>();

    public Uri Address => new(App.Urls.First());

    private WebApplication App => app ?? throw new InvalidOperationException("The clinic is not running yet.");

    /// <summary>A client that keeps its cookies and follows no redirect.</summary>
    public HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = Address };

    public async ValueTask InitializeAsync()
    {
        var options = new ClinicOptions { Store = store.Folder, Address = new Uri("http://127.0.0.1:0"), IsDemo = true, LogLevel = LogLevel.Warning, Photographs = Photographs, Limits = Generous };
        app = await Clinic.BuildAsync(options, TimeProvider.System, TestContext.Current.CancellationToken);
        await app.StartAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        if (app is not null)
        {
            await app.StopAsync(TestContext.Current.CancellationToken);
            await app.DisposeAsync();
        }

        await store.DisposeAsync();
    }
}
