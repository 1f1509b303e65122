using System.Globalization;
using Abaxial.Weather;
using nietras.SeparatedValues;

namespace Abaxial.Files.Weather;

/// <summary>
/// EnergyPlus weather files. Their months come from different years, so that the order of the file rules: hours follow on from row to row, and each day keeps
/// the date that its rows print. Days run from the hour that ends at 1 to the one that ends at 24.
/// </summary>
internal static class EpwFiles
{
    private const int Fields = 35;
    private const int HourAt = 3;

    // The place of each quantity, and the value from which it is missing.
    private static readonly (int At, Column Column, double MissingFrom)[] Known =
    [
        (6, Column.Temperature, 99.9), (7, Column.DewPoint, 99.9), (8, Column.Humidity, 999), (13, Column.Radiation, 9999), (21, Column.Wind, 999), (33, Column.Rain, 999),
    ];

    public static bool IsFirstLine(string line) => line.StartsWith("LOCATION,", StringComparison.OrdinalIgnoreCase);

    public static StationRecord Read(Stream stream, StationRecord draft)
    {
        using var reader = Table.Open(stream, ',');
        int offset = 0;
        var days = new List<DateOnly>();
        var hours = Known.ToDictionary(known => known.Column, _ => new List<double>());
        var flags = new HashSet<int>();
        int first = int.MaxValue, last = -1;
        long rows = 0;
        while (reader.MoveNext())
        {
            var row = reader.Current;
            if (row[0].Span.Equals("LOCATION", StringComparison.OrdinalIgnoreCase)) draft = Location(row, draft, out offset);
            if (row[0].Span.Equals("DATA PERIODS", StringComparison.OrdinalIgnoreCase)) RequireHourly(row);
            if (row[0].Span.IsEmpty || !char.IsAsciiDigit(row[0].Span[0])) continue;
            if (row.ColCount < 22) throw new RefusedException(row.LineNumberFrom, null, string.Create(CultureInfo.InvariantCulture, $"{row.ColCount} columns"), $"{Fields} columns");
            int hour = Whole(row, HourAt, "hour");
            if (hour is < 1 or > 24) throw new RefusedException(row.LineNumberFrom, "hour", row[HourAt].ToString(), "an hour from 1 to 24");
            if (!RowTime.TryDay(Whole(row, 0, "year"), Whole(row, 1, "month"), Whole(row, 2, "day"), out var day)) throw new RefusedException(row.LineNumberFrom, "day", $"{row[0].Span}-{row[1].Span}-{row[2].Span}", "a day that there is");
            Advance(days, hours.Values, day, row.LineNumberFrom);
            int at = ((days.Count - 1) * StationRecord.HoursOfDay) + hour - 1;
            if (at < last) throw new RefusedException(row.LineNumberFrom, "hour", row[HourAt].ToString(), "hours in order");
            if (at == last) flags.Add(at);
            foreach (var (place, column, missingFrom) in Known)
            {
                double value = place < row.ColCount ? CellNumber.Canonical.Read(row[place].Span, row.LineNumberFrom, column.Word()) : double.NaN;
                hours[column][at] = value >= missingFrom ? double.NaN : value;
            }

            first = Math.Min(first, at);
            last = at;
            rows++;
        }

        if (rows == 0) throw new RefusedException(0, null, "no rows under the header", "a row an hour");
        return draft with
        {
            OffsetMinutes = offset,
            FirstClockHour = 1,
            Days = [.. days],
            Hours = HourTable.Of(days.Count * StationRecord.HoursOfDay, hours.Where(column => column.Value.Exists(value => !double.IsNaN(value))).ToDictionary(column => column.Key, column => column.Value.ToArray())),
            First = first,
            Last = last,
            Rows = rows,
            Flags = [.. flags.Order().Select(at => new Flag(FlagKind.Duplicate, null, at, double.NaN))],
        };
    }

    /// <summary>Opens the day of a row: the same, the next of the calendar whatever the years, or a later one of the same year with the days between missing.</summary>
    private static void Advance(List<DateOnly> days, IEnumerable<List<double>> hours, DateOnly day, long line)
    {
        if (days.Count > 0 && days[^1] == day) return;
        int between = 0;
        if (days.Count > 0 && !Follows(days[^1], day))
        {
            between = day.DayNumber - days[^1].DayNumber - 1;
            if (between < 0 || day.Year != days[^1].Year) throw new RefusedException(line, "day", $"{day:yyyy-MM-dd} after {days[^1]:yyyy-MM-dd}", "days in the order of the calendar");
        }

        for (int i = between; i >= 0; i--)
        {
            days.Add(day.AddDays(-i));
            foreach (var column in hours) column.AddRange(Enumerable.Repeat(double.NaN, StationRecord.HoursOfDay));
        }
    }

    private static bool Follows(DateOnly before, DateOnly day)
    {
        var next = before.AddDays(1);
        bool skipsLeapDay = next is { Month: 2, Day: 29 } && day is { Month: 3, Day: 1 };
        return (next.Month == day.Month && next.Day == day.Day) || skipsLeapDay;
    }

    private static StationRecord Location(SepReader.Row row, StationRecord draft, out int offset)
    {
        offset = 0;
        if (row.ColCount < 9) throw new RefusedException(row.LineNumberFrom, "LOCATION", string.Create(CultureInfo.InvariantCulture, $"{row.ColCount} columns"), "10 columns");
        double Number(int at, string name, SepReader.Row cells) => CellNumber.Canonical.Read(cells[at].Span, cells.LineNumberFrom, name);
        double latitude = Number(6, "latitude", row), longitude = Number(7, "longitude", row), hours = Number(8, "time zone", row);
        if (!(Math.Abs(hours) <= 15)) throw new RefusedException(row.LineNumberFrom, "time zone", row[8].ToString(), "hours ahead of UTC");
        offset = (int)Math.Round(hours * 60);
        return draft with
        {
            Zone = offset == 0 ? "UTC" : StationClock.OffsetName(offset),
            Latitude = draft.Latitude ?? (double.IsNaN(latitude) ? null : latitude),
            Longitude = draft.Longitude ?? (double.IsNaN(longitude) ? null : longitude),
        };
    }

    private static void RequireHourly(SepReader.Row row)
    {
        if (row.ColCount > 2 && row[2].Span.Trim() is not "1") throw new RefusedException(row.LineNumberFrom, "DATA PERIODS", $"{row[2].Span} rows an hour", "1 row an hour");
    }

    private static int Whole(SepReader.Row row, int at, string name) =>
        int.TryParse(row[at].Span.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : throw new RefusedException(row.LineNumberFrom, name, row[at].ToString(), "a whole number");
}
