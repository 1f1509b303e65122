using System.Text.Json;
using Abaxial.Data;
using Abaxial.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>A clinic on a free port of loopback with options of the test's choosing, and endpoints of the test's own beside its own. Visitors are its diagnostician, as in a demo.</summary>
internal sealed class HostedClinic : IAsyncDisposable
{
    private readonly TestStore store = new();
    private WebApplication? app;

    public WebApplication App => app ?? throw new InvalidOperationException("The clinic is not running yet.");

    public Ledger Ledger => App.Services.GetRequiredService<Ledger>();

    public string Folder => store.Folder;

    public Uri Address => new(App.Urls.First());

    public static async Task<HostedClinic> StartAsync(Func<ClinicOptions, ClinicOptions>? with = null, Action<IEndpointRouteBuilder>? map = null)
    {
        var clinic = new HostedClinic();
        var options = new ClinicOptions { Store = clinic.Folder, Address = new Uri("http://127.0.0.1:0"), IsDemo = true, LogLevel = LogLevel.Warning };
        clinic.app = await Clinic.BuildAsync(with is null ? options : with(options), TimeProvider.System, TestContext.Current.CancellationToken);
        map?.Invoke(clinic.app);
        await clinic.app.StartAsync(TestContext.Current.CancellationToken);
        return clinic;
    }

    /// <summary>A client that follows no redirect and takes any certificate.</summary>
    public HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false, ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator }) { BaseAddress = Address };

    /// <summary>Sends a request with headers as pairs of name and value.</summary>
    public async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, HttpContent? content = null, params (string Name, string Value)[] headers)
    {
        using var client = Client();
        using var request = new HttpRequestMessage(method, path) { Content = content };
        foreach (var (name, value) in headers) request.Headers.TryAddWithoutValidation(name, value);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>The members of a problem document; fails where the answer is none.</summary>
    public static async Task<JsonElement> ProblemOf(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        using var document = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        var problem = document.RootElement.Clone();
        Assert.Equal((int)answer.StatusCode, problem.GetProperty("status").GetInt32());
        Assert.NotEmpty(problem.GetProperty("title").GetString()!);
        Assert.Matches("^[0-9a-f]{32}$|^0H", problem.GetProperty("traceId").GetString()!);
        return problem;
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
