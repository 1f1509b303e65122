using System.Globalization;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>
/// NOAA ISD-Lite: lines without header, twelve whole numbers: year, month, day, hour (UTC), temperature and dew point in tenths of °C, pressure, wind direction,
/// wind in tenths of m/s, sky, rain of one and of six hours in tenths of mm. -9999 is missing; rain of -1 is a trace and read as 0.
/// </summary>
internal static class IsdLiteFiles
{
    private const int Fields = 12;
    private const int Missing = -9999;
    private const int Trace = -1;
    private static readonly string[] Names = ["year", "month", "day", "hour", "temperature", "dew point", "pressure", "wind direction", "wind", "sky", "rain 1 h", "rain 6 h"];

    public static bool IsFirstLine(string line)
    {
        Span<int> numbers = stackalloc int[Fields];
        return TryRead(line, numbers, out _);
    }

    public static StationRecord Read(Stream stream, StationClock clock, StationRecord draft)
    {
        var collector = new HourCollector([Column.Temperature, Column.DewPoint, Column.Wind, Column.Rain]);
        using var reader = new StreamReader(stream, leaveOpen: true);
        Span<int> numbers = stackalloc int[Fields];
        long number = 0;
        while (reader.ReadLine() is { } line)
        {
            number++;
            if (string.IsNullOrWhiteSpace(line)) continue;
            if (!TryRead(line, numbers, out int fields)) throw new RefusedException(number, fields < Fields ? Names[fields] : null, line, "twelve whole numbers with blanks between");
            if (!RowTime.TryDay(numbers[0], numbers[1], numbers[2], out var day)) throw new RefusedException(number, "day", line, "a day that there is");
            if (numbers[3] is < 0 or > 23) throw new RefusedException(number, "hour", line, "an hour from 0 to 23");
            long utc = clock.UtcOf(new RowTime(RowTime.SecondsOf(day) + (numbers[3] * 3600L), 0), number, "hour");
            collector.Add(utc + (clock.MinutesPastHour * 60), [Tenths(numbers[4]), Tenths(numbers[5]), Tenths(numbers[8]), numbers[10] == Trace ? 0 : Tenths(numbers[10])], number, "hour");
        }

        if (collector.Rows == 0) throw new RefusedException(0, null, "no rows", "a line an hour");
        return HourlyTable.Finish(collector, clock, draft);
    }

    private static double Tenths(int value) => value == Missing ? double.NaN : value / 10.0;

    private static bool TryRead(string line, Span<int> numbers, out int read)
    {
        read = 0;
        var text = line.AsSpan();
        foreach (var range in text.SplitAny(' ', '\t'))
        {
            var part = text[range];
            if (part.IsEmpty) continue;
            if (read == numbers.Length || !int.TryParse(part, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out numbers[read])) return false;
            read++;
        }

        return read == numbers.Length;
    }
}
