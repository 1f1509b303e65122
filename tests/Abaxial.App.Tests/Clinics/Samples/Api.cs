using System.Net;
using System.Text;
using System.Text.Json;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>Talks to a clinic as a program does.</summary>
internal sealed class Api(HttpClient client) : IDisposable
{
    public HttpClient Client => client;

    public async Task<JsonElement> GetAsync(string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return await ReadAsync(answer, HttpStatusCode.OK);
    }

    public async Task<HttpStatusCode> StatusOfAsync(string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    public async Task<JsonElement> PostAsync(string path, string json, HttpStatusCode expected = HttpStatusCode.Created, string? key = null)
    {
        using var answer = await SendAsync(path, json, key);
        return await ReadAsync(answer, expected);
    }

    public async Task<HttpResponseMessage> SendAsync(string path, string json, string? key = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(path, UriKind.Relative)) { Content = new StringContent(json, Encoding.UTF8, "application/json") };
        if (key is not null) request.Headers.Add("Idempotency-Key", key);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Takes a sample in; its id.</summary>
    public async Task<string> TakeInAsync(string json = """{"host":"tomato"}""") => (await PostAsync("/api/samples", json)).GetProperty("sample").GetString()!;

    public async Task<string> AppendAsync(string sample, string kind, string payload) =>
        (await PostAsync($"/api/samples/{sample}/entries", $$"""{"kind":"{{kind}}","version":1,"payload":{{payload}}}""")).GetProperty("entry").GetString()!;

    public Task<string> LookAsync(string sample, string character, string state, string how = "naked-eye", int number = 1) =>
        AppendAsync(sample, "look", $$$"""{"case":{{{number}}},"observation":{"character":"{{{character}}}","state":"{{{state}}}","how":"{{{how}}}"}}""");

    /// <summary>A fresh id for an entry.</summary>
    public static string NewKey() => EntryId.From(TimeProvider.System.GetUtcNow(), Guid.NewGuid().ToByteArray().AsSpan(0, 10)).ToString();

    /// <summary>The places that a problem document names.</summary>
    public static string[] Places(JsonElement problem) => [.. problem.GetProperty("problems").EnumerateArray().Select(one => one.GetProperty("at").GetString()!)];

    public void Dispose() => client.Dispose();

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer, HttpStatusCode expected)
    {
        string text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(answer.StatusCode == expected, $"{answer.RequestMessage!.RequestUri}: {answer.StatusCode}, {text}");
        if (!answer.IsSuccessStatusCode) Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return JsonSerializer.Deserialize<JsonElement>(text);
    }
}
