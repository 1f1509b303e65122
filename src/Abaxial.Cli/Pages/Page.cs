using System.Text;

namespace Abaxial.Cli.Pages;

/// <summary>How a piece of text stands out on a terminal that shows colour.</summary>
internal enum Tone
{
    Plain,
    Strong,
    Faint,
    Danger,
    Care,
    Calm,
}

/// <summary>Text for people: wrapped to the columns there are, coloured where that is wanted, in plain characters where only those can be shown.</summary>
internal sealed class Page(TextWriter writer, Terminal terminal)
{
    public int Width => terminal.Width;

    public bool Ascii => terminal.Ascii;

    public void Blank() => writer.Write('\n');

    public void Rule() => Line(new string(Ascii ? '-' : '─', Width), Tone.Faint);

    public void Heading(string text)
    {
        Blank();
        Text(text, indent: 0, tone: Tone.Strong);
    }

    /// <summary>One line, not wrapped.</summary>
    public void Line(string text, Tone tone = Tone.Plain)
    {
        writer.Write(Toned(Plain(text.TrimEnd()), tone));
        writer.Write('\n');
    }

    /// <summary>A paragraph.</summary>
    /// <param name="text">The text.</param>
    /// <param name="indent">Columns before every line.</param>
    /// <param name="hanging">Columns more before every line but the first.</param>
    /// <param name="tone">How it stands out.</param>
    public void Text(string text, int indent = 2, int hanging = 0, Tone tone = Tone.Plain)
    {
        foreach (string line in Wrap(text, Width, indent, hanging)) Line(line, tone);
    }

    /// <summary>Two columns; the second is wrapped beside the first.</summary>
    public void Item(string label, string text, int columns, int indent = 2)
    {
        string first = label.Length >= columns ? label + " " : label.PadRight(columns);
        Text(first + text, indent, columns);
    }

    /// <summary>A text cut to columns, with a sign that it was cut.</summary>
    public static string Cut(string text, int columns) => text.Length <= columns ? text : $"{text.AsSpan(0, columns - 1)}…";

    private static IEnumerable<string> Wrap(string text, int width, int indent, int hanging)
    {
        var line = new StringBuilder().Append(' ', indent);
        int margin = indent, start = 0;
        while (start < text.Length)
        {
            // A run of spaces belongs to the word before it, so that columns set by spaces stay.
            int end = EndOfWord(text, start);
            int next = end;
            while (next < text.Length && text[next] == ' ') next++;
            if (line.Length > margin && line.Length + end - start > width)
            {
                yield return line.ToString();
                margin = indent + hanging;
                line.Clear().Append(' ', margin);
            }

            line.Append(text, start, next - start);
            start = next;
        }

        yield return line.ToString();
    }

    /// <summary>A number and the percent sign after it stay on one line.</summary>
    private static int EndOfWord(string text, int start)
    {
        int end = text.IndexOf(' ', start);
        while (end >= 0 && end + 1 < text.Length && text[end + 1] == '%') end = text.IndexOf(' ', end + 1);
        return end < 0 ? text.Length : end;
    }

    private string Toned(string text, Tone tone) => !terminal.Colour || tone == Tone.Plain ? text : $"\u001b[{Code(tone)}m{text}\u001b[0m";

    private static string Code(Tone tone) => tone switch
    {
        Tone.Strong => "1",
        Tone.Faint => "2",
        Tone.Danger => "1;31",
        Tone.Care => "1;33",
        _ => "1;32",
    };

    private string Plain(string text)
    {
        if (!Ascii) return text;
        var plain = new StringBuilder(text.Length);
        foreach (char sign in text)
        {
            plain.Append(sign switch
            {
                '–' or '—' or '−' => "-",
                '…' => "...",
                '’' or '‘' => "'",
                '“' or '”' => "\"",
                'µ' => "u",
                '°' => " degrees ",
                '·' => "-",
                '×' => "x",
                '→' => "->",
                '≥' => ">=",
                '\u00a0' => " ",
                < '\u0080' => sign.ToString(),
                _ => "?",
            });
        }

        return plain.ToString();
    }
}
