using System.Net;
using Abaxial.Data.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class PasskeyTests
{
    private const string Making = "/api/people/me/passkeys/challenge";
    private const string Showing = "/api/sessions/passkey/challenge";

    [Fact]
    public async Task A_passkey_signs_its_person_in_without_a_name()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var key = new SoftwareKey();
        using var maker = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await AddAsync(maker, key);
        for (int i = 0; i < 2; i++)
        {
            using var visitor = clinic.Visitor();
            var asked = await visitor.DoneAsync(Showing);
            var shown = await visitor.DoneAsync("/api/sessions/passkey", ("key", Of(asked, "key")), ("credential", key.Show(Of(asked, "options"), Origin(visitor))));
            Assert.Equal("d-07", Of(shown, "id"));
            Assert.Equal(HttpStatusCode.OK, await visitor.StatusAsync("/api/people/me"));
        }
    }

    [Fact]
    public async Task A_challenge_works_once()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var key = new SoftwareKey();
        using var maker = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await AddAsync(maker, key);
        using var visitor = clinic.Visitor();
        var asked = await visitor.DoneAsync(Showing);
        string credential = key.Show(Of(asked, "options"), Origin(visitor));
        await visitor.DoneAsync("/api/sessions/passkey", ("key", Of(asked, "key")), ("credential", credential));
        using var again = await visitor.PostAsync("/api/sessions/passkey", ("key", Of(asked, "key")), ("credential", credential));
        Assert.Equal(HttpStatusCode.Unauthorized, again.StatusCode);
    }

    [Fact]
    public async Task A_passkey_that_was_shown_to_another_site_is_not_taken()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var key = new SoftwareKey();
        using var maker = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await AddAsync(maker, key);
        using var visitor = clinic.Visitor();
        var asked = await visitor.DoneAsync(Showing);
        using var answer = await visitor.PostAsync("/api/sessions/passkey", ("key", Of(asked, "key")), ("credential", key.Show(Of(asked, "options"), "https://127.0.0.1")));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task A_passkey_that_was_taken_away_signs_nobody_in()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var key = new SoftwareKey();
        using var maker = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        string id = await AddAsync(maker, key);
        await maker.DoneAsync($"/api/people/me/passkeys/{id}/remove");
        using var visitor = clinic.Visitor();
        var asked = await visitor.DoneAsync(Showing);
        using var answer = await visitor.PostAsync("/api/sessions/passkey", ("key", Of(asked, "key")), ("credential", key.Show(Of(asked, "options"), Origin(visitor))));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    private static async Task<string> AddAsync(Visitor maker, SoftwareKey key)
    {
        var asked = await maker.DoneAsync(Making);
        return Of(await maker.DoneAsync("/api/people/me/passkeys", ("key", Of(asked, "key")), ("credential", key.Make(Of(asked, "options"), Origin(maker))), ("name", "Bench")), "id");
    }

    private static string Of(System.Text.Json.JsonElement answer, string member) => answer.GetProperty(member).GetString()!;

    private static string Origin(Visitor visitor) => visitor.Address.GetLeftPart(UriPartial.Authority);
}
