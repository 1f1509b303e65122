using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Abaxial.Web.Hosting;
using Abaxial.Web.People;
using Json.Schema;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>The description of the API at /api/openapi.json, held against the endpoints that are there.</summary>
public sealed partial class ApiDescriptionTests : IAsyncLifetime
{
    private HostedClinic? started;
    private JsonObject? read;

    private JsonObject Document => read!;

    public async ValueTask InitializeAsync()
    {
        started = await HostedClinic.StartAsync();
        using var answer = await started.SendAsync(HttpMethod.Get, "/api/openapi.json");
        read = JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!.AsObject();
    }

    public ValueTask DisposeAsync() => started!.DisposeAsync();

    [Fact]
    public void It_says_what_it_is_and_how_one_shows_who_one_is()
    {
        Assert.StartsWith("3.1.", (string?)Document["openapi"], StringComparison.Ordinal);
        Assert.NotEmpty((string?)Document["info"]?["description"] ?? "");
        Assert.Equal(["device", "session"], Document["components"]!["securitySchemes"]!.AsObject().Select(scheme => scheme.Key).Order(StringComparer.Ordinal));
        Assert.Equal("/", (string?)Document["servers"]![0]!["url"]);
    }

    [Theory]
    [InlineData("http")]
    [InlineData("https")]
    public async Task The_cookie_is_called_as_the_one_that_signing_in_gives(string scheme)
    {
        using var files = new TestCertificate();
        var certificate = scheme == "https" ? ServerCertificate.Load(files.Pfx, null, TestCertificate.Password) : null;
        await using var clinic = await HostedClinic.StartAsync(options => options with { Address = new Uri($"{scheme}://127.0.0.1:0"), Certificate = certificate });
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/api/openapi.json");
        var described = JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        var signedIn = new DefaultHttpContext { Request = { Scheme = scheme } };
        SessionCookie.Write(signedIn, "secret", TimeSpan.FromHours(1));
        Assert.Equal(signedIn.Response.Headers.SetCookie.ToString().Split('=')[0], (string?)described!["components"]!["securitySchemes"]!["session"]!["name"]);
    }

    [Fact]
    public void Every_endpoint_of_the_API_is_in_it()
    {
        var described = Document["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject().Select(operation => $"{operation.Key.ToUpperInvariant()} {Bare(path.Key)}")).ToHashSet(StringComparer.Ordinal);
        var there = started!.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText?.TrimStart('/').StartsWith("api/", StringComparison.Ordinal) == true && Bare(endpoint.RoutePattern.RawText) != "/api/openapi.json")
            .SelectMany(endpoint => (endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? []).Select(method => $"{method} {Bare(endpoint.RoutePattern.RawText!)}"))
            .ToList();
        Assert.NotEmpty(there);
        Assert.All(there, endpoint => Assert.Contains(endpoint, described));
    }

    [Fact]
    public void Every_body_has_an_example_that_keeps_its_schema()
    {
        foreach (var (what, media) in Bodies())
        {
            var example = media["example"];
            Assert.True(example is not null, $"{what} has no example.");
            var result = SchemaOf(media["schema"]).Evaluate(JsonSerializer.SerializeToElement(example), new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid, $"The example of {what} does not keep the schema: {string.Join("; ", (result.Details ?? []).SelectMany(detail => (detail.Errors ?? new Dictionary<string, string>()).Select(error => $"{detail.InstanceLocation} {error.Value}")))}");
        }
    }

    [Fact]
    public void Every_operation_says_what_it_answers() =>
        Assert.All(Operations(), operation => Assert.True(
            operation.Operation["responses"]!.AsObject().Any(response => response.Key is "204" or "304" || (response.Key[0] is '2' or '3' && response.Value?["content"] is JsonObject { Count: > 0 })),
            $"{operation.Name} does not say what it answers."));

    [Fact]
    public void Every_operation_tells_how_its_refusals_look() =>
        Assert.All(Operations(), operation => Assert.NotNull(operation.Operation["responses"]?["default"]?["content"]?["application/problem+json"]?["schema"]));

    private static string Bare(string route) => $"/{RouteConstraint().Replace(route, "{$1}").Trim('/')}";

    [GeneratedRegex(@"\{\*{0,2}(\w+)(:[^}]*|\?)?\}")]
    private static partial Regex RouteConstraint();

    private IEnumerable<(string Name, JsonObject Operation)> Operations() =>
        Document["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject().Select(operation => ($"{operation.Key.ToUpperInvariant()} {path.Key}", operation.Value!.AsObject())));

    /// <summary>What is sent and answered as JSON.</summary>
    private IEnumerable<(string What, JsonObject Media)> Bodies() =>
        from operation in Operations()
        let sent = new[] { (What: "is sent", Content: operation.Operation["requestBody"]?["content"]) }
        let answered = operation.Operation["responses"]!.AsObject().Select(response => (What: $"is answered ({response.Key})", Content: response.Value?["content"]))
        from body in sent.Concat(answered)
        where body.Content is not null
        from media in body.Content.AsObject()
        where media.Key.EndsWith("json", StringComparison.Ordinal)
        select ($"what {body.What} by {operation.Name}", media.Value!.AsObject());

    /// <summary>A schema with those that it refers to beside it.</summary>
    private JsonSchema SchemaOf(JsonNode? schema)
    {
        var whole = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["allOf"] = new JsonArray(schema?.DeepClone() ?? new JsonObject()), ["$defs"] = Document["components"]?["schemas"]?.DeepClone() };
        return JsonSchema.FromText(whole.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal));
    }
}
