using Abaxial.App.Tests.Clinics.Hosting;
using Abaxial.Web.Hosting;
using Abaxial.Web.Samples;
using Microsoft.AspNetCore.Builder;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>A clinic to which people of every role come: a request says in a header who sends it.</summary>
internal static class People
{
    private const string Header = "X-Test-Visitor";

    public static Visitor Submitter { get; } = new("g-11", Role.Submitter, []);

    public static Visitor Scout { get; } = new("s-02", Role.Scout, ["Kestle Bight"]);

    public static Visitor Diagnostician { get; } = new("d-01", Role.Diagnostician, []);

    public static Visitor Lead { get; } = new("l-01", Role.Lead, []);

    public static Visitor Administrator { get; } = new("a-01", Role.Administrator, []);

    public static Visitor[] All { get; } = [Submitter, Scout, Diagnostician, Lead, Administrator];

    /// <summary>Starts it, with room for as many requests as a test sends.</summary>
    public static Task<HostedClinic> StartAsync() => HostedClinic.StartAsync(
        options => options with { Limits = new RequestLimits { RequestsPerMinute = 100_000_000, SignInsPerMinute = 1_000_000, UploadsPerMinute = 1_000_000 } },
        routes => ((IApplicationBuilder)routes).Use((context, next) =>
        {
            if (context.Request.Headers[Header].FirstOrDefault() is { } id) context.Items[typeof(Visitor)] = All.First(visitor => visitor.Id == id);
            return next(context);
        }));

    /// <summary>A client of somebody's, with cookies of their own.</summary>
    public static HttpClient ClientOf(HostedClinic clinic, Visitor visitor)
    {
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = clinic.Address };
        client.DefaultRequestHeaders.Add(Header, visitor.Id);
        return client;
    }
}
