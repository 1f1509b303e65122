namespace Abaxial.Web.Photographs;

/// <summary>A size that photographs are shown in.</summary>
/// <param name="Name">As it stands in addresses.</param>
/// <param name="LongestSide">Pixels at most; a smaller photograph is not made larger.</param>
/// <param name="Quality">Of the JPEG, from 1 to 100.</param>
public sealed record PhotographSize(string Name, int LongestSide, int Quality)
{
    /// <summary>For lists.</summary>
    public static readonly PhotographSize Thumb = new("thumb", 320, 82);

    /// <summary>To work on, and what leaves the clinic. At this quality colors are kept at full resolution: halos and lesions are told by them.</summary>
    public static readonly PhotographSize Work = new("work", 2048, 90);

    /// <summary>Those that are made from the original, the larger first.</summary>
    internal static readonly PhotographSize[] Derived = [Work, Thumb];

    /// <summary>The original as it came; no size that is made.</summary>
    internal const string Original = "original";
}
