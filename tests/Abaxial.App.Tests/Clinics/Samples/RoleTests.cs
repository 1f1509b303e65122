using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Abaxial.App.Tests.Clinics.People;
using Abaxial.Samples;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>Every role against every endpoint. An endpoint that is not in the table fails the test, and so does a line without an endpoint.</summary>
public sealed partial class RoleTests
{
    /// <summary>S submitter, C scout, D diagnostician, L lead, A administrator, N nobody who is signed in.</summary>
    private const string Content = "SCDL", Bench = "CDL", Clinic = "DL", SignedIn = "SCDLA", Anybody = "SCDLAN", Nobody = "";

    // What signs in or proves answers 401, a computer that is no bench 403, to a request that says nothing.

    /// <summary>Let in, whatever becomes of a request that says nothing: anything but a refusal for who asks, or a fault.</summary>
    private const int LetIn = 0;

    private const string Field = "do=message&direction=in&text=It+rained.";

    /// <summary>One line an endpoint: the method, the route, who may, what a request that may is answered, what it sends, what one that may not is answered.</summary>
    private static readonly Line[] Table =
    [
        new("GET", "/api/samples", Content, 200),
        new("POST", "/api/samples", Content, 201, """{"host":"tomato"}"""),
        new("GET", "/api/samples/{sample}", Content, 200),
        new("GET", "/api/samples/{sample}/entries", Content, 200),
        new("POST", "/api/samples/{sample}/entries", Content, 201, """{"kind":"message","version":1,"payload":{"direction":"in","text":"It rained."}}"""),
        new("POST", "/api/samples/{sample}/entries/{entry}/corrections", Content, 201, """{"why":"A slip."}"""),
        new("GET", "/api/samples/{sample}/cases/{number}/answer", Content, 200),
        new("GET", "/api/numbers/{number}", Content, 200),
        new("POST", "/api/weigh", Content, 200, """{"format":"abaxial-case/1","host":"tomato","looks":[]}"""),
        new("POST", "/api/merge", Bench, 200, """{"entries":[]}"""),
        new("GET", "/api/changes", Content, 200),
        new("GET", "/api/causes", SignedIn, 200),
        new("GET", "/api/causes/{id}", SignedIn, 200),
        new("GET", "/api/characters", SignedIn, 200),
        new("POST", "/api/photographs", Content, LetIn, "{}"), // answered 415: it is no photograph
        new("GET", "/api/photographs/{sha256}/{size}", Content, 404), // no hash: who sees which has a test of its own
        new("GET", "/api/openapi.json", Anybody, 200),
        new("GET", "/health/live", Anybody, 200),
        new("GET", "/health/ready", Anybody, 200),
        new("GET", "/_framework/opaque-redirect", SignedIn, 400),
        new("GET", "/", Content, 200) { Administrator = 303 }, // to people
        new("POST", "/", Nobody, 0, "", 400),
        new("GET", "/samples/new", Content, 200),
        new("POST", "/samples/new", Content, 302, "host=tomato"),
        new("GET", "/samples/{sample}", Content, 200, null, 404),
        new("POST", "/samples/{sample}", Content, 302, Field),
        new("GET", "/samples/{sample}/photographs", Content, 200, null, 404),
        new("POST", "/samples/{sample}/photographs", Content, 400, ""), // no photograph in it
        new("GET", "/samples/{sample}/look", Content, 200, null, 404),
        new("POST", "/samples/{sample}/look", Content, 302, "character=concentric-rings&how=hand-lens&state=absent"),
        new("GET", "/samples/{sample}/diagnosis", Clinic, 200, null, 404),
        new("POST", "/samples/{sample}/diagnosis", Clinic, 302, "case=1&primary=late-blight&disagreement=Seen+before.", 404),
        new("GET", "/samples/{sample}/entries/{entry}/correct", Content, 200, null, 404),
        new("POST", "/samples/{sample}/entries/{entry}/correct", Content, 302, "do=strike&why=A+slip."),
        new("GET", "/api/people/me", SignedIn, 200),
        new("POST", "/api/people/me/password", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/app", SignedIn, LetIn, "{}"),
        new("GET", "/api/people/me/app.svg", SignedIn, LetIn),
        new("POST", "/api/people/me/app/code", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/app/remove", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/pin", Bench, LetIn, "{}"),
        new("POST", "/api/people/me/pin/remove", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/passkeys/challenge", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/passkeys", SignedIn, LetIn, "{}"),
        new("POST", "/api/people/me/passkeys/{id}/remove", SignedIn, LetIn, "{}"),
        new("GET", "/api/people", "A", 200),
        new("POST", "/api/people", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}/invitation", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}/close", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}/open", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}/sessions/end", "A", LetIn, "{}"),
        new("POST", "/api/people/{id}/erase", "A", LetIn, "{}"),
        new("POST", "/api/invitations", Anybody, LetIn, "{}"),
        new("POST", "/api/set-up", Anybody, LetIn, "{}"),
        new("GET", "/api/audit", "LA", 200),
        new("GET", "/api/benches", "DLA", 200),
        new("POST", "/api/benches", "DLA", LetIn, "{}"),
        new("POST", "/api/benches/{id}/end", "DLA", LetIn, "{}"),
        new("POST", "/api/benches/sessions", Anybody, 403, "{}"),
        new("GET", "/api/devices", SignedIn, 200),
        new("POST", "/api/devices/codes", Bench, LetIn, "{}"),
        new("POST", "/api/devices", Anybody, LetIn, "{}"),
        new("POST", "/api/devices/{id}/end", SignedIn, LetIn, "{}"),
        new("POST", "/api/sessions/passkey/challenge", Anybody, LetIn, "{}"),
        new("POST", "/api/sessions/passkey", Anybody, 401, "{}"),
        new("POST", "/api/sessions", Anybody, 401, "{}"),
        new("GET", "/api/sessions", SignedIn, 200),
        new("POST", "/api/sessions/end-others", SignedIn, LetIn, "{}"),
        new("POST", "/api/sessions/{id}/end", SignedIn, LetIn, "{}"),
        new("POST", "/api/sessions/proof", SignedIn, 401, "{}"),
        .. Page("/account", SignedIn),
        .. Page("/audit", "LA"),
        .. Page("/causes", SignedIn),
        .. Page("/causes/{id}", SignedIn),
        .. Page("/causes/compare", SignedIn),
        .. Page("/causes/knowledge", SignedIn),
        .. Page("/devices", SignedIn),
        .. Page("/invitation", Anybody),
        .. Page("/once/{key}", SignedIn),
        .. Page("/people", "A"),
        .. Page("/prove", SignedIn),
        .. Page("/set-up", Anybody),
        .. Page("/sign-in", Anybody),
        new("POST", "/api/sessions/end", SignedIn, LetIn, "{}"), // the last, as it ends the session
    ];

    [Fact]
    public async Task Every_endpoint_is_in_the_table_and_every_line_has_its_endpoint()
    {
        await using var clinic = await Roles.StartAsync();
        var there = clinic.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint => (endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["ANY"]).Select(method => $"{method} {Bare(endpoint.RoutePattern.RawText ?? "")}"))
            .Where(name => !name.StartsWith("HEAD ", StringComparison.Ordinal)).Distinct().ToList();
        var told = Table.Select(line => $"{line.Method} {line.Route}").ToList();
        Assert.True(!there.Except(told).Any(), string.Join(Environment.NewLine, there.Except(told)));
        Assert.True(!told.Except(there).Any(), string.Join(Environment.NewLine, told.Except(there)));
        Assert.Equal(told.Distinct(), told);
    }

    [Fact]
    public async Task Each_role_may_what_the_table_says_and_nothing_else()
    {
        await using var clinic = await Roles.StartAsync();
        var misses = new List<string>();
        foreach (var visitor in Roles.All.Append(null))
        {
            using var client = visitor is null ? Roles.Stranger(clinic) : await Roles.ClientAsync(clinic, visitor);
            string token = visitor is null || visitor == Roles.Administrator ? "" : await TokenAsync(client);
            var (sample, number) = await SampleAsync(clinic, "g-11", "Kestle Bight");
            foreach (var line in Table)
            {
                int answered = await SendAsync(client, line, await PathAsync(clinic, line, sample, number, visitor), token);
                bool isLetIn = line.Who.Contains(Letter(visitor), StringComparison.Ordinal);
                int expected = isLetIn ? line.Done : visitor is null ? StrangerIs(line) : visitor == Roles.Administrator ? line.Administrator : line.Refused;
                bool isRight = isLetIn && line.Done == LetIn ? answered is not (401 or 403) and < 500 : answered == expected;
                if (!isRight) misses.Add($"{visitor?.Role.ToString() ?? "Nobody"}: {line.Method} {line.Route} gives {answered} and not {expected}");
            }
        }

        Assert.True(misses.Count == 0, string.Join(Environment.NewLine, misses));
    }

    [Fact]
    public async Task A_sample_of_somebody_else_is_not_there()
    {
        await using var clinic = await Roles.StartAsync();
        var misses = new List<string>();
        foreach (var visitor in new[] { Roles.Submitter, Roles.Scout })
        {
            using var client = await Roles.ClientAsync(clinic, visitor);
            string token = await TokenAsync(client);
            var (sample, number) = await SampleAsync(clinic, "g-77", "Upper Thrave");
            foreach (var line in Table.Where(line => line.Route.Contains("{sample}", StringComparison.Ordinal) || line.Route == "/api/numbers/{number}"))
            {
                int answered = await SendAsync(client, line, await PathAsync(clinic, line, sample, number, visitor), token);
                if (answered != 404) misses.Add($"{visitor.Role}: {line.Method} {line.Route} gives {answered}");
            }

            string list = await client.GetStringAsync(new Uri("/api/samples", UriKind.Relative), TestContext.Current.CancellationToken);
            if (list.Contains(sample, StringComparison.Ordinal)) misses.Add($"{visitor.Role}: it is in the list");
        }

        Assert.Empty(misses);
    }

    [Theory]
    [InlineData("g-11", "Kestle Bight", "thumb", "SCDL")]
    [InlineData("g-11", "Kestle Bight", "original", "DL")]
    [InlineData("g-77", "Upper Thrave", "work", "DL")]
    [InlineData("g-77", "Upper Thrave", "original", "DL")]
    public async Task A_photograph_is_there_for_whoever_sees_its_sample_and_the_original_for_two_roles(string submitter, string area, string size, string who)
    {
        await using var clinic = await Roles.StartAsync();
        var (sample, _) = await SampleAsync(clinic, submitter, area);
        byte[] bytes = Photographs.Pictures.Jpeg();
        string sha256 = (await clinic.Ledger.AddPhotographAsync(new MemoryStream(bytes), TestContext.Current.CancellationToken)).Sha256!;
        await TestStore.AppendAsync(clinic.Ledger, EntryId.Parse(sample), new PhotographAdded(sha256, "image/jpeg", bytes.Length));
        foreach (var visitor in Roles.All)
        {
            using var client = await Roles.ClientAsync(clinic, visitor);
            using var answer = await client.GetAsync(new Uri($"/api/photographs/{sha256}/{size}", UriKind.Relative), TestContext.Current.CancellationToken);
            int expected = visitor == Roles.Administrator ? 403 : who.Contains(Letter(visitor), StringComparison.Ordinal) ? 200 : 404;
            Assert.True((int)answer.StatusCode == expected, $"{visitor.Role}: {(int)answer.StatusCode} and not {expected}");
        }
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        await using var clinic = await Roles.StartAsync();
        using var client = await Roles.ClientAsync(clinic, Roles.Diagnostician);
        var (sample, number) = await SampleAsync(clinic, "g-11", "Kestle Bight");
        int before = (await TestStore.TextsAsync(clinic.Ledger)).Count;
        foreach (var line in Table.Where(line => line.Method == "POST" && line.Done == 302))
        {
            Assert.Equal(400, await SendAsync(client, line, (await PathAsync(clinic, line, sample, number, null))!, ""));
        }

        Assert.Equal(before, (await TestStore.TextsAsync(clinic.Ledger)).Count);
    }

    private static char Letter(Somebody? visitor) => visitor is null ? 'N' : "SCDLA"[(int)visitor.Role];

    /// <summary>A program is told that it is not signed in; a person is sent to where one signs in.</summary>
    private static int StrangerIs(Line line) => line.Route.StartsWith("/api", StringComparison.Ordinal) ? 401 : 303;

    /// <summary>A page whose forms go elsewhere.</summary>
    private static Line[] Page(string route, string who) => [new("GET", route, who, LetIn), new("POST", route, who, LetIn, "")];

    private static string Bare(string route) => "/" + route.Trim('/').ToLowerInvariant();

    private static async Task<(string Sample, string Number)> SampleAsync(PeopleClinic clinic, string sender, string area)
    {
        using var api = new Api(await Roles.ClientAsync(clinic, Roles.Diagnostician));
        string sample = await api.TakeInAsync($$$"""{"host":"tomato","submitter":"{{{sender}}}","area":{"name":"{{{area}}}","latitude":44,"longitude":-31,"uncertaintyMeters":80000}}""");
        return (sample, (await api.GetAsync($"/api/samples/{sample}")).GetProperty("number").GetString()!);
    }

    /// <summary>The address of a line; an entry in it is one of the visitor's own.</summary>
    private static async Task<string> PathAsync(PeopleClinic clinic, Line line, string sample, string number, Somebody? visitor)
    {
        string entry = sample;
        if (visitor is not null && line.Route.Contains("{entry}", StringComparison.Ordinal))
        {
            var own = await clinic.Ledger.AppendAsync(new Abaxial.Data.EntryDraft { Sample = Abaxial.Samples.EntryId.Parse(sample), Author = visitor.Id, Payload = new Abaxial.Samples.LookMade(1, """{"character":"concentric-rings","how":"hand-lens","state":"absent"}""") }, TestContext.Current.CancellationToken);
            entry = own.Entry!.Id.ToString();
        }

        string path = line.Route.Replace("{sample}", sample, StringComparison.Ordinal).Replace("{entry}", entry, StringComparison.Ordinal).Replace("{id}", "late-blight", StringComparison.Ordinal).Replace("{key}", "nothing", StringComparison.Ordinal);
        return path.Replace("{number}", path.Contains("/cases/", StringComparison.Ordinal) ? "1" : number, StringComparison.Ordinal);
    }

    private static async Task<int> SendAsync(HttpClient client, Line line, string path, string token)
    {
        using var request = new HttpRequestMessage(new HttpMethod(line.Method), new Uri(path, UriKind.Relative));
        if (line.Body is { } body) request.Content = path.StartsWith("/api", StringComparison.Ordinal) ? new StringContent(body, Encoding.UTF8, "application/json") : new StringContent($"{body}&__RequestVerificationToken={Uri.EscapeDataString(token)}", Encoding.UTF8, "application/x-www-form-urlencoded");
        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        return (int)answer.StatusCode;
    }

    private static async Task<string> TokenAsync(HttpClient client)
    {
        string page = await client.GetStringAsync(new Uri("/samples/new", UriKind.Relative), TestContext.Current.CancellationToken);
        return WebUtility.HtmlDecode(Token().Match(page).Groups[1].Value);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();

    private sealed record Line(string Method, string Route, string Who, int Done, string? Body = null, int Refused = 403)
    {
        /// <summary>What an administrator is answered where the line is not for them.</summary>
        public int Administrator { get; init; } = 403;
    }
}
