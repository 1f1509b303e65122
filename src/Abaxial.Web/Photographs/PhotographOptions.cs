namespace Abaxial.Web.Photographs;

/// <summary>How large a photograph may be, and how much of the machine photographs may take.</summary>
public sealed record PhotographOptions
{
    /// <summary>Width times height of one photograph, in pixels. 64 megapixels: what large telephones make.</summary>
    public long MostPixels { get; init; } = 64_000_000;

    /// <summary>How many are decoded at once.</summary>
    public int DecodedAtOnce { get; init; } = 2;

    /// <summary>How many wait to be decoded; further ones are told to come again.</summary>
    public int Waiting { get; init; } = 64;

    /// <summary>How many are received at once; further ones are told to come again.</summary>
    public int ReceivedAtOnce { get; init; } = 16;

    /// <summary>The longest that one may take to be decoded.</summary>
    public TimeSpan LongestDecoding { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>A sender slower than this is not waited for: bytes a second, after the time of grace.</summary>
    public double SlowestBytesPerSecond { get; init; } = 1_000;

    /// <summary>How long a sender may pause.</summary>
    public TimeSpan Grace { get; init; } = TimeSpan.FromSeconds(10);
}
