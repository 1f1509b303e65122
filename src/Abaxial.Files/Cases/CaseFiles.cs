using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Files.Cases;

/// <summary>A case of a stream.</summary>
/// <param name="Number">Which case of the stream it is, from 1; blank lines do not count.</param>
/// <param name="Reading">The case, or why it was refused.</param>
public sealed record NumberedCase(int Number, CaseReading Reading);

/// <summary>Reads case files from streams of bytes, in memory that does not grow with them.</summary>
public static class CaseFiles
{
    /// <summary>
    /// Reads a JSON Lines stream: one case a line, lines ended by LF or CR LF, the last one also by the end of the stream. A refused case does not touch the
    /// others.
    /// </summary>
    /// <param name="stream">Read forwards as cases are asked for; not closed.</param>
    /// <param name="knowledge">The knowledge that ids are looked up in.</param>
    /// <exception cref="IOException">While cases are asked for: the stream cannot be read.</exception>
    public static IEnumerable<NumberedCase> ReadLines(Stream stream, KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(knowledge);
        return Cases();

        IEnumerable<NumberedCase> Cases()
        {
            var lines = new BoundedLines(stream, CaseLimits.Bytes);
            int number = 0;
            while (lines.MoveNext())
            {
                if (lines.IsBlank) continue;
                number++;
                yield return new NumberedCase(number, lines.IsTooLong ? CaseLimits.TooLong : CaseReader.Read(lines.Line.Span, knowledge));
            }
        }
    }

    /// <summary>Reads a stream that holds one case, and no more of it than a case may be long.</summary>
    /// <inheritdoc cref="ReadLines"/>
    public static CaseReading ReadWhole(Stream stream, KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(knowledge);
        var buffer = new byte[16 * 1024];
        int length = 0;
        while (true)
        {
            int read = stream.Read(buffer, length, buffer.Length - length);
            length += read;
            if (length > CaseLimits.Bytes) return CaseLimits.TooLong;
            if (read == 0) return CaseReader.Read(buffer.AsSpan(0, length), knowledge);
            if (length == buffer.Length) Array.Resize(ref buffer, Math.Min(2 * buffer.Length, CaseLimits.Bytes + 1));
        }
    }
}
