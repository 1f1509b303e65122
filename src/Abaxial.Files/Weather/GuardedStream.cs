using System.Globalization;

namespace Abaxial.Files.Weather;

/// <summary>
/// The plain bytes of a file, unpacked where it is packed with gzip, with watch kept for what no record has: zero bytes, and lines without end. So nothing that
/// reads from it needs more memory than a line is allowed.
/// </summary>
internal sealed class GuardedStream : ForwardStream
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

    /// <summary>Opens a file's bytes.</summary>
    /// <param name="stream">Read forwards; not closed.</param>
    /// <param name="firstLine">The first line, without a byte-order mark, to tell the format by; as much of it as is at hand.</param>
    public static GuardedStream Open(Stream stream, out string firstLine)
    {
        var magic = new byte[2];
        int got = stream.ReadAtLeast(magic, magic.Length, throwOnEndOfStream: false);
        bool isPacked = got == 2 && magic[0] == 0x1F && magic[1] == 0x8B;
        var guarded = new GuardedStream(isPacked ? UnpackedStream.Open(magic, stream) : new JoinedStream(magic.AsMemory(0, got), stream, default));
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
}
