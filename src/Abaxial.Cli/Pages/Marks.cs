using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>Shapes that say the same without colour, on paper or on a plain terminal.</summary>
internal static class Marks
{
    private static readonly string[] Shapes = ["⊘", "◔", "◑", "◕", "●"];
    private static readonly string[] AsciiShapes = ["(/)", "(.)", "(-)", "(+)", "(#)"];

    /// <summary>A circle that is the fuller the more sure late blight is; struck through where it is ruled out.</summary>
    public static string Of(Standing standing, bool ascii) => (ascii ? AsciiShapes : Shapes)[(int)standing];

    /// <summary>A line from 0 to 100 % with the band drawn thick and the chance as a dot on it.</summary>
    /// <param name="chance">What to draw.</param>
    /// <param name="columns">How long the line is, at least 2.</param>
    /// <param name="ascii">Whether only plain characters can be shown.</param>
    public static string Bar(CauseChance chance, int columns, bool ascii)
    {
        int At(double probability) => (int)Math.Round(probability * (columns - 1), MidpointRounding.AwayFromZero);
        (char track, char band, char dot) = ascii ? ('.', '=', 'O') : ('·', '━', '●');
        var line = new char[columns];
        Array.Fill(line, track);
        line.AsSpan(At(chance.Low)..(At(chance.High) + 1)).Fill(band);
        line[At(chance.Probability)] = dot;
        return new string(line);
    }
}
