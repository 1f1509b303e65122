using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weather;
using nietras.SeparatedValues;

namespace Abaxial.Files.Weather;

/// <summary>
/// NOAA GHCN-hourly: values between bars, times in UTC as one column DATE or as five, °C, percent, mm and m/s. The quality codes of the source are not judged:
/// the project's own quality control is.
/// </summary>
internal static class GhcnHourlyFiles
{
    private static readonly CellNumber Numbers = new(["-9999", "99999"]);

    private static readonly string[] Parts = ["Year", "Month", "Day", "Hour", "Minute"];

    private static readonly (string Name, Column Column)[] Known =
    [
        ("temperature", Column.Temperature), ("relative_humidity", Column.Humidity), ("dew_point_temperature", Column.DewPoint), ("precipitation", Column.Rain), ("wind_speed", Column.Wind),
    ];

    public static bool IsFirstLine(string line)
    {
        string[] names = line.Split('|', StringSplitOptions.TrimEntries);
        return names.Length > 5 && (Table.Find(names, "Station_ID") ?? Table.Find(names, "STATION")) is not null && Table.Find(names, "temperature") is not null;
    }

    public static StationRecord Read(Stream stream, StationClock clock, StationRecord draft)
    {
        using var reader = Table.Open(stream, '|');
        reader.MoveNext();
        string[] header = Table.Cells(reader.Current);
        var columns = Known.Where(known => Table.Find(header, known.Name) is not null).Select(known => new SourceColumn(Table.Require(header, known.Name), known.Column, Unit.Plain));
        var layout = new HourlyLayout { Columns = [.. columns], Numbers = Numbers, TimeName = Table.Find(header, "DATE") is { } at ? header[at] : "Hour", TimeOf = TimeOf(header) };
        return HourlyTable.Read(reader, header, layout, clock, draft);
    }

    private static TimeOfRow TimeOf(string[] header)
    {
        if (Table.Find(header, "DATE") is { } date)
        {
            return row =>
            {
                var cell = row[date].Span.Trim();
                if (!RowTime.TryParse(cell, out var time)) throw new RefusedException(row.LineNumberFrom, header[date], cell.ToString(), "a time in UTC: 2026-07-14T09:51:00");
                return time with { OffsetMinutes = time.OffsetMinutes ?? 0 };
            };
        }

        ImmutableArray<int> parts = [.. Parts.Select(name => Table.Require(header, name))];
        return row => RowParts.TimeOf(row, header, parts) with { OffsetMinutes = 0 };
    }
}

/// <summary>Times that stand in several columns: year, month, day, hour, and minute if any.</summary>
internal static class RowParts
{
    public static RowTime TimeOf(SepReader.Row row, string[] header, ImmutableArray<int> columns)
    {
        Span<int> parts = stackalloc int[5];
        for (int i = 0; i < columns.Length; i++)
        {
            var cell = row[columns[i]].Span.Trim();
            if (!int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out parts[i])) throw new RefusedException(row.LineNumberFrom, header[columns[i]], cell.ToString(), "a whole number");
        }

        bool isTime = RowTime.TryDay(parts[0], parts[1], parts[2], out var day) && parts[3] <= 24 && parts[4] <= 59;
        if (!isTime) throw new RefusedException(row.LineNumberFrom, header[columns[0]], string.Join('-', parts.ToArray()), "a day and an hour that there are");
        return new RowTime(RowTime.SecondsOf(day) + (parts[3] * 3600L) + (parts[4] * 60L), null);
    }
}
