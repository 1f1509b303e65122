using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Abaxial.Web.Photographs;
using ImageMagick;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Pictures to send: whole, large, odd.</summary>
internal static class Pictures
{
    /// <summary>What must not be found in anything that leaves the clinic.</summary>
    public static readonly string[] Marks = ["Ondrelay", "Lichtwerk", "Exif", "http://ns.adobe.com", "ICC_PROFILE", "<script", "alert("];

    static Pictures() => Decoders.Prepare(new PhotographOptions());

    public static byte[] Sample(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "pictures", name));

    /// <summary>A JPEG of so many pixels, each number another picture.</summary>
    public static byte[] Jpeg(int width = 64, int height = 48, int number = 0)
    {
        using var image = Image(width, height, number);
        return image.ToByteArray(MagickFormat.Jpeg);
    }

    /// <summary>A JPEG on its side, with everything in it that must stay in the clinic.</summary>
    public static byte[] TellingJpeg(Orientation orientation = Orientation.RightTop)
    {
        using var image = Quarters();
        var exif = new ExifProfile();
        exif.SetValue(ExifTag.GPSLatitude, [new Rational(47), new Rational(11), new Rational(23)]);
        exif.SetValue(ExifTag.GPSLatitudeRef, "N");
        exif.SetValue(ExifTag.Orientation, (ushort)orientation);
        exif.SetValue(ExifTag.Make, "Lichtwerk");
        exif.SetValue(ExifTag.ImageDescription, "Ondrelay exif");
        image.Orientation = orientation;
        image.SetProfile(exif);
        image.SetProfile(new XmpProfile(Encoding.UTF8.GetBytes("<x:xmpmeta xmlns:x='adobe:ns:meta/'>Ondrelay xmp</x:xmpmeta>")));
        image.SetProfile(ColorProfiles.SRGB);
        image.SetAttribute("comment", "Ondrelay comment");
        image.Quality = 95;
        return image.ToByteArray(MagickFormat.Jpeg);
    }

    /// <summary>A PNG written by hand: rows of one color, so that it is small whatever it unpacks to.</summary>
    public static byte[] Png(int width, int height, params (string Type, byte[] Data)[] more)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            byte[] row = new byte[1 + (width * 3)];
            for (int y = 0; y < height; y++) zlib.Write(row);
        }

        return PngOf([Header(width, height), .. more, ("IDAT", packed.ToArray()), ("IEND", [])]);
    }

    /// <summary>The header of a PNG that claims a size.</summary>
    public static (string Type, byte[] Data) Header(int width, int height)
    {
        byte[] header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2); // eight bits; red, green, blue
        return ("IHDR", header);
    }

    /// <summary>So many zeros, packed.</summary>
    public static byte[] PackedZeros(long length)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            byte[] zeros = new byte[1 << 20];
            for (long at = 0; at < length; at += zeros.Length) zlib.Write(zeros);
        }

        return packed.ToArray();
    }

    /// <summary>A JPEG whose frame claims another size than it has.</summary>
    public static byte[] JpegClaiming(int width, int height)
    {
        byte[] jpeg = Jpeg();
        int frame = jpeg.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xff, 0xc0]);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 5), (ushort)height);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 7), (ushort)width);
        return jpeg;
    }

    /// <summary>A gray JPEG in passes: each goes over all of the picture again, and takes a few bytes to ask for.</summary>
    public static byte[] JpegOfScans(int side, int scans)
    {
        byte[] table = [0xff, 0xdb, 0, 67, 0, .. Enumerable.Repeat((byte)1, 64)];
        byte[] frame = [0xff, 0xc2, 0, 11, 8, (byte)(side >> 8), (byte)side, (byte)(side >> 8), (byte)side, 1, 1, 0x11, 0];
        byte[] codes = [0xff, 0xc4, 0, 20, 0, 1, .. new byte[15], 0, 0xff, 0xc4, 0, 20, 0x10, 1, .. new byte[15], 0];
        byte[] first = [0xff, 0xda, 0, 8, 1, 1, 0, 0, 0, 0, 0], next = [0xff, 0xda, 0, 8, 1, 1, 0x10, 1, 63, 0, 0];
        return [0xff, 0xd8, .. table, .. frame, .. codes, .. first, .. Enumerable.Repeat(next, scans - 1).SelectMany(scan => scan), 0xff, 0xd9];
    }

    /// <summary>A WebP whose canvas claims another size than its picture has.</summary>
    public static byte[] WebPClaiming(int width, int height)
    {
        byte[] webp = Sample("quarters.webp");
        Assert.Equal("VP8X", Encoding.ASCII.GetString(webp, 12, 4));
        for (int i = 0; i < 3; i++)
        {
            webp[24 + i] = (byte)(width - 1 >> (8 * i));
            webp[27 + i] = (byte)(height - 1 >> (8 * i));
        }

        return webp;
    }

    /// <summary>A JPEG with a comment right after its beginning.</summary>
    public static byte[] WithComment(byte[] jpeg, string comment)
    {
        byte[] text = Encoding.UTF8.GetBytes(comment);
        return [.. jpeg[..2], 0xff, 0xfe, (byte)(text.Length + 2 >> 8), (byte)(text.Length + 2), .. text, .. jpeg[2..]];
    }

    public static byte[] PngOf(params (string Type, byte[] Data)[] chunks)
    {
        using var png = new MemoryStream();
        png.Write([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
        byte[] four = new byte[4];
        foreach (var (type, data) in chunks)
        {
            BinaryPrimitives.WriteInt32BigEndian(four, data.Length);
            png.Write(four);
            byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
            png.Write(body);
            BinaryPrimitives.WriteUInt32BigEndian(four, Checksum(body));
            png.Write(four);
        }

        return png.ToArray();
    }

    /// <summary>The color of a pixel of a JPEG.</summary>
    public static (int Red, int Green, int Blue) ColorAt(byte[] jpeg, int x, int y)
    {
        using var image = new MagickImage(jpeg, MagickFormat.Jpeg);
        using var pixels = image.GetPixels();
        var color = pixels.GetPixel(x, y).ToColor()!;
        return (color.R, color.G, color.B);
    }

    public static (int Width, int Height) SizeOf(byte[] jpeg)
    {
        using var image = new MagickImage(jpeg, MagickFormat.Jpeg);
        return ((int)image.Width, (int)image.Height);
    }

    private static MagickImage Quarters()
    {
        byte[] pixels = new byte[120 * 80 * 3];
        for (int y = 0; y < 80; y++)
        {
            for (int x = 0; x < 120; x++)
            {
                byte[] color = (x < 60, y < 40) switch { (true, true) => [220, 30, 30], (false, true) => [30, 160, 40], (true, false) => [30, 50, 200], _ => [240, 240, 240] };
                color.CopyTo(pixels, ((y * 120) + x) * 3);
            }
        }

        return Of(pixels, 120, 80);
    }

    private static MagickImage Image(int width, int height, int number)
    {
        byte[] pixels = new byte[width * height * 3];
        for (int i = 0; i < pixels.Length; i++) pixels[i] = (byte)((i / 3) + (number * 31) + (i % 3 * number / 7));
        for (int i = 0; i < Math.Min(32, pixels.Length / 24); i++) pixels.AsSpan(i * 24, 24).Fill((number >> i & 1) == 0 ? (byte)20 : (byte)230);
        return Of(pixels, width, height);
    }

    private static MagickImage Of(byte[] pixels, int width, int height) => new(pixels, new PixelReadSettings((uint)width, (uint)height, StorageType.Char, PixelMapping.RGB));

    /// <summary>CRC-32 as PNG has it.</summary>
    private static uint Checksum(byte[] bytes)
    {
        uint rest = uint.MaxValue;
        foreach (byte one in bytes)
        {
            rest ^= one;
            for (int bit = 0; bit < 8; bit++) rest = (rest & 1) != 0 ? (rest >> 1) ^ 0xedb88320 : rest >> 1;
        }

        return ~rest;
    }
}
