using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>The log is kept by others than the clinic's people.</summary>
public sealed class LogTests
{
    private const string Person = "Crakeby";

    [Fact]
    public async Task Nothing_about_a_person_is_in_the_log_of_a_run_however_it_comes_in()
    {
        await using var clinic = await HostedClinic.StartAsync(
            options => options with { LogLevel = LogLevel.Trace },
            app =>
            {
                app.MapGet("/api/fault/{name}", string (string name) => throw new InvalidOperationException($"{name} was here.")).AllowAnonymous();
                app.MapPost("/api/own", (Own own) => own.Count).AllowAnonymous();
            });
        using var heard = new HeardLines();
        clinic.App.Services.GetRequiredService<ILoggerFactory>().AddProvider(heard);
        (string, string)[] headers = [("Cookie", $"who={Person}"), ("Authorization", $"Bearer {Person}"), ("User-Agent", Person), ("Referer", $"http://127.0.0.1/?q={Person}"), ("Origin", $"http://{Person}")];
        foreach (string path in new[] { $"/?q={Person}", $"/{Person}", $"/api/{Person}?mail={Person}@crake.example", $"/api/fault/{Person}", $"/api/samples/?search={Person}", $"/{Person}.css" })
        {
            using var answer = await clinic.SendAsync(HttpMethod.Get, path, null, headers);
        }

        using var taken = await clinic.SendAsync(HttpMethod.Post, "/api/own", JsonContent.Create(new Own(Person, 1)));
        using var refused = await clinic.SendAsync(HttpMethod.Post, "/api/own", new StringContent($"{{\"name\":\"{Person}\",\"count\":\"{Person}\"}}", Encoding.UTF8, "application/json"));
        using var foreign = await clinic.SendAsync(new HttpMethod(Person.ToUpperInvariant()), "/", null, ("Host", $"{Person}.example"));
        Assert.Contains(heard.Lines, line => line.Contains("/api/fault/{name}", StringComparison.Ordinal) && line.Contains("500", StringComparison.Ordinal)); // it was listened to
        Assert.DoesNotContain(heard.Lines, line => line.Contains(Person, StringComparison.OrdinalIgnoreCase));
    }

    private sealed record Own(string Name, int Count);

    private sealed class HeardLines : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public bool IsEnabled(LogLevel logLevel) => true;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Lines.Enqueue($"{formatter(state, exception)} {exception}");

        public void Dispose()
        {
        }
    }
}
