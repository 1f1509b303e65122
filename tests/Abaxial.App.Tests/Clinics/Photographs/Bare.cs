using System.Buffers.Binary;
using System.Text;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Reads a JPEG marker by marker: a second way to see what is in it.</summary>
internal static class Bare
{
    /// <summary>Only what pixels need: the JFIF header, tables, frame and scan, and nothing after the end.</summary>
    public static void HoldsPixelsAlone(byte[] jpeg)
    {
        Assert.Equal([0xff, 0xd8], jpeg[..2]);
        int at = 2;
        while (jpeg[at + 1] != 0xda)
        {
            Assert.Equal(0xff, jpeg[at]);
            int marker = jpeg[at + 1], length = BinaryPrimitives.ReadUInt16BigEndian(jpeg.AsSpan(at + 2));
            Assert.Contains(marker, (int[])[0xe0, 0xdb, 0xc0, 0xc2, 0xc4, 0xdd]); // JFIF, quantization, frame, Huffman, restart interval
            if (marker == 0xe0) Assert.Equal(("JFIF\0", 16), (Encoding.ASCII.GetString(jpeg, at + 4, 5), length)); // without a thumbnail
            at += 2 + length;
        }

        int end = jpeg.AsSpan(at).IndexOf((ReadOnlySpan<byte>)[0xff, 0xd9]);
        Assert.Equal(jpeg.Length, at + end + 2);
        string text = Encoding.Latin1.GetString(jpeg);
        Assert.All(Pictures.Marks, mark => Assert.DoesNotContain(mark, text, StringComparison.Ordinal));
    }
}
