using System.Net;
using System.Text;
using Abaxial.Data.People;
using Abaxial.Web.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class AppCodeTests
{
    /// <summary>RFC 6238, appendix B, the table for SHA-1; its eight digits end in our six.</summary>
    [Theory]
    [InlineData(59, "287082")]
    [InlineData(1111111109, "081804")]
    [InlineData(1111111111, "050471")]
    [InlineData(1234567890, "005924")]
    [InlineData(2000000000, "279037")]
    [InlineData(20000000000, "353130")]
    public void Codes_are_those_of_the_RFC(long seconds, string code) => Assert.Equal(code, Totp.CodeAt(Encoding.ASCII.GetBytes("12345678901234567890"), seconds / 30));

    /// <summary>RFC 4648, section 10.</summary>
    [Theory]
    [InlineData("f", "MY")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void Secrets_are_written_as_the_RFC_writes_them(string bytes, string text) => Assert.Equal(text, Totp.Text(Encoding.ASCII.GetBytes(bytes)));

    [Fact]
    public async Task Once_an_app_is_set_up_its_code_is_asked_for_and_each_works_once()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        var (secret, _) = await SetUpAsync(clinic);
        Assert.Equal(HttpStatusCode.Unauthorized, await TryAsync(clinic, ""));
        Assert.Equal(HttpStatusCode.Unauthorized, await TryAsync(clinic, Code(clinic, secret, 0))); // it was shown when the app was set up
        clinic.Clock.Forward(TimeSpan.FromMinutes(2));
        string code = Code(clinic, secret, 0);
        Assert.Equal(HttpStatusCode.Created, await TryAsync(clinic, code));
        Assert.Equal(HttpStatusCode.Unauthorized, await TryAsync(clinic, code));
        Assert.Equal(HttpStatusCode.Unauthorized, await TryAsync(clinic, Code(clinic, secret, -1))); // nor an older one
    }

    [Fact]
    public async Task A_recovery_code_stands_in_once()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        var (_, recovery) = await SetUpAsync(clinic);
        Assert.Equal(10, recovery.Distinct().Count());
        Assert.Equal(HttpStatusCode.Created, await TryAsync(clinic, recovery[3].ToLowerInvariant()));
        Assert.Equal(HttpStatusCode.Unauthorized, await TryAsync(clinic, recovery[3]));
        Assert.Equal(HttpStatusCode.Created, await TryAsync(clinic, recovery[4]));
    }

    private static async Task<(byte[] Secret, string[] Recovery)> SetUpAsync(PeopleClinic clinic)
    {
        using var person = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await person.DoneAsync("/api/people/me/app");
        Assert.Equal(HttpStatusCode.OK, await person.StatusAsync("/api/people/me/app.svg"));
        byte[] secret = (await clinic.AskAsync(store => store.People.Select(row => row.TotpSecret).SingleAsync(TestContext.Current.CancellationToken)))!;
        var told = await person.DoneAsync("/api/people/me/app/code", ("code", Code(clinic, secret, 0)));
        Assert.Equal(HttpStatusCode.NotFound, await person.StatusAsync("/api/people/me/app.svg"));
        return (secret, [.. told.GetProperty("recoveryCodes").EnumerateArray().Select(code => code.GetString()!)]);
    }

    private static string Code(PeopleClinic clinic, byte[] secret, int steps) => Totp.CodeAt(secret, (clinic.Clock.GetUtcNow().ToUnixTimeSeconds() / 30) + steps);

    private static async Task<HttpStatusCode> TryAsync(PeopleClinic clinic, string code)
    {
        using var visitor = clinic.Visitor();
        using var answer = await visitor.PostAsync("/api/sessions", ("name", "d-07"), ("password", PeopleClinic.Password), ("code", code));
        return answer.StatusCode;
    }
}
