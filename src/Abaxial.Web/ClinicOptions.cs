using System.Collections.Immutable;
using System.Net;
using Abaxial.Data;
using Abaxial.Web.Hosting;
using Microsoft.Extensions.Logging;

namespace Abaxial.Web;

/// <summary>What a clinic is told when it starts. Bound once (<see cref="ClinicSettings"/>); nothing of it changes while the program runs.</summary>
public sealed record ClinicOptions
{
    /// <summary>The folder of the store.</summary>
    public required string Store { get; init; }

    /// <summary>How the store's PostgreSQL database is reached; null where the store is in its folder alone. It may hold a password: it is never shown.</summary>
    public string? Database { get; init; }

    /// <summary>Where the store lies.</summary>
    public StorePlace Place => StorePlace.Of(Store, Database);

    /// <summary>The addresses to listen on: scheme, host, port; at least one. Port 0 takes a free one.</summary>
    public ImmutableArray<Uri> Addresses { get; init; } = [new("http://127.0.0.1:5171")];

    /// <summary>The first of <see cref="Addresses"/>; to say one is to say that it is the only one.</summary>
    public Uri Address
    {
        get => Addresses[0];
        init => Addresses = [value];
    }

    /// <summary>The address that people and their devices use; null where it is that which the clinic listens on. Links are made with it.</summary>
    public Uri? PublicUrl { get; init; }

    /// <summary>What the clinic shows to be itself under HTTPS; null where it does not speak it.</summary>
    public ServerCertificate? Certificate { get; init; }

    /// <summary>The proxies in front of the clinic. What only they can know of a request is taken from them and from nobody else.</summary>
    public ImmutableArray<IPNetwork> Proxies { get; init; } = [];

    /// <summary>A clinic to look at: visitors are signed in as its diagnostician, and nothing in it is anybody's.</summary>
    public bool IsDemo { get; init; }

    /// <summary>Where traces and figures are sent (OpenTelemetry Protocol); null for nowhere.</summary>
    public Uri? TelemetryEndpoint { get; init; }

    /// <summary>Whether each line of the log is a JSON object.</summary>
    public bool LogsAsJson { get; init; }

    /// <summary>From which level on the program's own lines are logged.</summary>
    public LogLevel LogLevel { get; init; } = LogLevel.Information;

    /// <summary>How much one person, or one address that nobody signed in from, may ask for.</summary>
    public RequestLimits Limits { get; init; } = new();

    /// <summary>How long requests that are being answered may take to end when the program is told to stop.</summary>
    public TimeSpan StopWithin { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>Free space, MiB, below which the clinic says that it is not ready.</summary>
    public long DiskFloorMebibytes { get; init; } = 512;
}
