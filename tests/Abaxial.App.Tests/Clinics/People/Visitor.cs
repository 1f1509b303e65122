using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Abaxial.App.Tests.Clinics.People;

/// <summary>A browser: keeps its cookies, says that requests come from the site itself, follows no redirect.</summary>
internal sealed partial class Visitor : IDisposable
{
    private readonly HttpClient client;

    public Visitor(Uri address)
    {
        Address = address;
        client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = Cookies }) { BaseAddress = address };
        client.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        client.DefaultRequestHeaders.Add("User-Agent", "Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0");
    }

    public Uri Address { get; }

    public CookieContainer Cookies { get; } = new();

    /// <summary>The secret of the session; null where there is none.</summary>
    public string? Session => Cookies.GetCookies(Address)["abaxial"]?.Value;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public Task<HttpResponseMessage> GetAsync(string path) => client.GetAsync(path, Cancel);

    /// <summary>Posts JSON: an object with texts.</summary>
    public Task<HttpResponseMessage> PostAsync(string path, params (string Name, string Value)[] members) =>
        client.PostAsJsonAsync(path, members.ToDictionary(member => member.Name, member => member.Value), Cancel);

    /// <summary>Posts JSON that has to be taken, and gives what was answered.</summary>
    public async Task<JsonElement> DoneAsync(string path, params (string Name, string Value)[] members)
    {
        using var answer = await PostAsync(path, members);
        string text = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.True(answer.IsSuccessStatusCode, $"{path}: {answer.StatusCode} {text}");
        return text.Length == 0 ? default : JsonSerializer.Deserialize<JsonElement>(text);
    }

    /// <summary>Opens a page and sends a form with the token that the page carries.</summary>
    public async Task<HttpResponseMessage> SubmitAsync(string page, string path, params (string Name, string Value)[] fields)
    {
        string html = await client.GetStringAsync(page, Cancel);
        string token = Token().Match(html).Groups[1].Value;
        Assert.NotEmpty(token);
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(field => new KeyValuePair<string, string>(field.Name, field.Value))]);
        return await client.PostAsync(path, form, Cancel);
    }

    public Task<HttpResponseMessage> SendAsync(HttpRequestMessage request) => client.SendAsync(request, Cancel);

    public async Task<HttpStatusCode> StatusAsync(string path)
    {
        using var answer = await GetAsync(path);
        return answer.StatusCode;
    }

    public void Dispose() => client.Dispose();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
