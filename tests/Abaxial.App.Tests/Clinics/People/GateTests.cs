using System.Net;
using Abaxial.Data.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class GateTests
{
    [Fact]
    public async Task In_a_clinic_nobody_is_signed_in_by_themselves()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = clinic.Visitor();
        Assert.Equal(HttpStatusCode.Unauthorized, await visitor.StatusAsync("/api/people/me"));
        Assert.Equal(HttpStatusCode.Unauthorized, await visitor.StatusAsync("/api/samples"));
        using var page = await visitor.GetAsync("/?page=2");
        Assert.Equal((HttpStatusCode.SeeOther, "/sign-in?returnUrl=%2F%3Fpage%3D2"), (page.StatusCode, page.Headers.Location!.OriginalString));
    }

    [Fact]
    public async Task In_a_demo_a_visitor_is_its_diagnostician_and_keeps_no_account()
    {
        await using var clinic = await PeopleClinic.StartAsync(isDemo: true);
        using var visitor = clinic.Visitor();
        using var me = await visitor.GetAsync("/api/people/me");
        Assert.Contains("Hesper Dunnick", await me.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, await visitor.StatusAsync("/api/sessions"));
        Assert.Equal(HttpStatusCode.Forbidden, await visitor.StatusAsync("/api/people"));
        Assert.Null(clinic.SetUp.Current);
    }

    [Theory]
    [InlineData("/api/sessions/end")]
    [InlineData("/api/sessions/end-others")]
    [InlineData("/api/people/me/password")]
    public async Task Another_site_cannot_send_what_a_person_sends(string path)
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        using var form = new FormUrlEncodedContent([new("password", "another long password")]);
        using var cross = new HttpRequestMessage(HttpMethod.Post, path) { Content = form };
        cross.Headers.Add("Sec-Fetch-Site", "cross-site");
        cross.Headers.TryGetValues("Sec-Fetch-Site", out _);
        using var browser = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = visitor.Cookies }) { BaseAddress = clinic.Address };
        using var refused = await browser.SendAsync(cross, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);

        using var without = new FormUrlEncodedContent([new("password", "another long password")]);
        using var own = new HttpRequestMessage(HttpMethod.Post, path) { Content = without }; // from here, but not from a page's form
        using var second = await visitor.SendAsync(own);
        Assert.Equal(HttpStatusCode.BadRequest, second.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await visitor.StatusAsync("/api/people/me"));
        await visitor.DoneAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
    }

    [Fact]
    public async Task What_is_sensitive_asks_for_the_password_again()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        clinic.Clock.Forward(TimeSpan.FromHours(1));
        using var late = await visitor.PostAsync("/api/people/me/pin", ("pin", "2580"));
        Assert.Equal(HttpStatusCode.Forbidden, late.StatusCode);
        await visitor.DoneAsync("/api/sessions/proof", ("password", PeopleClinic.Password));
        await visitor.DoneAsync("/api/people/me/pin", ("pin", "2580"));
    }

    [Fact]
    public async Task Only_the_administrator_keeps_people_and_sees_no_samples()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var lead = await clinic.SignedInAsync("l-01", Role.Lead);
        using var administrator = await clinic.SignedInAsync("a-01", Role.Administrator);
        Assert.Equal(HttpStatusCode.Forbidden, await lead.StatusAsync("/api/people"));
        Assert.Equal(HttpStatusCode.OK, await lead.StatusAsync("/api/audit"));
        Assert.Equal(HttpStatusCode.OK, await administrator.StatusAsync("/api/people"));
        foreach (string page in (string[])["/people", "/devices", "/account", "/audit"]) Assert.Equal(HttpStatusCode.OK, await administrator.StatusAsync(page));
    }
}
