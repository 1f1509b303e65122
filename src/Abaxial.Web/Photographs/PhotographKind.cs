using System.Buffers.Binary;
using ImageMagick;

namespace Abaxial.Web.Photographs;

/// <summary>The kinds of photographs that are taken. The bytes say which one it is: a name or a header says nothing.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="MediaType">As image/jpeg.</param>
/// <param name="Extension">How the name of a file ends, with the dot.</param>
/// <param name="Format">The one decoder that may read it.</param>
internal sealed record PhotographKind(string Name, string MediaType, string Extension, MagickFormat Format)
{
    /// <summary>How many bytes from the beginning are looked at.</summary>
    public const int HeadLength = 64;

    public static readonly PhotographKind Jpeg = new("JPEG", "image/jpeg", ".jpg", MagickFormat.Jpeg);
    public static readonly PhotographKind Png = new("PNG", "image/png", ".png", MagickFormat.Png);
    public static readonly PhotographKind WebP = new("WebP", "image/webp", ".webp", MagickFormat.WebP);
    public static readonly PhotographKind Heic = new("HEIC", "image/heic", ".heic", MagickFormat.Heic);

    public static readonly string[] Names = [Jpeg.Name, Png.Name, WebP.Name, Heic.Name];

    private static readonly PhotographKind[] All = [Jpeg, Png, WebP, Heic];

    /// <summary>The kind of what begins so; null where it is none of them.</summary>
    public static PhotographKind? Of(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith((ReadOnlySpan<byte>)[0xff, 0xd8, 0xff])) return Jpeg;
        if (head.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return Png;
        if (head.Length >= 16 && head.StartsWith("RIFF"u8) && head[8..].StartsWith("WEBPVP8"u8)) return WebP;
        return IsHeic(head) ? Heic : null;
    }

    /// <summary>The kind of a media type that was stored.</summary>
    public static PhotographKind OfStored(string mediaType) => All.First(kind => kind.MediaType == mediaType);

    /// <summary>Whether it is a WebP of several pictures: its decoder would read them all.</summary>
    public static bool IsAnimatedWebP(ReadOnlySpan<byte> head) => head.Length > 20 && head[12..].StartsWith("VP8X"u8) && (head[20] & 2) != 0;

    /// <summary>ISO/IEC 23008-12: a first box 'ftyp' whose major or compatible brands name a still picture in HEVC.</summary>
    private static bool IsHeic(ReadOnlySpan<byte> head)
    {
        if (head.Length < 16 || !head[4..].StartsWith("ftyp"u8)) return false;
        int length = (int)Math.Min(BinaryPrimitives.ReadUInt32BigEndian(head), (uint)head.Length);
        if (IsStill(head[8..12])) return true;
        if (!head[8..].StartsWith("mif1"u8)) return false;
        for (int at = 16; at + 4 <= length; at += 4)
        {
            if (IsStill(head.Slice(at, 4))) return true;
        }

        return false;
    }

    private static bool IsStill(ReadOnlySpan<byte> brand) => brand.SequenceEqual("heic"u8) || brand.SequenceEqual("heix"u8);
}
