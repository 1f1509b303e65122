using System.Text.RegularExpressions;

namespace Abaxial.DrawingSheet;

/// <summary>The dark theme's colors, read from the style sheet of the panel, which is embedded here.</summary>
internal static partial class SheetColors
{
    public static IEnumerable<(string Name, string Value)> Dark()
    {
        using var stream = typeof(SheetColors).Assembly.GetManifestResourceStream("drawings.css") ?? throw new InvalidOperationException("The style sheet of the drawings is not in the assembly.");
        string css = new StreamReader(stream).ReadToEnd();
        string dark = css[css.LastIndexOf(":root[data-theme=\"dark\"]", StringComparison.Ordinal)..];
        return Declaration().Matches(dark).Select(match => (match.Groups[1].Value, match.Groups[2].Value));
    }

    [GeneratedRegex("(--drawn-[a-z-]+):\\s*(#[0-9a-f]+);")]
    private static partial Regex Declaration();
}
