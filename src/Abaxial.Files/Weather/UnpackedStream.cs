using System.IO.Compression;

namespace Abaxial.Files.Weather;

/// <summary>
/// The plain bytes of gzip data. The framework's stream takes data that break off for data that end; here a member of our own is put behind the last, and only
/// where it comes out whole did the one before it end whole.
/// </summary>
internal sealed class UnpackedStream : ForwardStream
{
    private static readonly byte[] Mark = [.. "\u0001the end of the packed data\u0001"u8];
    private static readonly byte[] PackedMark = Pack(Mark);

    private readonly GZipStream packed;
    private readonly byte[] held = new byte[64 * 1024];
    private int length;
    private bool isAtEnd;

    private UnpackedStream(GZipStream packed) => this.packed = packed;

    /// <summary>Opens packed data.</summary>
    /// <param name="head">The bytes of it that were read already.</param>
    /// <param name="rest">The others.</param>
    public static UnpackedStream Open(byte[] head, Stream rest) => new(new GZipStream(new JoinedStream(head, rest, PackedMark), CompressionMode.Decompress));

    /// <exception cref="InvalidDataException">The data are damaged, or break off.</exception>
    public override int Read(Span<byte> buffer)
    {
        while (length <= Mark.Length && !isAtEnd)
        {
            int read = packed.Read(held.AsSpan(length));
            length += read;
            isAtEnd = read == 0;
        }

        if (isAtEnd && !held.AsSpan(0, length).EndsWith(Mark)) throw new InvalidDataException("The data break off.");
        int ready = Math.Min(buffer.Length, length - Mark.Length);
        held.AsSpan(0, ready).CopyTo(buffer);
        held.AsSpan(ready, length - ready).CopyTo(held);
        length -= ready;
        return ready;
    }

    private static byte[] Pack(byte[] bytes)
    {
        using var stream = new MemoryStream();
        using (var gzip = new GZipStream(stream, CompressionLevel.Fastest)) gzip.Write(bytes);
        return stream.ToArray();
    }
}
