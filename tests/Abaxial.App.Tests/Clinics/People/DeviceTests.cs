using System.Net;
using System.Net.Http.Headers;
using Abaxial.App.Tests.Clinics.Photographs;
using Abaxial.Data.People;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class DeviceTests
{
    [Fact]
    public async Task A_paired_device_asks_with_its_own_token_until_it_is_ended()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var scout = await clinic.SignedInAsync("s-01", Role.Scout);
        var (device, token) = await PairAsync(clinic, scout, "scout");
        Assert.Equal(HttpStatusCode.OK, await AskAsync(clinic, token, "/api/people/me"));
        Assert.Equal(HttpStatusCode.Forbidden, await AskAsync(clinic, token, "/api/sessions"));
        Assert.Equal(HttpStatusCode.Forbidden, await AskAsync(clinic, token, "/api/devices"));

        await scout.DoneAsync($"/api/devices/{device}/end");
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(clinic, token, "/api/people/me"));
    }

    [Fact]
    public async Task A_device_that_was_ended_sends_and_sees_no_photograph()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var scout = await clinic.SignedInAsync("s-01", Role.Scout);
        var (device, token) = await PairAsync(clinic, scout, "scout");
        using var client = new HttpClient { BaseAddress = clinic.Address };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        var stored = await client.StoreAsync(Pictures.Jpeg());
        var sample = await TestStore.TakeInAsync(clinic.Ledger, "s-01");
        await TestStore.AppendAsync(clinic.Ledger, sample, new PhotographAdded(stored.Sha256, stored.MediaType, stored.Bytes));
        string thumb = $"/api/photographs/{stored.Sha256}/thumb";
        Assert.Equal(HttpStatusCode.OK, await AskAsync(clinic, token, thumb));
        Assert.Equal(HttpStatusCode.NotFound, await AskAsync(clinic, token, thumb.Replace("/thumb", "/original", StringComparison.Ordinal)));

        await scout.DoneAsync($"/api/devices/{device}/end");
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(clinic, token, thumb));
        using var refused = await client.SendAsync(Pictures.Jpeg(number: 1));
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
    }

    [Fact]
    public async Task A_code_pairs_one_device_within_ten_minutes()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var scout = await clinic.SignedInAsync("s-01", Role.Scout);
        using var device = clinic.Visitor();
        string code = (await scout.DoneAsync("/api/devices/codes", ("role", "scout"))).GetProperty("code").GetString()!;
        await device.DoneAsync("/api/devices", ("code", code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal)), ("name", "Telephone"));
        using var again = await device.PostAsync("/api/devices", ("code", code), ("name", "Telephone"));
        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);

        string late = (await scout.DoneAsync("/api/devices/codes", ("role", "scout"))).GetProperty("code").GetString()!;
        clinic.Clock.Forward(TimeSpan.FromMinutes(11));
        using var refused = await device.PostAsync("/api/devices", ("code", late), ("name", "Telephone"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
    }

    [Fact]
    public async Task The_store_holds_no_token_that_could_be_shown()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var scout = await clinic.SignedInAsync("s-01", Role.Scout);
        var (_, token) = await PairAsync(clinic, scout, "scout");
        byte[] bytes = [.. await ReadAsync(Path.Combine(clinic.Folder, "ledger.db")), .. await ReadAsync(Path.Combine(clinic.Folder, "ledger.db-wal"))];
        Assert.True(bytes.AsSpan().IndexOf("s-01"u8) >= 0);
        Assert.True(bytes.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(token)) < 0);
        Assert.True(bytes.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(scout.Session!)) < 0);
    }

    [Fact]
    public async Task A_device_is_never_more_than_its_person()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var scout = await clinic.SignedInAsync("s-01", Role.Scout);
        foreach (string role in (string[])["diagnostician", "administrator", "captain"])
        {
            using var refused = await scout.PostAsync("/api/devices/codes", ("role", role));
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        }
    }

    [Fact]
    public async Task The_device_of_another_is_not_there()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var one = await clinic.SignedInAsync("s-01", Role.Scout);
        using var other = await clinic.SignedInAsync("s-02", Role.Scout);
        var (device, token) = await PairAsync(clinic, one, "scout");
        using var answer = await other.PostAsync($"/api/devices/{device}/end");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await AskAsync(clinic, token, "/api/people/me"));
    }

    private static async Task<(string Device, string Token)> PairAsync(PeopleClinic clinic, Visitor person, string role)
    {
        string code = (await person.DoneAsync("/api/devices/codes", ("role", role))).GetProperty("code").GetString()!;
        using var device = clinic.Visitor();
        var paired = await device.DoneAsync("/api/devices", ("code", code), ("name", "Telephone"));
        return (paired.GetProperty("id").GetString()!, paired.GetProperty("token").GetString()!);
    }

    private static async Task<HttpStatusCode> AskAsync(PeopleClinic clinic, string token, string path)
    {
        using var client = new HttpClient { BaseAddress = clinic.Address };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        using var answer = await client.GetAsync(path, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    private static async Task<byte[]> ReadAsync(string file)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        return bytes.ToArray();
    }
}
