using System.Net;
using Abaxial.Data;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>A day's work of a diagnostician, by the API alone.</summary>
public sealed class DayOverTheApiTests(RunningClinic clinic) : IClassFixture<RunningClinic>, IDisposable
{
    private readonly Api api = new(clinic.Client());

    public void Dispose() => api.Dispose();

    [Fact]
    public async Task A_sample_is_taken_in_looked_at_corrected_diagnosed_and_closed()
    {
        string sample = await api.TakeInAsync("""
            {"host":"tomato","system":"high-tunnel","stage":"fruiting","place":{"latitude":44.06,"longitude":-31.12},"says":"White growth in two rows.","submitter":"g-11",
             "cases":[{"looks":[{"character":"organs-affected","states":["leaf"],"how":"naked-eye"}]},{"looks":[{"character":"organs-affected","states":["stem"],"how":"naked-eye"}]}]}
            """);
        string wrong = await api.LookAsync(sample, "concentric-rings", "clear", "hand-lens");
        await api.PostAsync($"/api/samples/{sample}/entries/{wrong}/corrections", """{"why":"Another leaf.","version":1,"payload":{"case":1,"observation":{"character":"concentric-rings","state":"absent","how":"hand-lens"}}}""");
        string slip = await api.LookAsync(sample, "onset", "several-weeks", "asked");
        await api.PostAsync($"/api/samples/{sample}/entries/{slip}/corrections", """{"why":"Another sample."}""");
        await api.AppendAsync(sample, "message", """{"direction":"in","text":"It rained all night."}""");
        var answer = await api.GetAsync($"/api/samples/{sample}/cases/1/answer");
        string leader = answer.GetProperty("causes")[0].GetProperty("id").GetString()!;
        await api.AppendAsync(sample, "diagnosis", $$"""{"case":1,"primary":["{{leader}}"],"provenBy":"white down under the lens"}""");
        await api.AppendAsync(sample, "handed-over", """{"to":"d-02"}""");
        await api.AppendAsync(sample, "closed", """{"why":"Answered."}""");

        var view = await api.GetAsync($"/api/samples/{sample}");
        Assert.Equal("White growth in two rows.", view.GetProperty("takenIn").GetProperty("says").GetString());
        Assert.Equal(44.06, view.GetProperty("takenIn").GetProperty("place").GetProperty("latitude").GetDouble());
        Assert.Equal(44, view.GetProperty("takenIn").GetProperty("area").GetProperty("latitude").GetDouble());
        Assert.Equal(["organs-affected", "concentric-rings"], view.GetProperty("cases")[0].GetProperty("case").GetProperty("looks").EnumerateArray().Select(look => look.GetProperty("character").GetString()));
        Assert.Equal("It rained all night.", view.GetProperty("messages")[0].GetProperty("text").GetString());
        Assert.Equal(leader, view.GetProperty("diagnoses")[0].GetProperty("diagnosis").GetProperty("engine").GetProperty("leader").GetString());
        Assert.Equal(("d-02", "Answered."), (view.GetProperty("with").GetString(), view.GetProperty("closedBecause").GetString()));
        Assert.Equal(["corrected", "struck"], view.GetProperty("timeline").EnumerateArray().Select(item => item.GetProperty("state").GetString()!).Where(state => state != "stands"));
        Assert.Equal(sample, (await api.GetAsync($"/api/numbers/{view.GetProperty("number").GetString()}")).GetProperty("samples")[0].GetProperty("sample").GetString());
        Assert.Contains(sample, (await api.GetAsync("/api/samples?q=rained&open=false")).GetProperty("samples").EnumerateArray().Select(line => line.GetProperty("sample").GetString()));
        Assert.DoesNotContain("rained", string.Concat(await TestStore.TextsAsync(clinic.Ledger)), StringComparison.Ordinal);
        Assert.Empty((await LedgerCheck.RunAsync(clinic.Ledger, null, TestContext.Current.CancellationToken)).Faults);
    }

    [Fact]
    public async Task A_number_whose_letter_is_wrong_is_told() =>
        Assert.Equal(["/number"], Api.Places(await ProblemAsync("/api/numbers/26-0142-A", HttpStatusCode.BadRequest)));

    private async Task<System.Text.Json.JsonElement> ProblemAsync(string path, HttpStatusCode status)
    {
        using var answer = await api.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(status, answer.StatusCode);
        return System.Text.Json.JsonSerializer.Deserialize<System.Text.Json.JsonElement>(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
