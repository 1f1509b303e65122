using System.Collections.Immutable;
using Abaxial.Weather;
using nietras.SeparatedValues;

namespace Abaxial.Files.Weather;

/// <summary>A column of a table that is read.</summary>
/// <param name="At">Its place.</param>
/// <param name="Column">What it holds.</param>
/// <param name="Unit">In which unit.</param>
internal readonly record struct SourceColumn(int At, Column Column, Unit Unit);

/// <summary>How the hourly rows of a table are read.</summary>
internal sealed record HourlyLayout
{
    public required ImmutableArray<SourceColumn> Columns { get; init; }

    /// <summary>The name of the column that a refusal of a time names.</summary>
    public required string TimeName { get; init; }

    public required TimeOfRow TimeOf { get; init; }

    public CellNumber Numbers { get; init; } = CellNumber.Canonical;

    /// <summary>Rows that another station's name keeps out: the column's place and the value that is wanted.</summary>
    public ImmutableArray<(int At, string Value)> Only { get; init; } = [];
}

/// <summary>When a row was.</summary>
internal delegate RowTime TimeOfRow(SepReader.Row row);

/// <summary>Reads hourly tables: rows in time, a column a quantity.</summary>
internal static class HourlyTable
{
    /// <summary>Reads the rows that follow the header.</summary>
    /// <param name="reader">Stands on the header.</param>
    /// <param name="header">The header's names.</param>
    /// <param name="layout">How they are read.</param>
    /// <param name="clock">The station's clock.</param>
    /// <param name="draft">What else is known of the station.</param>
    public static StationRecord Read(SepReader reader, string[] header, HourlyLayout layout, StationClock clock, StationRecord draft)
    {
        var collector = new HourCollector([.. layout.Columns.Select(column => column.Column)]);
        Span<double> values = stackalloc double[layout.Columns.Length];
        while (reader.MoveNext())
        {
            var row = reader.Current;
            if (Table.IsBlank(row)) continue;
            Table.RequireColumns(row, header.Length);
            if (!IsWanted(row, layout)) continue;
            long line = row.LineNumberFrom;
            long utc = clock.UtcOf(layout.TimeOf(row), line, layout.TimeName);
            for (int i = 0; i < values.Length; i++)
            {
                var column = layout.Columns[i];
                values[i] = column.Unit.ToSi(layout.Numbers.Read(row[column.At].Span, line, header[column.At]));
            }

            collector.Add(utc + (clock.MinutesPastHour * 60), values, line, layout.TimeName);
        }

        if (collector.Rows == 0) throw new RefusedException(0, null, "no rows under the header", "a row an hour");
        return Finish(collector, clock, draft);
    }

    public static StationRecord Finish(HourCollector collector, StationClock clock, StationRecord draft)
    {
        int standard = clock.StandardOffset;
        int wholeHours = (standard - clock.MinutesPastHour) / 60;
        return collector.Finish(wholeHours, draft with { Zone = clock.ZoneName, OffsetMinutes = standard });
    }

    private static bool IsWanted(SepReader.Row row, HourlyLayout layout)
    {
        foreach (var (at, value) in layout.Only)
        {
            if (!row[at].Span.Trim().SequenceEqual(value)) return false;
        }

        return true;
    }
}
