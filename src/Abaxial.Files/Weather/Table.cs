using System.Globalization;
using nietras.SeparatedValues;

namespace Abaxial.Files.Weather;

/// <summary>Opens a table of separated values, and says what is wrong with one.</summary>
internal static class Table
{
    public static SepReader Open(Stream stream, char separator) => new Sep(separator).Reader(options => options with
    {
        HasHeader = false,              // Its reader refuses names that stand twice, and does not say where.
        DisableColCountCheck = true,    // The same for rows that are too short.
        Unescape = true,
    }).From(stream);

    /// <summary>The cells of a row, trimmed.</summary>
    public static string[] Cells(SepReader.Row row)
    {
        var cells = new string[row.ColCount];
        for (int i = 0; i < cells.Length; i++) cells[i] = row[i].Span.Trim().TrimStart('\uFEFF').ToString();
        return cells;
    }

    public static bool IsBlank(SepReader.Row row) => row.ColCount == 1 && row[0].Span.IsWhiteSpace();

    public static void RequireColumns(SepReader.Row row, int count)
    {
        if (row.ColCount == count) return;
        throw new RefusedException(row.LineNumberFrom, null, Count(row.ColCount), $"{Count(count)}, as in the header");
    }

    /// <summary>The place of a column by its name; null where the header lacks it.</summary>
    public static int? Find(string[] header, string name)
    {
        int at = Array.FindIndex(header, column => column.Equals(name, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? null : at;
    }

    /// <summary>The place of a column that must be there, once.</summary>
    public static int Require(string[] header, string name)
    {
        int at = Find(header, name) ?? throw new RefusedException(1, name, $"a header without it: {string.Join(", ", header.Take(12))}", $"a column {name}");
        if (Array.FindLastIndex(header, column => column.Equals(name, StringComparison.OrdinalIgnoreCase)) != at) throw new RefusedException(1, name, "the column twice", "the column once");
        return at;
    }

    private static string Count(int columns) => string.Create(CultureInfo.InvariantCulture, $"{columns} {(columns == 1 ? "column" : "columns")}");
}
