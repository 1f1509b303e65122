namespace Abaxial.Web.Photographs;

/// <summary>How large a photograph may be, and how much of the machine photographs may take.</summary>
public sealed record PhotographOptions
{
    /// <summary>Pixels of a megapixel.</summary>
    public const long Megapixel = 1_000_000;

    /// <summary>The largest that <see cref="MostPixels"/> may be, in megapixels: decoding one photograph of that size takes about a gigabyte.</summary>
    public const int MostMegapixels = 200;

    /// <summary>The largest that <see cref="DecodedAtOnce"/> may be.</summary>
    public const int MostAtOnce = 64;

    /// <summary>Width times height of one photograph, in pixels. 64 megapixels: what large telephones make.</summary>
    public long MostPixels { get; init; } = 64 * Megapixel;

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

    /// <summary>How long a sender may pause; more than a second, as the server looks once a second.</summary>
    public TimeSpan Grace { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Makes sure that a clinic can be run so.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It cannot; the exception names the one that is out of its range.</exception>
    internal void Check()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(MostPixels, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(MostPixels, MostMegapixels * Megapixel);
        ArgumentOutOfRangeException.ThrowIfLessThan(DecodedAtOnce, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(DecodedAtOnce, MostAtOnce);
        ArgumentOutOfRangeException.ThrowIfLessThan(Waiting, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(ReceivedAtOnce, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(LongestDecoding, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(SlowestBytesPerSecond, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(Grace, TimeSpan.FromSeconds(1));
    }
}
