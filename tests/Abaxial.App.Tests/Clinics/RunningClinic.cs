using Abaxial.Data;
using Abaxial.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics;

/// <summary>A clinic that listens on a free port of loopback, over a store of its own. Visitors are its diagnostician, as in a demo.</summary>
public sealed class RunningClinic : IAsyncLifetime
{
    private readonly TestStore store = new();
    private WebApplication? app;

    public Ledger Ledger => App.Services.GetRequiredService<Ledger>();

    public Uri Address => new(App.Urls.First());

    private WebApplication App => app ?? throw new InvalidOperationException("The clinic is not running yet.");

    /// <summary>A client that keeps its cookies and follows no redirect.</summary>
    public HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = Address };

    public async ValueTask InitializeAsync()
    {
        app = await Clinic.BuildAsync(new ClinicOptions { Store = store.Folder, Address = new Uri("http://127.0.0.1:0"), IsDemo = true, LogLevel = LogLevel.Warning }, TimeProvider.System, TestContext.Current.CancellationToken);
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
