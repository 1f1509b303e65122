using System.Globalization;
using System.IO.Compression;

namespace Abaxial.Files.Weather;

/// <summary>
/// The plain bytes of a file, unpacked where it is packed with gzip, with watch kept for what no record has: zero bytes, and lines without end. So nothing that
/// reads from it needs more memory than a line is allowed.
/// </summary>
internal sealed class GuardedStream : Stream
{
    /// <summary>The greatest length of a line, bytes.</summary>
    public const int LongestLine = 1 << 20;

    private readonly Stream inner;
    private readonly byte[] head = new byte[64 * 1024];
    private int headLength, headRead;
    private long line = 1;
    private int lineLength;

    private GuardedStream(Stream inner) => this.inner = inner;

    /// <summary>The line that reading has come to.</summary>
    public long Line => line;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <summary>Opens a file's bytes.</summary>
    /// <param name="stream">Read forwards; not closed.</param>
    /// <param name="firstLine">The first line, without a byte-order mark, to tell the format by; as much of it as is at hand.</param>
    public static GuardedStream Open(Stream stream, out string firstLine)
    {
        var magic = new byte[2];
        int got = stream.ReadAtLeast(magic, magic.Length, throwOnEndOfStream: false);
        var whole = new Joined(magic.AsMemory(0, got), stream);
        bool isPacked = got == 2 && magic[0] == 0x1F && magic[1] == 0x8B;
        var guarded = new GuardedStream(isPacked ? new GZipStream(whole, CompressionMode.Decompress) : whole);
        firstLine = guarded.FirstLine();
        return guarded;
    }

    public override int Read(Span<byte> buffer)
    {
        int read;
        if (headRead < headLength)
        {
            read = Math.Min(buffer.Length, headLength - headRead);
            head.AsSpan(headRead, read).CopyTo(buffer);
            headRead += read;
        }
        else
        {
            read = ReadInner(buffer);
        }

        Watch(buffer[..read]);
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private string FirstLine()
    {
        while (headLength < head.Length)
        {
            int read = ReadInner(head.AsSpan(headLength));
            if (read == 0) break;
            headLength += read;
            if (head.AsSpan(0, headLength).Contains((byte)'\n')) break;
        }

        int end = head.AsSpan(0, headLength).IndexOfAny((byte)'\n', (byte)'\r');
        return System.Text.Encoding.UTF8.GetString(head, 0, end < 0 ? headLength : end).TrimStart('\uFEFF');
    }

    private int ReadInner(Span<byte> buffer)
    {
        try
        {
            return inner.Read(buffer);
        }
        catch (InvalidDataException fault)
        {
            throw new RefusedException(line, null, $"compressed data that end early or are damaged ({fault.Message})", "a whole gzip file", "a plain text file");
        }
    }

    private void Watch(ReadOnlySpan<byte> bytes)
    {
        int zero = bytes.IndexOf((byte)0);
        if (zero >= 0) bytes = bytes[..zero];
        while (bytes.Length > 0)
        {
            int end = bytes.IndexOf((byte)'\n');
            lineLength += end < 0 ? bytes.Length : end;
            if (lineLength > LongestLine)
            {
                throw new RefusedException(line, null, string.Create(CultureInfo.InvariantCulture, $"a line longer than {LongestLine} bytes"), "lines of a station record");
            }

            if (end < 0) break;
            line++;
            lineLength = 0;
            bytes = bytes[(end + 1)..];
        }

        if (zero >= 0) throw new RefusedException(line, null, "a zero byte (NUL)", "text in UTF-8");
    }

    /// <summary>Bytes that were read already, then the rest.</summary>
    private sealed class Joined(ReadOnlyMemory<byte> first, Stream rest) : Stream
    {
        private ReadOnlyMemory<byte> first = first;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(Span<byte> buffer)
        {
            if (first.IsEmpty) return rest.Read(buffer);
            int read = Math.Min(buffer.Length, first.Length);
            first.Span[..read].CopyTo(buffer);
            first = first[read..];
            return read;
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
