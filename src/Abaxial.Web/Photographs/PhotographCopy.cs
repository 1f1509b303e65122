using ImageMagick;

namespace Abaxial.Web.Photographs;

/// <summary>Writes what is shown of a photograph: its pixels, upright, in sRGB on white, as a new JPEG. No profile, position, camera, comment or byte of the file it came from.</summary>
internal static class PhotographCopy
{
    /// <summary>Makes the image smaller where it is larger than the size, and writes it. The image stays so.</summary>
    public static void Write(MagickImage image, PhotographSize size, string file)
    {
        image.FilterType = FilterType.Triangle;
        image.Resize(new MagickGeometry((uint)size.LongestSide, (uint)size.LongestSide) { Greater = true });
        image.AutoOrient(); // after it was made smaller: turning needs a second copy
        IntoStandardColors(image);
        image.BackgroundColor = MagickColors.White;
        image.Alpha(AlphaAction.Remove);
        image.Strip();
        image.Density = new Density(72);
        image.Quality = (uint)size.Quality;
        using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        image.Write(stream, MagickFormat.Jpeg);
    }

    /// <summary>Whether a copy is there and ends as a JPEG does: it is not brought to the disk at once, and after a power cut may be half there.</summary>
    public static bool IsWhole(string file)
    {
        try
        {
            using var stream = File.OpenRead(file);
            Span<byte> end = stackalloc byte[2];
            if (stream.Length < end.Length) return false;
            stream.Position = stream.Length - end.Length;
            stream.ReadExactly(end);
            return end.SequenceEqual((ReadOnlySpan<byte>)[0xff, 0xd9]);
        }
        catch (IOException)
        {
            return false;
        }
    }

    private static void IntoStandardColors(MagickImage image)
    {
        try
        {
            if (image.HasProfile("icc")) image.TransformColorSpace(ColorProfiles.SRGB);
        }
        catch (MagickException)
        {
            image.RemoveProfile("icc"); // a broken profile says nothing about the colors
        }

        image.ColorSpace = ColorSpace.sRGB;
    }
}
