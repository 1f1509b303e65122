using System.Buffers.Binary;

namespace Abaxial.Web.Photographs;

/// <summary>The boxes that a HEIC is made of (ISO/IEC 14496-12): the decoder looks at those that the picture needs alone, and would take a file whose end is missing.</summary>
internal static class HeicBoxes
{
    /// <summary>Whether a box up to the one with the pictures says that it is longer than the file. What telephones append behind it need not be boxes.</summary>
    public static bool BreakOff(Stream file)
    {
        Span<byte> head = stackalloc byte[16];
        long at = 0;
        while (at + 8 <= file.Length)
        {
            file.Position = at;
            int read = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            long length = BinaryPrimitives.ReadUInt32BigEndian(head);
            if (length == 0) return false; // to the end of the file
            if (length == 1) length = read < 16 ? long.MaxValue : BinaryPrimitives.ReadInt64BigEndian(head[8..]);
            if (length < 8 || length > file.Length - at) return true;
            if (head[4..8].SequenceEqual("mdat"u8)) return false;
            at += length;
        }

        return false;
    }
}
