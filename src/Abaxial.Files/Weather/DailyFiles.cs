using System.Collections.Immutable;
using Abaxial.Weather;
using nietras.SeparatedValues;

namespace Abaxial.Files.Weather;

/// <summary>How the rows of a daily table are read.</summary>
internal sealed record DailyLayout
{
    public required int DateAt { get; init; }

    public required SourceColumn Lowest { get; init; }

    public required SourceColumn Highest { get; init; }

    public SourceColumn? Rain { get; init; }

    public CellNumber Numbers { get; init; } = CellNumber.Canonical;

    public ImmutableArray<(int At, string Value)> Only { get; init; } = [];
}

/// <summary>Daily records: a date, the day's lowest and highest temperature, and its rain.</summary>
internal static class DailyFiles
{
    private const int MostDays = 120 * 366;
    private static readonly string[] Names = ["date", "tmin", "tmax", "rain"];

    public static bool IsHeader(IEnumerable<string> names) => Names.Take(3).All(name => names.Contains(name, StringComparer.OrdinalIgnoreCase));

    public static StationRecord Read(Stream stream, StationRecord draft, out ImmutableArray<string> unknown)
    {
        using var reader = Table.Open(stream, ',');
        if (!reader.MoveNext()) throw new RefusedException(0, null, "an empty file", "a header and rows");
        string[] header = Table.Cells(reader.Current);
        SourceColumn Column(string name, Column column) => new(Table.Require(header, name), column, Unit.Plain);
        var layout = new DailyLayout
        {
            DateAt = Table.Require(header, Names[0]),
            Lowest = Column(Names[1], Abaxial.Weather.Column.Temperature),
            Highest = Column(Names[2], Abaxial.Weather.Column.Temperature),
            Rain = Table.Find(header, Names[3]) is null ? null : Column(Names[3], Abaxial.Weather.Column.Rain),
        };
        unknown = [.. header.Where(name => !Names.Contains(name, StringComparer.OrdinalIgnoreCase))];
        return Read(reader, header, layout, draft);
    }

    public static StationRecord Read(SepReader reader, string[] header, DailyLayout layout, StationRecord draft)
    {
        var days = new SortedDictionary<int, (double Low, double High, double Rain)>();
        var twice = new List<int>();
        long rows = 0;
        int newest = int.MinValue;
        while (reader.MoveNext())
        {
            var row = reader.Current;
            if (Table.IsBlank(row)) continue;
            Table.RequireColumns(row, header.Length);
            if (layout.Only.Any(only => !RowIs(reader.Current, only.At, only.Value))) continue;
            long line = row.LineNumberFrom;
            var cell = row[layout.DateAt].Span.Trim();
            if (!RowTime.TryDay(cell, out var day)) throw new RefusedException(line, header[layout.DateAt], cell.ToString(), "a date: 2026-07-14");
            double Value(SourceColumn column) => column.Unit.ToSi(layout.Numbers.Read(reader.Current[column.At].Span, line, header[column.At]));
            if (rows > 0 && newest - day.DayNumber > 2) throw new RefusedException(line, header[layout.DateAt], cell.ToString(), "days in order within 2 days");
            if (days.ContainsKey(day.DayNumber)) twice.Add(day.DayNumber);
            days[day.DayNumber] = (Value(layout.Lowest), Value(layout.Highest), layout.Rain is { } rain ? Value(rain) : double.NaN);
            newest = Math.Max(newest, day.DayNumber);
            rows++;
            if (newest - days.First().Key > MostDays) throw new RefusedException(line, header[layout.DateAt], cell.ToString(), "a record of at most 120 years");
        }

        if (rows == 0) throw new RefusedException(0, null, "no rows under the header", "a row a day");
        int first = days.First().Key, count = newest - first + 1;
        var none = (double.NaN, double.NaN, double.NaN);
        var table = Enumerable.Range(first, count).Select(day => days.GetValueOrDefault(day, none)).ToList();
        return draft with
        {
            Days = [.. Enumerable.Range(first, count).Select(DateOnly.FromDayNumber)],
            Hours = HourTable.Of(count * StationRecord.HoursOfDay, new Dictionary<Column, double[]>()),
            Daily = new DailyTable([.. table.Select(day => day.Item1)], [.. table.Select(day => day.Item2)], layout.Rain is null ? [] : [.. table.Select(day => day.Item3)]),
            Last = (count * StationRecord.HoursOfDay) - 1,
            Rows = rows,
            Flags = [.. twice.Select(day => new Flag(FlagKind.Duplicate, null, (day - first) * StationRecord.HoursOfDay, double.NaN))],
        };
    }

    private static bool RowIs(SepReader.Row row, int at, string value) => row[at].Span.Trim().SequenceEqual(value);
}
