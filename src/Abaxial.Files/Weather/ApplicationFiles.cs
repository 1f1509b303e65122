using System.Collections.Immutable;
using Abaxial.Weather.Sprays;

namespace Abaxial.Files.Weather;

/// <summary>Reads what was applied: a row a material, with the date, the FRAC code and the active ingredient as it was typed. Rows of one date were one tank.</summary>
public static class ApplicationFiles
{
    private const int LongestIngredient = 100;
    private static readonly string[] Units = ["g", "kg", "mg", "l", "ml", "cl", "%", "oz", "lb", "lbs", "pt", "qt", "gal", "fl", "ppm"];
    private static readonly string[] Names = ["date", "frac", "ingredient"];

    /// <summary>Reads a table.</summary>
    /// <param name="stream">CSV in UTF-8 with the columns date, frac and ingredient; others are not read.</param>
    /// <param name="fileName">The file's name, for the refusal.</param>
    public static ApplicationReading Read(Stream stream, string fileName)
    {
        ArgumentNullException.ThrowIfNull(stream);
        try
        {
            using var guarded = GuardedStream.Open(stream, out _);
            return Read(guarded);
        }
        catch (RefusedException refused)
        {
            return new ApplicationReading([], [], refused.In(fileName));
        }
        catch (NotSupportedException)
        {
            return new ApplicationReading([], [], new RecordRefusal(fileName, 0, null, "a row without end", ["quotes that are closed"]));
        }
    }

    private static ApplicationReading Read(GuardedStream stream)
    {
        using var reader = Table.Open(stream, ',');
        if (!reader.MoveNext()) throw new RefusedException(0, null, "an empty file", "a header and rows");
        string[] header = Table.Cells(reader.Current);
        int[] at = [.. Names.Select(name => Table.Require(header, name))];
        var byDay = new SortedDictionary<DateOnly, List<Material>>();
        while (reader.MoveNext())
        {
            var row = reader.Current;
            if (Table.IsBlank(row)) continue;
            Table.RequireColumns(row, header.Length);
            string[] cells = [.. at.Select(column => reader.Current[column].Span.Trim().ToString())];
            RefusedException Wrong(int column, string accepted) => new(reader.Current.LineNumberFrom, header[at[column]], cells[column], accepted);
            if (!RowTime.TryDay(cells[0], out var day)) throw Wrong(0, "a date: 2026-07-14");
            if (!FracCode.TryParse(cells[1], out string code)) throw Wrong(1, "a FRAC code: 11, M05, P07");
            if (cells[2].Length is 0 or > LongestIngredient || HasDose(cells[2])) throw Wrong(2, "the active ingredient alone, without brand or dose");
            if (!byDay.TryGetValue(day, out var tank)) byDay.Add(day, tank = []);
            tank.Add(new Material(code, cells[2]));
        }

        if (byDay.Count == 0) throw new RefusedException(0, null, "no rows under the header", "a row a material");
        var unknown = header.Where(name => !Names.Contains(name, StringComparer.OrdinalIgnoreCase));
        return new ApplicationReading([.. byDay.Select(day => new Application(day.Key, [.. day.Value]))], [.. unknown], null);
    }

    /// <summary>A number with a unit of amount after it. Doses are the label's; none is kept here.</summary>
    private static bool HasDose(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsAsciiDigit(text[i]) || (i + 1 < text.Length && (char.IsAsciiDigit(text[i + 1]) || text[i + 1] is '.' or ','))) continue;
            var rest = text.AsSpan(i + 1).TrimStart();
            int end = rest.IndexOfAny(' ', '/', '.');
            if (Units.Contains((end < 0 ? rest : rest[..end]).ToString(), StringComparer.OrdinalIgnoreCase)) return true;
        }

        return false;
    }
}

/// <summary>Applications, or why they were refused.</summary>
/// <param name="Applications">In order of days, one a day.</param>
/// <param name="UnknownColumns">Columns that nothing is known of; they were not read.</param>
/// <param name="Refusal">Why the file was refused; null where it was not.</param>
public sealed record ApplicationReading(ImmutableArray<Application> Applications, ImmutableArray<string> UnknownColumns, RecordRefusal? Refusal);
