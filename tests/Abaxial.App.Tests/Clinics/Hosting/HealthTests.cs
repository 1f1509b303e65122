using System.Net;
using System.Text.Json;

namespace Abaxial.App.Tests.Clinics.Hosting;

public sealed class HealthTests
{
    [Fact]
    public async Task A_clinic_that_can_work_is_ready_and_says_no_more_than_that()
    {
        await using var clinic = await HostedClinic.StartAsync();
        var (status, text) = await ReadyAsync(clinic);
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal("""{"status":"ready","checks":{"disk":"ok","photographs":"ok","store":"ok"}}""", text);
    }

    [Fact]
    public async Task Too_little_space_on_the_disk_is_told()
    {
        await using var clinic = await HostedClinic.StartAsync(options => options with { DiskFloorMebibytes = 1L << 40 });
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "low"), await CheckAsync(clinic, "disk"));
    }

    [Fact]
    public async Task A_folder_of_photographs_that_is_gone_is_told()
    {
        await using var clinic = await HostedClinic.StartAsync();
        Directory.Delete(Path.Combine(clinic.Folder, "photographs"), recursive: true);
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "failed"), await CheckAsync(clinic, "photographs"));
    }

    private static async Task<(HttpStatusCode Status, string State)> CheckAsync(HostedClinic clinic, string check)
    {
        var (status, text) = await ReadyAsync(clinic);
        using var document = JsonDocument.Parse(text);
        return (status, document.RootElement.GetProperty("checks").GetProperty(check).GetString()!);
    }

    private static async Task<(HttpStatusCode Status, string Text)> ReadyAsync(HostedClinic clinic)
    {
        using var answer = await clinic.SendAsync(HttpMethod.Get, "/health/ready");
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
