using System.Net;
using System.Text.RegularExpressions;
using Abaxial.Data;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>A day's work of a diagnostician by the forms of the pages, without a line of script.</summary>
public sealed partial class DayOnPagesTests
{
    [Fact]
    public async Task A_sample_is_taken_in_looked_at_corrected_diagnosed_handed_over_and_closed()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        string page = await PostAsync(client, "/samples/new", ("host", "tomato"), ("system", "high-tunnel"), ("stage", "fruiting"), ("says", "White <growth> in two rows."), ("area", "Kestle Bight"), ("latitude", "44.06"), ("longitude", "-31.12"));
        string html = await GetAsync(client, page);
        Assert.Contains("White &lt;growth&gt; in two rows.", html, StringComparison.Ordinal);
        Assert.Contains("Kestle Bight", html, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", html, StringComparison.Ordinal);

        // The look that the page proposes first, as it is pressed.
        var proposed = Proposed().Match(html);
        await PostAsync(client, page, ("do", "look"), ("case", "1"), ("character", proposed.Groups[1].Value), ("how", proposed.Groups[2].Value), ("state", "unsure"));
        await PostAsync(client, $"{page}/look?case=1&character=concentric-rings", ("case", "1"), ("character", "concentric-rings"), ("how", "hand-lens"), ("state", "clear"));
        html = await GetAsync(client, page);
        string look = Looks().Matches(html)[1].Groups[1].Value;
        await PostAsync(client, $"{page}/entries/{look}/correct", ("do", "correct"), ("why", "Another leaf."), ("case", "1"), ("character", "concentric-rings"), ("how", "hand-lens"), ("state", "absent"));
        Assert.Contains("corrected", await GetAsync(client, page), StringComparison.Ordinal);

        await PostAsync(client, page, ("do", "message"), ("direction", "in"), ("text", "It rained all night."));
        await PostAsync(client, $"{page}/diagnosis?case=1", ("case", "1"), ("primary", "gray-mold"), ("disagreement", "Spores seen."), ("provenBy", "spores under the microscope"));
        await PostAsync(client, page, ("do", "snoozed"), ("until", "2099-01-01T09:00"));
        await PostAsync(client, page, ("do", "handed-over"), ("to", "d-02"));
        await PostAsync(client, page, ("do", "closed"), ("why", "Answered."));
        html = await GetAsync(client, page);
        Assert.Contains("It rained all night.", html, StringComparison.Ordinal);
        Assert.Contains("Gray mold; proven by spores under the microscope", html, StringComparison.Ordinal);
        Assert.Contains("closed: Answered.", html, StringComparison.Ordinal);
        Assert.Contains("with d-02", html, StringComparison.Ordinal);
        await PostAsync(client, page, ("do", "reopened"), ("why", "New leaves came."));
        Assert.Contains(page, await GetAsync(client, "/?q=rained"), StringComparison.Ordinal);
        Assert.Empty((await LedgerCheck.RunAsync(clinic.Ledger, null, TestContext.Current.CancellationToken)).Faults);
    }

    [Fact]
    public async Task Late_blight_is_the_first_row_of_every_answer_however_unlikely()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        string sample = await api.TakeInAsync("""{"host":"tomato","cases":[{"looks":[{"character":"pycnidia","state":"present","how":"hand-lens"}]},{"looks":[{"character":"pycnidia","state":"absent","how":"hand-lens"}]}]}""");
        string html = await GetAsync(client, $"/samples/{sample}");
        var rows = Rows().Matches(html).Select(row => (row.Groups[1].Value, row.Groups[2].Value)).ToList();
        Assert.Equal(2, rows.Count(row => row == ("chance first", "Late blight")));
        Assert.Equal(("chance first", "Late blight"), rows[0]);
    }

    [Fact]
    public async Task What_was_typed_is_still_there_where_something_was_wrong()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        using var answer = await SendAsync(client, "/samples/new", ("host", "potato"), ("says", "Three rows are black."), ("latitude", "440"), ("longitude", "-31"));
        string html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Three rows are black.", html, StringComparison.Ordinal);
        Assert.Contains("value=\"440\"", html, StringComparison.Ordinal);
        Assert.Contains("place/latitude", html, StringComparison.Ordinal);
        Assert.Empty(await TestStore.TextsAsync(clinic.Ledger));
    }

    [Fact]
    public async Task Pressing_twice_writes_once()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        string key = Api.NewKey();
        string first = await PostAsync(client, "/samples/new", ("key", key), ("host", "tomato"));
        Assert.Equal(first, await PostAsync(client, "/samples/new", ("key", key), ("host", "tomato")));
        Assert.Equal(2, (await TestStore.TextsAsync(clinic.Ledger)).Count);
    }

    private static async Task<string> GetAsync(HttpClient client, string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Sends a form of a page as a browser does; the address that it leads to.</summary>
    private static async Task<string> PostAsync(HttpClient client, string path, params (string Name, string Value)[] fields)
    {
        using var answer = await SendAsync(client, path, fields);
        Assert.True(answer.StatusCode == HttpStatusCode.Redirect, $"{path}: {answer.StatusCode} {Refusal().Match(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Value}");
        return answer.Headers.Location!.OriginalString;
    }

    private static async Task<HttpResponseMessage> SendAsync(HttpClient client, string path, params (string Name, string Value)[] fields)
    {
        string token = WebUtility.HtmlDecode(Token().Match(await GetAsync(client, path)).Groups[1].Value);
        var form = fields.Append(("__RequestVerificationToken", token)).Select(field => KeyValuePair.Create(field.Item1, field.Item2));
        return await client.PostAsync(new Uri(path, UriKind.Relative), new FormUrlEncodedContent(form), TestContext.Current.CancellationToken);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("name=\"character\" value=\"([^\"]+)\" ?/?>\\s*<input type=\"hidden\" name=\"how\" value=\"([^\"]+)\"")]
    private static partial Regex Proposed();

    [GeneratedRegex("/entries/([0-9A-Z]{26})/correct")]
    private static partial Regex Looks();

    [GeneratedRegex("<div class=\"(chance[^\"]*)\">\\s*<span class=\"name\">\\s*<a [^>]+>([^<]+)<")]
    private static partial Regex Rows();

    [GeneratedRegex("<section class=\"sheet problems\".*?</section>", RegexOptions.Singleline)]
    private static partial Regex Refusal();
}
