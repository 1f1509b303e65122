using System.Collections.Immutable;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>The project's own form of a record: a header, a row an hour, columns in any order, SI units.</summary>
internal static class CanonicalFiles
{
    private const string Time = "time";

    public static StationRecord Read(Stream stream, StationClock clock, StationRecord draft, out ImmutableArray<string> unknown)
    {
        using var reader = Table.Open(stream, ',');
        if (!reader.MoveNext()) throw new RefusedException(0, null, "an empty file", "a header and rows");
        string[] header = Table.Cells(reader.Current);
        int time = Table.Require(header, Time);
        var columns = ImmutableArray.CreateBuilder<SourceColumn>();
        var others = ImmutableArray.CreateBuilder<string>();
        for (int at = 0; at < header.Length; at++)
        {
            if (at == time) continue;
            if (Columns.Find(header[at]) is not { } column) others.Add(header[at]);
            else if (columns.Any(known => known.Column == column)) throw new RefusedException(1, header[at], "the column twice", "the column once");
            else columns.Add(new SourceColumn(at, column, Unit.Plain));
        }

        if (columns.Count == 0) throw new RefusedException(1, null, $"no column of a record: {string.Join(", ", header.Take(12))}", [.. Columns.All.Select(column => column.Word())]);
        unknown = others.ToImmutable();
        var layout = new HourlyLayout
        {
            Columns = columns.ToImmutable(),
            TimeName = header[time],
            TimeOf = row =>
            {
                var cell = row[time].Span.Trim();
                return RowTime.TryParse(cell, out var parsed) ? parsed : throw new RefusedException(row.LineNumberFrom, header[time], cell.ToString(), "ISO 8601: 2026-07-14T09:00Z, 2026-07-14T09:00+01:00, or without offset where --zone names the zone");
            },
        };
        return HourlyTable.Read(reader, header, layout, clock, draft);
    }
}
