using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>What comes of requests that come to nothing.</summary>
public sealed class AnswerTests : IAsyncLifetime
{
    private HostedClinic? started;

    private HostedClinic Clinic => started!;

    public async ValueTask InitializeAsync() => started = await HostedClinic.StartAsync(map: MapOwn);

    public ValueTask DisposeAsync() => Clinic.DisposeAsync();

    [Theory]
    [InlineData("GET", "/api/nothing-of-the-kind", 404)]
    [InlineData("DELETE", "/api/own", 405)]
    public async Task What_a_program_asks_in_vain_is_answered_by_a_problem_document(string method, string path, int status)
    {
        using var answer = await Clinic.SendAsync(new HttpMethod(method), path, null, ("Accept", "text/html"));
        Assert.Equal(status, (int)answer.StatusCode);
        await HostedClinic.ProblemOf(answer);
    }

    [Fact]
    public async Task A_person_gets_a_page_with_the_number_of_the_request()
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Get, "/nothing-of-the-kind", null, ("Accept", "text/html,application/xhtml+xml"));
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is nothing here", page, StringComparison.Ordinal);
        Assert.Matches("<code>[0-9a-zA-Z:]+</code>", page);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"count\": 1, \"name\": \"leaf\"", "")]
    [InlineData("{\"name\": \"leaf\", \"count\": \"many\"}", "/count")]
    [InlineData("{\"name\": \"leaf\", \"count\": \"1\"}", "/count")]
    [InlineData("{\"name\": \"leaf\", \"count\": 1, \"other\": 1}", "/other")]
    [InlineData("{\"name\": null, \"count\": 1}", "/name")]
    [InlineData("{\"name\": \"leaf\"}", "")]
    [InlineData("{\"name\": \"leaf\", \"count\": 1, \"parts\": [{\"size\": 1}, {\"size\": \"big\"}]}", "/parts/1/size")]
    public async Task Bad_JSON_is_refused_with_the_place(string body, string at)
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Post, "/api/own", new StringContent(body, Encoding.UTF8, "application/json"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = Assert.Single((await HostedClinic.ProblemOf(answer)).GetProperty("problems").EnumerateArray());
        Assert.Equal(at, problem.GetProperty("at").GetString());
        Assert.StartsWith("line 1, byte ", problem.GetProperty("found").GetString(), StringComparison.Ordinal);
        Assert.NotEmpty(problem.GetProperty("accepted").EnumerateArray());
    }

    [Fact]
    public async Task Content_of_another_kind_is_refused()
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Post, "/api/own", new StringContent("<own/>", Encoding.UTF8, "application/xml"));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        await HostedClinic.ProblemOf(answer);
    }

    [Fact]
    public async Task A_body_over_the_limit_is_refused_and_one_at_it_is_not()
    {
        foreach (var (length, expected) in new[] { (1 << 20, HttpStatusCode.OK), ((1 << 20) + 1, HttpStatusCode.RequestEntityTooLarge) })
        {
            string start = "{\"count\": 1, \"name\": \"", end = "\"}";
            using var answer = await Clinic.SendAsync(HttpMethod.Post, "/api/own", new StringContent(start + new string('a', length - start.Length - end.Length) + end, Encoding.UTF8, "application/json"));
            Assert.Equal(expected, answer.StatusCode);
            if (expected != HttpStatusCode.OK) await HostedClinic.ProblemOf(answer);
        }
    }

    [Fact]
    public async Task A_fault_of_the_program_tells_nothing_of_its_inside()
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Get, "/api/fault");
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        string text = (await HostedClinic.ProblemOf(answer)).GetRawText();
        Assert.DoesNotContain("Hesper", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
    }

    private static void MapOwn(IEndpointRouteBuilder app)
    {
        app.MapPost("/api/own", (Own own) => TypedResults.Ok(own.Count));
        app.MapGet("/api/fault", string () => throw new InvalidOperationException("Hesper Dunnick was here."));
    }

    private sealed record Own(string Name, int Count, Part[]? Parts = null);

    private sealed record Part(int Size);
}
