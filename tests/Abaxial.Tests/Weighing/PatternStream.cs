namespace Abaxial.Tests.Weighing;

/// <summary>A stream that repeats a pattern up to a length without holding it, in reads of a greatest size.</summary>
internal sealed class PatternStream(byte[] pattern, long length, int most = int.MaxValue) : Stream
{
    private long position;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position
    {
        get => position;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int read = (int)Math.Min(Math.Min(count, most), length - position);
        for (int i = 0; i < read; i++) buffer[offset + i] = pattern[(position + i) % pattern.Length];
        position += read;
        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
