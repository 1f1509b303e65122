using System.Net;
using Abaxial.Data.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class PeopleKeepingTests
{
    private static readonly (string, string)[] Scout = [("name", "tamsin"), ("displayName", "Tamsin Orrell"), ("role", "scout"), ("areas", "North shore\nSallowmere")];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_is_invited_chooses_a_password_and_is_in()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        var invited = await administrator.DoneAsync("/api/people", Scout);
        Assert.Equal("s-01", invited.GetProperty("id").GetString());
        string code = invited.GetProperty("code").GetString()!;
        using var scout = clinic.Visitor();
        using var took = await scout.SubmitAsync("/invitation", "/api/invitations", ("code", code), ("password", "ten small green apples"));
        Assert.Equal("/account", took.Headers.Location!.OriginalString);
        using var me = await scout.GetAsync("/api/people/me");
        Assert.Contains("[\"North shore\",\"Sallowmere\"]", await me.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);

        using var second = clinic.Visitor();
        using var again = await second.PostAsync("/api/invitations", ("code", code), ("password", "ten small green apples"));
        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
    }

    [Fact]
    public async Task An_invitation_ends_after_a_week()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        string code = (await administrator.DoneAsync("/api/people", Scout)).GetProperty("code").GetString()!;
        clinic.Clock.Forward(TimeSpan.FromDays(7));
        using var late = clinic.Visitor();
        using var answer = await late.PostAsync("/api/invitations", ("code", code), ("password", "ten small green apples"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task The_page_shows_an_invitation_once()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        using var made = await administrator.SubmitAsync("/people", "/api/people", Scout);
        string once = made.Headers.Location!.OriginalString;
        using var first = await administrator.GetAsync(once);
        Assert.Matches("[2-9A-Z]{4}(-[2-9A-Z]{4}){4}", await first.Content.ReadAsStringAsync(Cancel));
        using var second = await administrator.GetAsync(once);
        Assert.DoesNotMatch("[2-9A-Z]{4}(-[2-9A-Z]{4}){4}", await second.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task Another_role_and_being_kept_out_end_what_was_open()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        using var person = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await administrator.DoneAsync("/api/people/d-07", ("name", "d-07"), ("displayName", "Person d-07"), ("role", "lead"));
        Assert.Equal(HttpStatusCode.Unauthorized, await person.StatusAsync("/api/people/me"));

        using var lead = await clinic.SignInAsync("d-07");
        Assert.Equal(HttpStatusCode.OK, await lead.StatusAsync("/api/audit"));
        await administrator.DoneAsync("/api/people/d-07/close");
        Assert.Equal(HttpStatusCode.Unauthorized, await lead.StatusAsync("/api/people/me"));
        using var closed = await lead.PostAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
        Assert.Equal(HttpStatusCode.Unauthorized, closed.StatusCode);
        await administrator.DoneAsync("/api/people/d-07/open");
        (await clinic.SignInAsync("d-07")).Dispose();
    }

    [Fact]
    public async Task The_last_administrator_stays()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        await clinic.AddAsync("a-02", Role.Administrator, password: null); // was invited and has not come
        foreach (string path in (string[])["/api/people/a-01/close", "/api/people/a-01/erase"])
        {
            using var refused = await administrator.PostAsync(path);
            Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        }

        using var changed = await administrator.PostAsync("/api/people/a-01", ("name", "a-01"), ("displayName", "A"), ("role", "lead"));
        Assert.Equal(HttpStatusCode.BadRequest, changed.StatusCode);
    }

    [Fact]
    public async Task Of_who_was_erased_the_store_keeps_the_id_alone()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        string code = (await administrator.DoneAsync("/api/people", Scout)).GetProperty("code").GetString()!;
        using var scout = clinic.Visitor();
        await scout.DoneAsync("/api/invitations", ("code", code), ("password", "ten small green apples"));
        await administrator.DoneAsync("/api/people/s-01/erase");

        Assert.Equal(HttpStatusCode.Unauthorized, await scout.StatusAsync("/api/people/me"));
        Assert.Equal(0, await clinic.AskAsync(store => store.Sessions.CountAsync(row => row.Person == "s-01", Cancel)));
        foreach (string file in Directory.GetFiles(clinic.Folder, "ledger.db*"))
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using var bytes = new MemoryStream();
            await stream.CopyToAsync(bytes, Cancel);
            Assert.True(bytes.ToArray().AsSpan().IndexOf("Tamsin"u8) < 0, $"The name stands in {file}.");
            Assert.True(bytes.ToArray().AsSpan().IndexOf("tamsin"u8) < 0, $"The name to sign in with stands in {file}.");
        }

        var check = await TestStore.CheckAsync(clinic.Ledger);
        Assert.Empty(check.Faults);
        var next = await administrator.DoneAsync("/api/people", Scout);
        Assert.Equal("s-02", next.GetProperty("id").GetString()); // an id stays its person's
    }
}
