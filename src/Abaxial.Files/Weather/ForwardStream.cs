namespace Abaxial.Files.Weather;

/// <summary>A stream that can only be read forwards.</summary>
internal abstract class ForwardStream : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public abstract override int Read(Span<byte> buffer);

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}

/// <summary>Bytes that were read already, the rest of a stream, and bytes to follow it.</summary>
internal sealed class JoinedStream(ReadOnlyMemory<byte> first, Stream rest, ReadOnlyMemory<byte> last) : ForwardStream
{
    private ReadOnlyMemory<byte> first = first, last = last;

    public override int Read(Span<byte> buffer)
    {
        if (!first.IsEmpty) return Take(ref first, buffer);
        int read = rest.Read(buffer);
        return read > 0 ? read : Take(ref last, buffer);
    }

    private static int Take(ref ReadOnlyMemory<byte> bytes, Span<byte> buffer)
    {
        int taken = Math.Min(buffer.Length, bytes.Length);
        bytes.Span[..taken].CopyTo(buffer);
        bytes = bytes[taken..];
        return taken;
    }
}
