using System.Collections.Immutable;
using Abaxial.Weather;
using NodaTime;
using NodaTime.Text;

namespace Abaxial.Files.Weather;

/// <summary>Reads somebody else's table by a mapping.</summary>
internal static class MappedFiles
{
    private static readonly LocalDateTime YearOne = new(1, 1, 1, 0, 0);

    public static StationRecord Read(Stream stream, StationMapping mapping, StationClock clock, StationRecord draft)
    {
        using var reader = Table.Open(stream, mapping.Separator);
        if (!reader.MoveNext()) throw new RefusedException(0, null, "an empty file", "a header and rows");
        string[] header = Table.Cells(reader.Current);
        var numbers = new CellNumber(mapping.Missing, mapping.DecimalSign);
        ImmutableArray<(int, string)> only = [.. mapping.Only.Select(field => (Table.Require(header, field.Key), field.Value))];
        SourceColumn Source(MappedColumn column) => new(Table.Require(header, column.From), column.Column, column.Unit);
        if (mapping.Date is { } date)
        {
            var daily = new DailyLayout
            {
                DateAt = Table.Require(header, date),
                Lowest = Source(mapping.Columns.First(column => column.Name == "tmin")),
                Highest = Source(mapping.Columns.First(column => column.Name == "tmax")),
                Rain = mapping.Columns.FirstOrDefault(column => column.Name == "rain") is { } rain ? Source(rain) : null,
                Numbers = numbers,
                Only = only,
            };
            return DailyFiles.Read(reader, header, daily, draft);
        }

        ImmutableArray<int> time = [.. mapping.Time.Select(name => Table.Require(header, name))];
        var layout = new HourlyLayout
        {
            Columns = [.. mapping.Columns.Select(Source)],
            TimeName = header[time[0]],
            TimeOf = TimeOf(mapping, header, time),
            Numbers = numbers,
            Only = only,
        };
        return HourlyTable.Read(reader, header, layout, clock, draft);
    }

    private static TimeOfRow TimeOf(StationMapping mapping, string[] header, ImmutableArray<int> columns)
    {
        if (columns.Length > 1) return row => RowParts.TimeOf(row, header, columns);
        int at = columns[0];
        if (mapping.TimeFormat is not { } format)
        {
            return row =>
            {
                var cell = row[at].Span.Trim();
                return RowTime.TryParse(cell, out var time) ? time : throw new RefusedException(row.LineNumberFrom, header[at], cell.ToString(), "ISO 8601, or what time-format says");
            };
        }

        var pattern = LocalDateTimePattern.CreateWithInvariantCulture(format);
        return row =>
        {
            string cell = row[at].Span.Trim().ToString();
            var parsed = pattern.Parse(cell);
            if (!parsed.Success) throw new RefusedException(row.LineNumberFrom, header[at], cell, format);
            return new RowTime(Period.Between(YearOne, parsed.Value, PeriodUnits.Seconds).Seconds, null);
        };
    }
}
