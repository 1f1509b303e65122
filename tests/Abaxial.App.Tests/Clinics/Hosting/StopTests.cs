using System.Net;
using Microsoft.AspNetCore.Builder;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class StopTests
{
    [Fact]
    public async Task A_request_that_is_being_answered_ends_before_the_clinic_does()
    {
        var cancel = TestContext.Current.CancellationToken;
        var arrived = new TaskCompletionSource();
        var mayAnswer = new TaskCompletionSource();
        await using var clinic = await HostedClinic.StartAsync(map: app => app.MapGet("/api/slow", async () =>
        {
            arrived.SetResult();
            await mayAnswer.Task;
            return "kept";
        }));
        var asked = clinic.SendAsync(HttpMethod.Get, "/api/slow");
        await arrived.Task.WaitAsync(cancel);
        var stopping = clinic.App.StopAsync(cancel);
        Assert.False(stopping.IsCompleted);
        mayAnswer.SetResult();
        using var answer = await asked;
        Assert.Equal((HttpStatusCode.OK, "kept"), (answer.StatusCode, await answer.Content.ReadAsStringAsync(cancel)));
        await stopping;
        await Assert.ThrowsAsync<HttpRequestException>(() => clinic.SendAsync(HttpMethod.Get, "/health/live"));
    }

    [Fact]
    public async Task A_request_that_never_ends_does_not_keep_the_clinic_from_stopping()
    {
        var cancel = TestContext.Current.CancellationToken;
        var arrived = new TaskCompletionSource();
        await using var clinic = await HostedClinic.StartAsync(
            options => options with { StopWithin = TimeSpan.FromMilliseconds(200) },
            app => app.MapGet("/api/stuck", async () =>
            {
                arrived.SetResult();
                await Task.Delay(Timeout.Infinite, CancellationToken.None);
            }));
        var asked = clinic.SendAsync(HttpMethod.Get, "/api/stuck");
        await arrived.Task.WaitAsync(cancel);
        await clinic.App.StopAsync(cancel);
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => asked);
    }
}
