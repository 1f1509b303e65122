using System.Net;
using Abaxial.Web;
using Abaxial.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class ProxyTests
{
    private static readonly ClinicOptions Behind = new()
    {
        Store = "store",
        PublicUrl = new Uri("https://clinic.example"),
        Proxies = [IPNetwork.Parse("127.0.0.1/32"), IPNetwork.Parse("10.0.0.0/24")],
    };

    [Fact]
    public async Task What_a_named_proxy_knows_of_a_request_is_taken_from_it()
    {
        await using var clinic = await StartAsync();
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/seen", null, ("X-Forwarded-For", "203.0.113.9"), ("X-Forwarded-Proto", "https"), ("X-Forwarded-Host", "clinic.example"));
        Assert.Equal("https://clinic.example from 203.0.113.9", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.True(answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Fact]
    public async Task A_chain_is_followed_as_far_as_its_proxies_are_named()
    {
        await using var clinic = await StartAsync();
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/seen", null, ("X-Forwarded-For", "198.51.100.1, 203.0.113.9, 10.0.0.5"), ("X-Forwarded-Proto", "https"));
        Assert.EndsWith("from 203.0.113.9", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_that_is_not_the_clinic_s_is_not_taken_from_a_proxy_either()
    {
        await using var clinic = await StartAsync();
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/seen", null, ("X-Forwarded-For", "203.0.113.9"), ("X-Forwarded-Host", "evil.example"));
        Assert.DoesNotContain("evil", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var direct = await clinic.SendAsync(HttpMethod.Get, "/seen", null, ("Host", "evil.example"));
        Assert.Equal(HttpStatusCode.MisdirectedRequest, direct.StatusCode);
    }

    [Theory]
    [InlineData("127.0.0.1", false, true)]
    [InlineData("10.0.0.200", false, true)]
    [InlineData("::ffff:10.0.0.200", false, true)]
    [InlineData("10.0.1.1", false, false)]
    [InlineData("203.0.113.9", false, false)]
    [InlineData("203.0.113.9", true, true)]
    public void Behind_a_proxy_nobody_else_speaks_plain_HTTP_with_the_clinic(string from, bool isHttps, bool isExpected) =>
        Assert.Equal(isExpected, Proxies.IsExpected(IPAddress.Parse(from), isHttps, Behind));

    private static Task<HostedClinic> StartAsync() => HostedClinic.StartAsync(
        options => options with { PublicUrl = Behind.PublicUrl, Proxies = Behind.Proxies },
        app => app.MapGet("/seen", (HttpContext context) => $"{context.Request.Scheme}://{context.Request.Host} from {context.Connection.RemoteIpAddress}"));
}
