namespace Abaxial.Web.Hosting;

/// <summary>How much one person, or one address that nobody signed in from, may ask for.</summary>
public sealed record RequestLimits
{
    /// <summary>Bytes of a request's body where nothing else is said: 1 MiB.</summary>
    public const long JsonBytes = 1L << 20;

    /// <summary>Bytes of a request that brings a photograph: 100 MiB and what wraps it.</summary>
    public const long UploadBytes = (100L << 20) + (64L << 10);

    /// <summary>Requests a minute, from 1. A quarter of them may come at once.</summary>
    public int RequestsPerMinute { get; init; } = 1200;

    /// <summary>Tries to sign in a minute, from 1; counted by address, as nobody is signed in yet.</summary>
    public int SignInsPerMinute { get; init; } = 10;

    /// <summary>Photographs a minute, from 1.</summary>
    public int UploadsPerMinute { get; init; } = 120;

    /// <summary>How long a request may take.</summary>
    public TimeSpan RequestTime { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How long a request that brings a photograph may take; telephones in a field are slow.</summary>
    public TimeSpan UploadTime { get; init; } = TimeSpan.FromMinutes(10);
}
