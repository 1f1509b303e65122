using System.Net;
using System.Net.Http.Json;
using Abaxial.App.Tests.Clinics.People;
using Abaxial.Data.People;
using Abaxial.Web.People;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>Somebody of the clinic, by id, role and areas.</summary>
internal sealed record Somebody(string Id, Role Role, params string[] Areas);

/// <summary>One person of every role, and how they come in.</summary>
internal static class Roles
{
    public static Somebody Submitter { get; } = new("g-11", Role.Submitter);

    public static Somebody Scout { get; } = new("s-02", Role.Scout, "Kestle Bight");

    public static Somebody Diagnostician { get; } = new("d-01", Role.Diagnostician);

    public static Somebody Lead { get; } = new("l-01", Role.Lead);

    public static Somebody Administrator { get; } = new("a-01", Role.Administrator);

    public static Somebody[] All { get; } = [Submitter, Scout, Diagnostician, Lead, Administrator];

    /// <summary>A clinic in which one person of every role has an account.</summary>
    public static async Task<PeopleClinic> StartAsync()
    {
        var clinic = await PeopleClinic.StartAsync();
        foreach (var one in All)
        {
            await using var scope = clinic.App.Services.CreateAsyncScope();
            await scope.ServiceProvider.GetRequiredService<PersonChanges>().AddAsync(new PersonWanted(one.Id, one.Id, $"Person {one.Id}", "", [.. one.Areas]), one.Role, PeopleClinic.Password, new AuditNote(AuditKind.Invited, null), TestContext.Current.CancellationToken);
        }

        return clinic;
    }

    /// <summary>A client in which nobody is signed in; it says that its requests come from the site itself.</summary>
    public static HttpClient Stranger(PeopleClinic clinic)
    {
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = clinic.Address };
        client.DefaultRequestHeaders.Add("Sec-Fetch-Site", "same-origin");
        return client;
    }

    /// <summary>A client in which somebody is signed in.</summary>
    public static async Task<HttpClient> ClientAsync(PeopleClinic clinic, Somebody somebody)
    {
        var client = Stranger(clinic);
        using var answer = await client.PostAsJsonAsync(new Uri("/api/sessions", UriKind.Relative), new Dictionary<string, string> { ["name"] = somebody.Id, ["password"] = PeopleClinic.Password }, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return client;
    }
}
