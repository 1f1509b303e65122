using System.Net;
using Abaxial.Data.People;
using Abaxial.Web.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class BenchTests
{
    private const string Pin = "2580";

    [Fact]
    public async Task On_a_shared_bench_a_PIN_switches_the_person()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var bench = await BenchAsync(clinic);
        await SwitchAsync(bench, "d-08", Pin, HttpStatusCode.Created);
        using var me = await bench.GetAsync("/api/people/me");
        Assert.Contains("\"id\":\"d-08\"", await me.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, await bench.StatusAsync("/sign-in"));
    }

    [Fact]
    public async Task Elsewhere_a_PIN_is_worth_nothing()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var bench = await BenchAsync(clinic);
        using var elsewhere = clinic.Visitor();
        await SwitchAsync(elsewhere, "d-08", Pin, HttpStatusCode.Forbidden);
        using var signedIn = await clinic.SignInAsync("d-07");
        await SwitchAsync(signedIn, "d-08", Pin, HttpStatusCode.Forbidden);
        using var asPassword = await elsewhere.PostAsync("/api/sessions", ("name", "d-08"), ("password", Pin));
        Assert.Equal(HttpStatusCode.Unauthorized, asPassword.StatusCode);
    }

    [Fact]
    public async Task Five_wrong_PINs_end_it_until_the_password_is_shown()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var bench = await BenchAsync(clinic);
        for (int i = 0; i < PinRules.MostFailures; i++) await SwitchAsync(bench, "d-08", "9999", HttpStatusCode.Unauthorized);
        await SwitchAsync(bench, "d-08", Pin, HttpStatusCode.Unauthorized);
        Assert.Contains(AuditKind.LockedOut, await clinic.AuditAsync());
        (await clinic.SignInAsync("d-08")).Dispose();
        await SwitchAsync(bench, "d-08", Pin, HttpStatusCode.Created);
    }

    [Fact]
    public async Task Who_switched_by_PIN_changes_nothing_of_the_account()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var bench = await BenchAsync(clinic);
        await SwitchAsync(bench, "d-08", Pin, HttpStatusCode.Created);
        using var answer = await bench.PostAsync("/api/people/me/password", ("password", "another good long one"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task A_bench_that_was_ended_takes_no_PIN()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var bench = await BenchAsync(clinic);
        using var keeper = await clinic.SignInAsync("d-07");
        using var list = await keeper.GetAsync("/api/benches");
        string id = System.Text.Json.JsonDocument.Parse(await list.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement[0].GetProperty("id").GetString()!;
        await keeper.DoneAsync($"/api/benches/{id}/end");
        await SwitchAsync(bench, "d-08", Pin, HttpStatusCode.Forbidden);
    }

    [Theory]
    [InlineData("123")]
    [InlineData("1111")]
    [InlineData("1234")]
    [InlineData("9876")]
    [InlineData("12a4")]
    [InlineData("1234567890123")]
    public void A_PIN_that_is_tried_first_is_refused(string pin) => Assert.False(PinRules.IsOne(pin));

    /// <summary>A browser on a shared bench, marked by d-07, on which d-08 has a PIN.</summary>
    private static async Task<Visitor> BenchAsync(PeopleClinic clinic)
    {
        var bench = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await bench.DoneAsync("/api/benches", ("name", "Wet bench"));
        using var other = await clinic.SignedInAsync("d-08", Role.Diagnostician);
        await other.DoneAsync("/api/people/me/pin", ("pin", Pin));
        return bench;
    }

    private static async Task SwitchAsync(Visitor visitor, string person, string pin, HttpStatusCode expected)
    {
        using var answer = await visitor.PostAsync("/api/benches/sessions", ("person", person), ("pin", pin));
        Assert.Equal(expected, answer.StatusCode);
    }
}
