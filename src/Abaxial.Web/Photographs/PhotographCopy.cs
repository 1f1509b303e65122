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
        stream.Flush(flushToDisk: true);
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
