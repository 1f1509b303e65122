namespace Abaxial.Files.Cases;

/// <summary>
/// The lines of a stream of bytes, one after the other, in memory that a line's greatest length bounds. Lines end with LF or CR LF, the last one also with the
/// stream. A line that is too long is passed over without being held.
/// </summary>
/// <param name="stream">Read forwards; not closed.</param>
/// <param name="longest">The greatest length of a line in bytes, without its end.</param>
internal sealed class BoundedLines(Stream stream, int longest)
{
    private const int FirstCapacity = 64 * 1024;

    // Room for one byte too many and a carriage return: with the buffer full and no line end in it, the line is too long.
    private readonly int fullCapacity = longest + 2;
    private byte[] buffer = new byte[Math.Min(FirstCapacity, longest + 2)];
    private int start, end;
    private bool isAtEnd;

    /// <summary>Whether the current line is longer than allowed; it is then not to be had.</summary>
    public bool IsTooLong { get; private set; }

    /// <summary>Whether the current line holds spaces, tabs and carriage returns alone, however many.</summary>
    public bool IsBlank { get; private set; }

    /// <summary>The current line without its end, valid until the next is asked for; empty where it is too long.</summary>
    public ReadOnlyMemory<byte> Line { get; private set; }

    /// <summary>Goes to the next line.</summary>
    /// <returns>False at the end of the stream.</returns>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public bool MoveNext()
    {
        IsTooLong = false;
        IsBlank = true;
        for (int searched = 0; ;)
        {
            int found = buffer.AsSpan(start + searched, end - start - searched).IndexOf((byte)'\n');
            if (found >= 0)
            {
                Take(searched + found, 1);
                return true;
            }

            if (isAtEnd)
            {
                if (start == end && !IsTooLong) return false;
                Take(end - start, 0);
                return true;
            }

            searched = end - start;
            if (IsTooLong || searched == fullCapacity)
            {
                IsTooLong = true;
                Pass(searched);
                searched = 0;
            }

            Fill();
        }
    }

    private void Take(int length, int ending)
    {
        var line = buffer.AsMemory(start, length);
        IsBlank &= IsBlankText(line.Span);
        if (ending > 0 && line.Span.EndsWith("\r"u8)) line = line[..^1];
        IsTooLong |= line.Length > longest;
        Line = IsTooLong ? default : line;
        start += length + ending;
    }

    private void Pass(int length)
    {
        IsBlank &= IsBlankText(buffer.AsSpan(start, length));
        start += length;
    }

    private void Fill()
    {
        if (start == end) start = end = 0;
        if (end == buffer.Length && start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            end -= start;
            start = 0;
        }

        if (end == buffer.Length) Array.Resize(ref buffer, (int)Math.Min(2L * buffer.Length, fullCapacity));
        int read = stream.Read(buffer, end, buffer.Length - end);
        isAtEnd = read == 0;
        end += read;
    }

    private static bool IsBlankText(ReadOnlySpan<byte> text) => !text.ContainsAnyExcept((byte)' ', (byte)'\t', (byte)'\r');
}
