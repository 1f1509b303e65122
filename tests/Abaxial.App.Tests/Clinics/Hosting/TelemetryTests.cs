using System.Collections.Concurrent;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class TelemetryTests
{
    [Fact]
    public async Task Traces_and_figures_go_where_they_were_told_to_and_hold_nothing_about_people()
    {
        var cancel = TestContext.Current.CancellationToken;
        var heard = new ConcurrentDictionary<string, string>(StringComparer.Ordinal);
        await using var collector = Collector(heard);
        await collector.StartAsync(cancel);
        var endpoint = new Uri(collector.Urls.First());
        await using (var clinic = await HostedClinic.StartAsync(options => options with { TelemetryEndpoint = endpoint }))
        {
            var sample = await TestStore.TakeInAsync(clinic.Ledger);
            foreach (string path in new[] { $"/api/samples/{sample}/cases/1/answer", "/api/samples/?who=Crakeby", "/Crakeby", "/api/Crakeby" })
            {
                using var answer = await clinic.SendAsync(HttpMethod.Get, path, null, ("User-Agent", "Crakeby"));
            }
        } // what was gathered is sent at the end

        Assert.Contains("abaxial.entries.appended", heard["/v1/metrics"], StringComparison.Ordinal);
        Assert.Contains("abaxial.answers.weighed", heard["/v1/metrics"], StringComparison.Ordinal);
        Assert.Contains("http.server.request.duration", heard["/v1/metrics"], StringComparison.Ordinal);
        Assert.Contains("/api/samples", heard["/v1/traces"], StringComparison.Ordinal);
        Assert.All(heard.Values, sent => Assert.DoesNotContain("Crakeby", sent, StringComparison.OrdinalIgnoreCase));
    }

    private static WebApplication Collector(ConcurrentDictionary<string, string> heard)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var app = builder.Build();
        app.MapPost("/{**path}", async (HttpRequest request) =>
        {
            using var body = new MemoryStream();
            await request.Body.CopyToAsync(body);
            heard.AddOrUpdate(request.Path, _ => Encoding.Latin1.GetString(body.ToArray()), (_, before) => before + Encoding.Latin1.GetString(body.ToArray()));
        });
        return app;
    }
}
