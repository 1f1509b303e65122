using System.Collections.Immutable;
using System.Globalization;

namespace Abaxial.Files.Weather;

/// <summary>Reads the numbers of cells: empty cells and missing-value marks as NaN.</summary>
/// <param name="marks">Marks in addition to an empty cell, NA and NaN.</param>
/// <param name="decimalSign">The decimal sign: a point or a comma.</param>
internal sealed class CellNumber(ImmutableArray<string> marks, char decimalSign = '.')
{
    private const int LongestNumber = 64;

    private readonly ImmutableArray<double> markedNumbers =
        [.. marks.Select(mark => double.TryParse(mark, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : double.NaN).Where(number => !double.IsNaN(number))];

    public static CellNumber Canonical { get; } = new([]);

    /// <exception cref="RefusedException">The cell holds something else.</exception>
    public double Read(ReadOnlySpan<char> cell, long line, string column)
    {
        cell = cell.Trim();
        if (cell.IsEmpty || cell.Equals("NA", StringComparison.OrdinalIgnoreCase) || cell.Equals("NaN", StringComparison.OrdinalIgnoreCase)) return double.NaN;
        foreach (string mark in marks)
        {
            if (cell.SequenceEqual(mark)) return double.NaN;
        }

        if (!TryNumber(cell, out double number) || !double.IsFinite(number)) throw new RefusedException(line, column, cell.ToString(), "a number", "an empty cell where the value is missing");
        return markedNumbers.Contains(number) ? double.NaN : number;
    }

    private bool TryNumber(ReadOnlySpan<char> cell, out double number)
    {
        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (decimalSign == '.') return double.TryParse(cell, Style, CultureInfo.InvariantCulture, out number);
        number = 0;
        if (cell.Length > LongestNumber || cell.Contains('.')) return false;
        Span<char> text = stackalloc char[LongestNumber];
        cell.Replace(text, decimalSign, '.');
        return double.TryParse(text[..cell.Length], Style, CultureInfo.InvariantCulture, out number);
    }
}
