using System.Net;
using Abaxial.Data.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.People;

public sealed class SetUpTests
{
    private static readonly (string, string)[] Administrator = [("name", "orla"), ("displayName", "Orla Tenney"), ("password", PeopleClinic.Password)];

    [Fact]
    public async Task The_code_of_the_console_makes_one_administrator()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        string code = clinic.SetUp.Current!;
        using var visitor = clinic.Visitor();
        using var made = await visitor.SubmitAsync("/set-up", "/api/set-up", [("code", code), .. Administrator]);
        Assert.Equal((HttpStatusCode.SeeOther, "/people"), (made.StatusCode, made.Headers.Location!.OriginalString));
        Assert.Equal(HttpStatusCode.OK, await visitor.StatusAsync("/people"));

        Assert.Null(clinic.SetUp.Current);
        using var second = clinic.Visitor();
        using var again = await second.PostAsync("/api/set-up", [("code", code), ("name", "other"), .. Administrator[1..]]);
        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
        Assert.Equal(1, await clinic.AskAsync(store => store.People.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Of_two_who_use_the_code_at_once_one_is_made()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        string code = clinic.SetUp.Current!;
        using var one = clinic.Visitor();
        using var other = clinic.Visitor();
        var answers = await Task.WhenAll(
            one.PostAsync("/api/set-up", [("code", code), .. Administrator]),
            other.PostAsync("/api/set-up", [("code", code), ("name", "other"), .. Administrator[1..]]));
        Assert.Equal(1, answers.Count(answer => answer.IsSuccessStatusCode));
        Assert.Equal(1, await clinic.AskAsync(store => store.People.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task A_wrong_code_or_a_poor_password_makes_nobody_and_leaves_the_code()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        string code = clinic.SetUp.Current!;
        using var visitor = clinic.Visitor();
        foreach (var (typed, password) in ((string, string)[])[("AAAA-AAAA-AAAA-AAAA-AAAA", PeopleClinic.Password), ("", PeopleClinic.Password), (code, "short"), (code, "password1234"), (code, "Orla Tenney 1")])
        {
            using var refused = await visitor.PostAsync("/api/set-up", [("code", typed), .. Administrator[..2], ("password", password)]);
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        }

        Assert.Equal(code, clinic.SetUp.Current);
        Assert.Equal(0, await clinic.AskAsync(store => store.People.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Where_there_is_an_administrator_a_start_makes_no_code()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        await clinic.AddAsync("a-01", Role.Administrator);
        await clinic.StartAgainAsync();
        Assert.Null(clinic.SetUp.Current);
    }

    [Fact]
    public async Task The_keys_of_forms_lie_where_only_the_program_looks()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var visitor = clinic.Visitor();
        Assert.Equal(HttpStatusCode.OK, await visitor.StatusAsync("/sign-in"));
        string folder = Path.Combine(clinic.Folder, "keys");
        Assert.NotEmpty(Directory.GetFiles(folder));
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
    }

    [Fact]
    public async Task Who_is_signed_in_stays_so_when_the_program_starts_again()
    {
        await using var clinic = await PeopleClinic.StartAsync();
        using var before = await clinic.SignedInAsync("d-07", Role.Diagnostician);
        await clinic.StartAgainAsync();
        using var after = clinic.Visitor();
        after.Cookies.Add(clinic.Address, new Cookie("abaxial", before.Session));
        Assert.Equal(HttpStatusCode.OK, await after.StatusAsync("/api/people/me"));
    }
}
