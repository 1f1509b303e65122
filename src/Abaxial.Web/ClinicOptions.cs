namespace Abaxial.Web;

/// <summary>What a clinic is told when it starts. Bound once; nothing of it changes while the program runs.</summary>
public sealed record ClinicOptions
{
    /// <summary>The folder of the store.</summary>
    public required string Store { get; init; }

    /// <summary>The address to listen on: scheme, host, port. Port 0 takes a free one.</summary>
    public Uri Address { get; init; } = new("http://127.0.0.1:5171");

    /// <summary>A clinic to look at: visitors are signed in as its diagnostician, and nothing in it is anybody's.</summary>
    public bool IsDemo { get; init; }
}
