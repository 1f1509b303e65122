using System.Globalization;
using System.Net;
using Abaxial.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class LimitTests
{
    [Fact]
    public async Task Who_asks_too_often_is_told_how_long_to_wait()
    {
        await using var clinic = await HostedClinic.StartAsync(options => options with { Limits = new RequestLimits { RequestsPerMinute = 5 } });
        using var refused = await AskUntilRefusedAsync(clinic, "/api/samples/");
        Assert.InRange(int.Parse(Assert.Single(refused.Headers.GetValues("Retry-After")), CultureInfo.InvariantCulture), 1, 60);
        await HostedClinic.ProblemOf(refused);
        using var live = await clinic.SendAsync(HttpMethod.Get, "/health/live");
        Assert.Equal(HttpStatusCode.OK, live.StatusCode); // a monitor must not take a busy clinic for a dead one
    }

    [Fact]
    public async Task Signing_in_is_held_back_sooner_than_the_rest()
    {
        await using var clinic = await HostedClinic.StartAsync(
            options => options with { Limits = new RequestLimits { SignInsPerMinute = 3 } },
            app => app.MapGet("/api/try", () => "no").TakesSignIn());
        using var refused = await AskUntilRefusedAsync(clinic, "/api/try");
        using var other = await clinic.SendAsync(HttpMethod.Get, "/api/samples/");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
    }

    [Fact]
    public async Task An_upload_may_be_larger_than_other_requests_and_is_bounded_all_the_same()
    {
        await using var clinic = await HostedClinic.StartAsync(map: app =>
        {
            app.MapPost("/api/photograph", ReadAsync).TakesUpload();
            app.MapPost("/api/other", ReadAsync);
        });
        Assert.Equal(HttpStatusCode.OK, await SendAsync(clinic, "/api/photograph", 2 << 20));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await SendAsync(clinic, "/api/other", 2 << 20));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await SendAsync(clinic, "/api/photograph", (int)RequestLimits.UploadBytes + 1));
    }

    [Fact]
    public async Task A_request_that_takes_too_long_is_given_up()
    {
        await using var clinic = await HostedClinic.StartAsync(
            options => options with { Limits = new RequestLimits { RequestTime = TimeSpan.FromMilliseconds(50) } },
            app => app.MapGet("/api/slow", (CancellationToken cancel) => Task.Delay(Timeout.Infinite, cancel)));
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/api/slow");
        Assert.Equal(HttpStatusCode.GatewayTimeout, answer.StatusCode);
        await HostedClinic.ProblemOf(answer);
    }

    private static async Task<long> ReadAsync(HttpRequest request, CancellationToken cancel)
    {
        await request.Body.CopyToAsync(Stream.Null, cancel);
        return request.ContentLength ?? 0;
    }

    private static async Task<HttpStatusCode> SendAsync(HostedClinic clinic, string path, int bytes)
    {
        // Only the length of what is far too large is sent: the clinic must not wait for the rest.
        using var content = bytes > 10 << 20 ? new StreamContent(new MemoryStream()) : (HttpContent)new ByteArrayContent(new byte[bytes]);
        content.Headers.ContentLength = bytes;
        using var client = clinic.Client();
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
        request.Headers.ExpectContinue = true;
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    private static async Task<HttpResponseMessage> AskUntilRefusedAsync(HostedClinic clinic, string path)
    {
        for (int asked = 0; asked < 1000; asked++)
        {
            var answer = await clinic.SendAsync(HttpMethod.Get, path);
            if (answer.StatusCode == HttpStatusCode.TooManyRequests) return answer;
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            answer.Dispose();
        }

        throw new InvalidOperationException("A thousand requests were all answered.");
    }
}
