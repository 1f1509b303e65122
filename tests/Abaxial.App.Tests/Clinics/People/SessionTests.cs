using System.Net;
using Abaxial.Data.People;
using Abaxial.Web.People;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class SessionTests
{
    private const string Me = "/api/people/me";

    [Fact]
    public async Task Sessions_are_listed_and_ended_one_by_one_and_all()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var here = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        using var telephone = await clinic.SignInAsync("d-07");
        using var laptop = await clinic.SignInAsync("d-07");
        using var list = await here.GetAsync("/api/sessions");
        string listed = await list.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Firefox on Linux", listed, StringComparison.Ordinal);
        Assert.DoesNotContain(telephone.Session!, listed, StringComparison.Ordinal);

        await here.DoneAsync($"/api/sessions/{Secrets.HashOf(telephone.Session!)}/end");
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.OK), (await telephone.StatusAsync(Me), await laptop.StatusAsync(Me)));
        await here.DoneAsync("/api/sessions/end-others");
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.OK), (await laptop.StatusAsync(Me), await here.StatusAsync(Me)));
        await here.DoneAsync("/api/sessions/end");
        Assert.Equal(HttpStatusCode.Unauthorized, await here.StatusAsync(Me));
    }

    [Fact]
    public async Task The_session_of_another_is_not_there()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var one = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        using var other = await clinic.SignedInAsync("d-08", Role.Diagnostician);
        using var answer = await other.PostAsync($"/api/sessions/{Secrets.HashOf(one.Session!)}/end");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK), (answer.StatusCode, await one.StatusAsync(Me)));
    }

    [Fact]
    public async Task A_session_ends_by_itself_unused_and_after_a_week()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var idle = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        using var busy = await clinic.SignedInAsync("d-08", Role.Diagnostician);
        var used = TimeSpan.Zero;
        for (; used + TimeSpan.FromHours(11) < SessionTimes.Longest; used += TimeSpan.FromHours(11))
        {
            Assert.Equal(HttpStatusCode.OK, await busy.StatusAsync(Me));
            clinic.Clock.Forward(TimeSpan.FromHours(11));
        }

        Assert.Equal(HttpStatusCode.Unauthorized, await idle.StatusAsync(Me));
        Assert.Equal(HttpStatusCode.OK, await busy.StatusAsync(Me));
        clinic.Clock.Forward(SessionTimes.Longest - used);
        Assert.Equal(HttpStatusCode.Unauthorized, await busy.StatusAsync(Me));
    }

    [Fact]
    public async Task A_new_password_ends_every_session_but_the_new_one()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var here = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        using var elsewhere = await clinic.SignInAsync("d-07");
        string before = here.Session!;
        await here.DoneAsync("/api/people/me/password", ("password", "eleven dry stems on a bench"));
        Assert.NotEqual(before, here.Session);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Unauthorized), (await here.StatusAsync(Me), await elsewhere.StatusAsync(Me)));
        using var old = await elsewhere.PostAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password));
        Assert.Equal(HttpStatusCode.Unauthorized, old.StatusCode);
    }

    [Theory]
    [InlineData("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1", "Safari on iPhone")]
    [InlineData("Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36", "Chrome on Android")]
    [InlineData("<script>", "A browser")]
    public void A_browser_is_kept_by_its_family_alone(string userAgent, string family) => Assert.Equal(family, BrowserFamily.Of(userAgent));
}
