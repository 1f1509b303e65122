using System.Net;
using System.Text.Json;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>What an API must not let happen.</summary>
public sealed class SafetyTests(RunningClinic clinic) : IClassFixture<RunningClinic>, IDisposable
{
    private readonly Api api = new(clinic.Client());

    public void Dispose() => api.Dispose();

    [Fact]
    public async Task Two_people_look_at_one_sample_at_once_and_both_looks_are_there()
    {
        string sample = await api.TakeInAsync();
        string[] heads = [.. (await api.GetAsync($"/api/samples/{sample}")).GetProperty("heads").EnumerateArray().Select(head => head.GetString()!)];
        string[] characters = ["concentric-rings", "pycnidia"];
        await Task.WhenAll(characters.Select(character => api.PostAsync($"/api/samples/{sample}/entries", $$$$"""{"kind":"look","version":1,"heads":["{{{{heads[0]}}}}"],"payload":{"case":1,"observation":{"character":"{{{{character}}}}","state":"absent","how":"hand-lens"}}}""")));
        var view = await api.GetAsync($"/api/samples/{sample}");
        Assert.Equal(characters, view.GetProperty("cases")[0].GetProperty("case").GetProperty("looks").EnumerateArray().Select(look => look.GetProperty("character").GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal(2, view.GetProperty("heads").GetArrayLength());
    }

    [Fact]
    public async Task A_request_sent_again_is_answered_as_before_and_with_other_content_it_is_refused()
    {
        string key = Api.NewKey(), other = Api.NewKey();
        const string sent = """{"host":"tomato","says":"It rained.","cases":[{"looks":[{"character":"concentric-rings","state":"absent","how":"hand-lens"}]}]}""";
        var first = await api.PostAsync("/api/samples", sent, HttpStatusCode.Created, key);
        Assert.Equal(first.ToString(), (await api.PostAsync("/api/samples", sent, HttpStatusCode.OK, key)).ToString());
        await api.PostAsync("/api/samples", sent.Replace("rained", "snowed", StringComparison.Ordinal), HttpStatusCode.Conflict, key);
        await api.PostAsync("/api/samples", sent.Replace("absent", "clear", StringComparison.Ordinal), HttpStatusCode.Conflict, key);
        string entries = $"/api/samples/{first.GetProperty("sample").GetString()}/entries";
        const string message = """{"kind":"message","version":1,"payload":{"direction":"in","text":"It rained."}}""";
        await api.PostAsync(entries, message, HttpStatusCode.Created, other);
        await api.PostAsync(entries, message, HttpStatusCode.OK, other);
        await api.PostAsync(entries, message.Replace("rained", "snowed", StringComparison.Ordinal), HttpStatusCode.Conflict, other);
        Assert.Equal(["/headers/idempotency-key"], Api.Places(await api.PostAsync(entries, message, HttpStatusCode.BadRequest, "again")));
    }

    [Theory]
    [InlineData("author", "\"d-99\"")]
    [InlineData("device", "\"store-0\"")]
    [InlineData("id", "\"01ARZ3NDEKTSV4RRFFQ69G5FAV\"")]
    [InlineData("sample", "\"01ARZ3NDEKTSV4RRFFQ69G5FAV\"")]
    [InlineData("place", "7")]
    [InlineData("isAdministrator", "true")]
    public async Task What_was_not_offered_cannot_be_set(string member, string value)
    {
        string sample = await api.TakeInAsync();
        var refused = await api.PostAsync($"/api/samples/{sample}/entries", $$$"""{"kind":"closed","version":1,"payload":{"why":"Done."},"{{{member}}}":{{{value}}}}""", HttpStatusCode.BadRequest);
        Assert.Equal([$"/{member}"], Api.Places(refused));
        Assert.Equal([$"/payload/{member}"], Api.Places(await api.PostAsync($"/api/samples/{sample}/entries", $$$"""{"kind":"closed","version":1,"payload":{"why":"Done.","{{{member}}}":{{{value}}}}}""", HttpStatusCode.BadRequest)));
        if (member != "place") Assert.Equal([$"/{member}"], Api.Places(await api.PostAsync("/api/samples", $$"""{"host":"tomato","{{member}}":{{value}}}""", HttpStatusCode.BadRequest)));
    }

    [Fact]
    public async Task What_the_engine_said_is_not_taken_from_whoever_signs()
    {
        string sample = await api.TakeInAsync();
        var refused = await api.PostAsync($"/api/samples/{sample}/entries", """{"kind":"diagnosis","version":1,"payload":{"case":1,"primary":["late-blight"],"engine":{"knowledge":"mine","leader":"late-blight","standing":"confirmed"}}}""", HttpStatusCode.BadRequest);
        Assert.Equal(["/payload/engine"], Api.Places(refused));
    }

    [Theory]
    [InlineData("numbered", """{"number":"26-0142-D"}""")]
    [InlineData("person-erased", """{"person":"g-11"}""")]
    [InlineData("taken-in", """{"host":"tomato"}""")]
    [InlineData("correction", """{"replaces":"01ARZ3NDEKTSV4RRFFQ69G5FAV","of":"look","why":"x"}""")]
    [InlineData("promoted", "{}")]
    public async Task Kinds_that_are_not_appended_are_refused(string kind, string payload)
    {
        string sample = await api.TakeInAsync();
        var refused = await api.PostAsync($"/api/samples/{sample}/entries", $$"""{"kind":"{{kind}}","version":1,"payload":{{payload}}}""", HttpStatusCode.BadRequest);
        Assert.Equal(["/kind"], Api.Places(refused));
    }

    [Theory]
    [InlineData("/api/samples/..%2f..%2fledger.db")]
    [InlineData("/api/samples/%2e%2e/%2e%2e/ledger.db")]
    [InlineData("/api/causes/..%2f..%2f..%2fetc%2fpasswd")]
    [InlineData("/samples/..%5c..%5cledger.db")]
    [InlineData("/%2e%2e/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/clinic.css/..%2f..%2fAbaxial.Web.dll")]
    [InlineData("/..%2fAbaxial.Web.dll")]
    public async Task No_address_leads_out_of_what_is_offered(string path) => Assert.Equal(HttpStatusCode.NotFound, await api.StatusOfAsync(path));

    [Fact]
    public async Task What_the_knowledge_refuses_is_named_with_its_place_and_not_written()
    {
        string sample = await api.TakeInAsync();
        int before = (await TestStore.TextsAsync(clinic.Ledger)).Count;
        var refused = await api.PostAsync($"/api/samples/{sample}/entries", """{"kind":"look","version":1,"payload":{"case":1,"observation":{"character":"concentric-rings","state":"purple","how":"smell"}}}""", HttpStatusCode.BadRequest);
        Assert.Equal(["/payload/observation/how", "/payload/observation/state"], Api.Places(refused).Order(StringComparer.Ordinal));
        Assert.Equal(["/cases/1/looks/0/character"], Api.Places(await api.PostAsync("/api/samples", """{"host":"potato","cases":[{"looks":[]},{"looks":[{"character":"fruit-flesh","state":"unsure","how":"cut"}]}]}""", HttpStatusCode.BadRequest)));
        Assert.Equal(["/host"], Api.Places(await api.PostAsync("/api/samples", """{"host":"oak"}""", HttpStatusCode.BadRequest)));
        Assert.Equal(before, (await TestStore.TextsAsync(clinic.Ledger)).Count);
    }

    [Fact]
    public async Task A_device_brings_its_own_entries_and_nothing_else()
    {
        await using var store = new TestStore();
        var device = await store.OpenAsync("device");
        var sample = await TestStore.TakeInAsync(device);
        await TestStore.AppendAsync(device, sample, new LookMade(1, """{"character":"concentric-rings","how":"hand-lens","state":"absent"}"""));
        var foreign = await device.AppendAsync(new EntryDraft { Sample = sample, Author = "d-02", Payload = new HandedOver("d-01") }, TestContext.Current.CancellationToken);
        await TestStore.AppendAsync(device, sample, new HandedOver("d-02"));
        Assert.False(foreign.IsRefused);
        var entries = (await device.EntriesOfAsync(sample, TestContext.Current.CancellationToken)).ToList();
        var merged = await api.PostAsync("/api/merge", $$"""{"entries":[{{string.Join(',', entries.Select(entry => entry.Canonical()))}}]}""", HttpStatusCode.OK);

        // Its number is the clinic's to give, and d-02 is somebody else.
        Assert.Equal([1, 3], merged.GetProperty("refused").EnumerateArray().Select(one => one.GetProperty("index").GetInt32()));
        Assert.Equal(entries.Count - 2, merged.GetProperty("added").GetInt32());
        var again = await api.PostAsync("/api/merge", $$"""{"entries":[{{entries[0].Canonical()}}]}""", HttpStatusCode.OK);
        Assert.Equal(1, again.GetProperty("wereThere").GetInt32());
    }

    [Fact]
    public async Task Changes_are_told_as_they_are_written()
    {
        string sample = await api.TakeInAsync();
        using var answer = await api.Client.GetAsync(new Uri($"/api/changes?sample={sample}", UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        using var stream = await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream);
        string look = await api.LookAsync(sample, "concentric-rings", "absent", "hand-lens");
        string? line;
        while ((line = await reader.ReadLineAsync(TestContext.Current.CancellationToken)) is not null && !line.Contains(look, StringComparison.Ordinal)) Assert.DoesNotContain("closed", line, StringComparison.Ordinal);
        Assert.Equal("look", JsonSerializer.Deserialize<JsonElement>(line!["data: ".Length..]).GetProperty("kind").GetString());
    }

    [Fact]
    public async Task A_sample_that_has_not_changed_is_not_sent_again()
    {
        string sample = await api.TakeInAsync();
        using var first = await api.Client.GetAsync(new Uri($"/api/samples/{sample}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotModified, await WithTagAsync(sample, first));
        await api.AppendAsync(sample, "closed", """{"why":"Done."}""");
        Assert.Equal(HttpStatusCode.OK, await WithTagAsync(sample, first));
    }

    private async Task<HttpStatusCode> WithTagAsync(string sample, HttpResponseMessage before)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri($"/api/samples/{sample}", UriKind.Relative));
        request.Headers.IfNoneMatch.Add(before.Headers.ETag!);
        using var answer = await api.Client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }
}
