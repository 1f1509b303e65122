using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Abaxial.App.Tests.Clinics.Samples;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>The form for photographs on a sample's page, as a browser sends it.</summary>
public sealed partial class PhotographFormTests(RunningClinic clinic) : IClassFixture<RunningClinic>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Several_are_stored_written_down_and_shown_and_the_side_is_marked()
    {
        using var client = clinic.Client();
        string page = await TakeInAsync();
        using var answer = await AddAsync(client, page, Api.NewKey(), ("leaf.jpg", Pictures.Jpeg(number: 41)), ("below.jpg", Pictures.Jpeg(number: 42)));
        Assert.Equal((HttpStatusCode.Redirect, $"{page}#photographs"), (answer.StatusCode, answer.Headers.Location?.OriginalString));
        string html = await GetAsync(client, page);
        var shown = Thumbs().Matches(html).Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(2, shown.Count);
        foreach (string sha256 in shown) Assert.NotEmpty(await client.GetByteArrayAsync(new Uri($"/api/photographs/{sha256}/thumb", UriKind.Relative), Cancel));

        using var marking = new FormUrlEncodedContent([new("__RequestVerificationToken", TokenOf(html)), new("key", Api.NewKey()), new("do", "photograph-marked"), new("sha256", shown[1]), new("side", "lower")]);
        using var marked = await client.PostAsync(new Uri(page, UriKind.Relative), marking, Cancel);
        Assert.Equal(HttpStatusCode.Redirect, marked.StatusCode);
        html = await GetAsync(client, page);
        Assert.Contains($"/{shown[1]}/thumb\" alt=\"Photograph 2, lower side of the leaf\"", html, StringComparison.Ordinal);
        Assert.Empty((await LedgerCheck.RunAsync(clinic.Ledger, null, Cancel)).Faults);
    }

    [Fact]
    public async Task What_is_refused_is_named_with_why_and_the_others_are_taken()
    {
        using var client = clinic.Client();
        string page = await TakeInAsync();
        using var answer = await AddAsync(client, page, Api.NewKey(), ("leaf.jpg", Pictures.Jpeg(number: 43)), ("<b>.svg", "<svg xmlns='http://www.w3.org/2000/svg'/>"u8.ToArray()), ("empty.jpg", []));
        string html = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("2 photographs were not added, 1 of 3 were", html, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;.svg", html, StringComparison.Ordinal);
        Assert.Contains("empty.jpg", html, StringComparison.Ordinal);
        Assert.Contains("JPEG, PNG, WebP, HEIC", html, StringComparison.Ordinal);
        Assert.Single(Thumbs().Matches(html));
        Assert.Single(Thumbs().Matches(await GetAsync(client, page)));
    }

    [Fact]
    public async Task Pressing_twice_writes_once()
    {
        using var client = clinic.Client();
        string page = await TakeInAsync(), key = Api.NewKey();
        var sample = EntryId.Parse(page["/samples/".Length..]);
        (await AddAsync(client, page, key, ("leaf.jpg", Pictures.Jpeg(number: 44)))).Dispose();
        int entries = (await clinic.Ledger.EntriesOfAsync(sample, Cancel)).Length;
        using var again = await AddAsync(client, page, key, ("leaf.jpg", Pictures.Jpeg(number: 44)));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(entries, (await clinic.Ledger.EntriesOfAsync(sample, Cancel)).Length);
    }

    [Fact]
    public async Task Without_the_token_of_the_form_nothing_is_stored()
    {
        using var client = clinic.Client();
        string page = await TakeInAsync();
        await GetAsync(client, page);
        byte[] bytes = Pictures.Jpeg(number: 45);
        using var form = FormOf("", Api.NewKey(), ("leaf.jpg", bytes));
        using var answer = await client.PostAsync(new Uri($"{page}/photographs", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        string sha256 = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        Assert.DoesNotContain(Sending.Files(clinic.Ledger, "photographs"), file => file.EndsWith(sha256, StringComparison.Ordinal));
    }

    [Fact]
    public async Task No_photograph_or_more_than_a_form_may_bring_is_refused()
    {
        using var client = clinic.Client();
        string page = await TakeInAsync(), token = TokenOf(await GetAsync(client, page));
        using var none = await client.PostAsync(new Uri($"{page}/photographs", UriKind.Relative), FormOf(token, Api.NewKey()), Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, none.StatusCode);
        Assert.Contains("1 to 24 files", await none.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"{page}/photographs", UriKind.Relative)) { Content = new ByteArrayContent(new byte[1]) };
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=leaf");
        request.Content.Headers.ContentLength = PhotographFolder.MostBytes * 2;
        request.Headers.ExpectContinue = true; // the length alone is sent until the server asks for more
        using var answer = await client.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("cross-site", HttpStatusCode.Forbidden)]
    [InlineData("same-origin", HttpStatusCode.Created)]
    public async Task A_form_with_a_file_is_taken_by_the_API_from_the_site_itself_alone(string site, HttpStatusCode expected)
    {
        using var client = clinic.Client();
        using var form = new MultipartFormDataContent { { new ByteArrayContent(Pictures.Jpeg(number: 46)), "photograph", "leaf.jpg" } };
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/api/photographs", UriKind.Relative)) { Content = form };
        request.Headers.Add("Sec-Fetch-Site", site);
        using var answer = await client.SendAsync(request, Cancel);
        Assert.Equal(expected, answer.StatusCode);
    }

    private async Task<string> TakeInAsync() => $"/samples/{await TestStore.TakeInAsync(clinic.Ledger)}";

    private static async Task<HttpResponseMessage> AddAsync(HttpClient client, string page, string key, params (string Name, byte[] Bytes)[] files)
    {
        using var form = FormOf(TokenOf(await GetAsync(client, page)), key, files);
        return await client.PostAsync(new Uri($"{page}/photographs", UriKind.Relative), form, Cancel);
    }

    private static MultipartFormDataContent FormOf(string token, string key, params (string Name, byte[] Bytes)[] files)
    {
        var form = new MultipartFormDataContent { { new StringContent(token), "__RequestVerificationToken" }, { new StringContent(key), "key" } };
        foreach (var (name, bytes) in files) form.Add(new ByteArrayContent(bytes), "photographs", name);
        return form;
    }

    private static Task<string> GetAsync(HttpClient client, string path) => client.GetStringAsync(new Uri(path, UriKind.Relative), Cancel);

    private static string TokenOf(string html) => WebUtility.HtmlDecode(Token().Match(html).Groups[1].Value);

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("<img src=\"/api/photographs/([0-9a-f]{64})/thumb\"")]
    private static partial Regex Thumbs();
}
