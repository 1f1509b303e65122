using System.Net;

namespace Abaxial.App.Tests.Clinics.Hosting;

/// <summary>What every answer tells a browser, and whom the clinic listens to.</summary>
public sealed class HeaderTests : IAsyncLifetime
{
    private HostedClinic? started;

    private HostedClinic Clinic => started!;

    public async ValueTask InitializeAsync() => started = await HostedClinic.StartAsync();

    public ValueTask DisposeAsync() => Clinic.DisposeAsync();

    [Theory]
    [InlineData("/")]
    [InlineData("/clinic.css")]
    [InlineData("/nothing-of-the-kind")]
    [InlineData("/api/samples/")]
    [InlineData("/health/live")]
    public async Task Every_answer_carries_the_headers_and_none_names_the_server(string path)
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Get, path);
        string policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("base-uri 'none'", policy, StringComparison.Ordinal);
        Assert.StartsWith("default-src 'none'; ", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Cross-Origin-Resource-Policy")));
        Assert.Contains("camera=(self)", Assert.Single(answer.Headers.GetValues("Permissions-Policy")), StringComparison.Ordinal);
        Assert.Equal(path == "/clinic.css" ? "no-cache" : "no-store", answer.Headers.CacheControl?.ToString());
        Assert.False(answer.Headers.Contains("Server"));
        Assert.False(answer.Headers.Contains("X-Powered-By"));
        Assert.False(answer.Headers.Contains("Strict-Transport-Security")); // over plain HTTP browsers must pass over it
    }

    [Theory]
    [InlineData("cross-site", null, 403)]
    [InlineData("same-site", null, 403)]
    [InlineData("same-origin", null, 405)]
    [InlineData("none", null, 405)]
    [InlineData(null, "https://elsewhere.example", 403)]
    [InlineData(null, "null", 403)]
    [InlineData(null, "own", 405)]
    [InlineData(null, null, 403)]
    public async Task A_change_asked_for_with_a_cookie_has_to_come_from_the_clinic_s_own_pages(string? site, string? origin, int status)
    {
        var headers = new List<(string, string)> { ("Cookie", "anything=1") };
        if (site is not null) headers.Add(("Sec-Fetch-Site", site));
        if (origin is not null) headers.Add(("Origin", origin == "own" ? Clinic.Address.GetLeftPart(UriPartial.Authority) : origin));
        using var answer = await Clinic.SendAsync(HttpMethod.Delete, "/api/samples/", null, [.. headers]);
        Assert.Equal(status, (int)answer.StatusCode); // 405: it came so far that the method was looked at
    }

    [Theory]
    [InlineData(null, 401)] // it came so far that the token was looked at
    [InlineData("anything=1", 403)]
    public async Task A_device_that_shows_a_token_and_no_cookie_needs_no_proof(string? cookie, int status)
    {
        var headers = new List<(string, string)> { ("Authorization", "Bearer of-a-device"), ("Sec-Fetch-Site", "cross-site") };
        if (cookie is not null) headers.Add(("Cookie", cookie));
        using var answer = await Clinic.SendAsync(HttpMethod.Delete, "/api/samples/", null, [.. headers]);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Theory]
    [InlineData("evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("169.254.169.254", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost", HttpStatusCode.OK)]
    public async Task The_clinic_answers_to_its_own_names_alone(string host, HttpStatusCode status)
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Get, "/", null, ("Host", host));
        Assert.Equal(status, answer.StatusCode);
    }

    [Fact]
    public async Task What_only_a_proxy_can_know_is_believed_of_nobody_where_none_was_named()
    {
        using var answer = await Clinic.SendAsync(HttpMethod.Get, "/", null, ("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", "evil.example"), ("X-Forwarded-For", "10.9.8.7"));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
    }
}
