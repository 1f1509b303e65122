using System.Net;
using Abaxial.Data.People;
using Abaxial.Web.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class SignInTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_right_password_signs_in_and_says_who_it_is()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = await clinic.SignInAsync("d-07");
        using var me = await visitor.GetAsync("/api/people/me");
        Assert.Contains("\"id\":\"d-07\"", await me.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Equal(["invited", "signed-in"], await clinic.AuditAsync());
    }

    [Fact]
    public async Task The_cookie_is_for_the_server_alone()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        using var answer = await visitor.PostAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
        string cookie = answer.Headers.GetValues("Set-Cookie").Single(value => value.StartsWith("abaxial=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("max-age=", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Nobody_can_tell_an_account_from_none_and_the_work_is_the_same()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        await clinic.AddAsync("d-08", Role.Diagnostician, password: null); // invited, not come yet
        var answers = new List<(HttpStatusCode, string, long)>();
        foreach (string name in (string[])["d-07", "d-08", "nobody", "", new string('x', 5000)])
        {
            using var visitor = clinic.Visitor();
            long before = clinic.Work.Computed;
            using var answer = await visitor.PostAsync("/api/sessions", ("name", name), ("password", "not the right password"));
            answers.Add((answer.StatusCode, WithoutNumber(await answer.Content.ReadAsStringAsync(Cancel)), clinic.Work.Computed - before));
            Assert.Null(visitor.Session);
        }

        var (status, _, work) = Assert.Single(answers.Distinct());
        Assert.Equal((HttpStatusCode.Unauthorized, 1), (status, work));
    }

    [Fact]
    public async Task Whoever_signs_in_gets_a_new_session_and_the_one_before_is_over()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        string first = visitor.Session!;
        await visitor.DoneAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
        Assert.NotEqual(first, visitor.Session);

        using var holder = clinic.Visitor();
        holder.Cookies.Add(clinic.Address, new Cookie("abaxial", first));
        Assert.Equal(HttpStatusCode.Unauthorized, await holder.StatusAsync("/api/people/me"));
    }

    [Fact]
    public async Task A_session_that_somebody_made_up_is_never_taken_over()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        visitor.Cookies.Add(clinic.Address, new Cookie("abaxial", "planted"));
        await visitor.DoneAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
        Assert.NotEqual("planted", visitor.Session);
        using var planter = clinic.Visitor();
        planter.Cookies.Add(clinic.Address, new Cookie("abaxial", "planted"));
        Assert.Equal(HttpStatusCode.Unauthorized, await planter.StatusAsync("/api/people/me"));
    }

    [Theory]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("/\t/elsewhere.example", "/")]
    [InlineData("javascript:alert(1)", "/")]
    [InlineData("", "/")]
    [InlineData("/samples/1?x=2", "/samples/1?x=2")]
    public async Task It_leads_to_places_of_the_clinic_only(string asked, string where)
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        using var answer = await visitor.SubmitAsync("/sign-in", "/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password), ("returnUrl", asked));
        Assert.Equal((HttpStatusCode.SeeOther, where), (answer.StatusCode, answer.Headers.Location!.OriginalString));
    }

    [Fact]
    public async Task Every_page_says_who_is_signed_in_and_signs_them_out()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = await clinic.SignedInAsync("d-01", Role.Diagnostician);
        foreach (string page in (string[])["/", "/samples/new", "/causes", "/account"])
        {
            using var shown = await visitor.GetAsync(page);
            string html = await shown.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("Person d-01", html, StringComparison.Ordinal);
            Assert.Contains("action=\"/api/sessions/end\"", html, StringComparison.Ordinal);
            Assert.DoesNotContain("href=\"/people\"", html, StringComparison.Ordinal);
        }

        using var ended = await visitor.SubmitAsync("/causes", "/api/sessions/end");
        Assert.Equal((HttpStatusCode.SeeOther, "/sign-in"), (ended.StatusCode, ended.Headers.Location?.OriginalString));
        Assert.Equal(HttpStatusCode.SeeOther, await visitor.StatusAsync("/causes"));
    }

    [Fact]
    public async Task Ten_wrong_tries_lock_the_account_for_a_quarter_of_an_hour()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        for (int i = 0; i < SigningIn.MostFailures; i++) await RefusedAsync(visitor, "wrong password here");
        Assert.Equal(AuditKind.LockedOut, (await clinic.AuditAsync())[^1]);
        await RefusedAsync(visitor, PeopleClinic.Password);

        clinic.Clock.Forward(SigningIn.LockedFor);
        await visitor.DoneAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
    }

    [Fact]
    public async Task An_address_that_fails_and_fails_is_shut_for_every_account()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("d-07", Role.Diagnostician);
        using var visitor = clinic.Visitor();
        for (int i = 0; i < AddressTries.Most; i++) (await visitor.PostAsync("/api/set-up", ("code", "WRONG"))).Dispose();
        await RefusedAsync(visitor, PeopleClinic.Password);
        clinic.Clock.Forward(AddressTries.Counts);
        await visitor.DoneAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
    }

    private static async Task RefusedAsync(Visitor visitor, string password)
    {
        using var answer = await visitor.PostAsync("/api/sessions", ("name", "d-07"), ("password", password));
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    /// <summary>Every problem carries the number of its request.</summary>
    private static string WithoutNumber(string problem) => problem[..problem.IndexOf("\"traceId\"", StringComparison.Ordinal)];
}
