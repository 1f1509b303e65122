namespace Abaxial.Files.Weather;

/// <summary>A time as a row has it: what the clock showed, and how far that clock was ahead of UTC where the row says so.</summary>
/// <param name="ClockSeconds">Seconds of that clock since the start of the year 1.</param>
/// <param name="OffsetMinutes">Minutes ahead of UTC; null for a local time without offset.</param>
internal readonly record struct RowTime(long ClockSeconds, int? OffsetMinutes)
{
    public const int SecondsOfDay = 86_400;

    public static long SecondsOf(DateOnly day) => (long)day.DayNumber * SecondsOfDay;

    /// <summary>Reads ISO 8601: date, T or a space, hours and minutes, seconds if any, and Z or an offset if any. 24:00 ends a day.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out RowTime time)
    {
        time = default;
        if (text.Length < 16 || text[4] != '-' || text[7] != '-' || text[10] is not ('T' or 't' or ' ') || text[13] != ':') return false;
        if (!TryDay(text[..10], out var day) || !Number(text[11..13], 24, out int hour) || !Number(text[14..16], 59, out int minute)) return false;
        var rest = text[16..];
        int second = 0;
        if (rest.Length > 0 && rest[0] == ':')
        {
            if (rest.Length < 3 || !Number(rest[1..3], 60, out second)) return false;
            rest = rest[3..];
            if (rest.Length > 0 && rest[0] is '.' or ',')
            {
                int end = rest[1..].IndexOfAnyExceptInRange('0', '9');
                if (end == 0 || rest.Length == 1) return false;
                rest = end < 0 ? [] : rest[(end + 1)..];
            }
        }

        if (hour == 24 && (minute > 0 || second > 0)) return false;
        if (!TryOffset(rest, out int? offset)) return false;
        time = new RowTime(SecondsOf(day) + (hour * 3600) + (minute * 60) + Math.Min(second, 59), offset);
        return true;
    }

    public static bool TryDay(ReadOnlySpan<char> text, out DateOnly day)
    {
        day = default;
        if (text.Length != 10 || text[4] != '-' || text[7] != '-') return false;
        if (!Number(text[..4], 9999, out int year) || !Number(text[5..7], 12, out int month) || !Number(text[8..10], 31, out int date)) return false;
        return TryDay(year, month, date, out day);
    }

    public static bool TryDay(int year, int month, int date, out DateOnly day)
    {
        bool isDay = year is >= 1 and <= 9999 && month is >= 1 and <= 12 && date >= 1 && date <= DateTime.DaysInMonth(year, month);
        day = isDay ? new DateOnly(year, month, date) : default;
        return isDay;
    }

    private static bool TryOffset(ReadOnlySpan<char> text, out int? minutes)
    {
        minutes = null;
        if (text.IsEmpty) return true;
        if (text is "Z" or "z")
        {
            minutes = 0;
            return true;
        }

        if (text[0] is not ('+' or '-') || text.Length is not (3 or 5 or 6)) return false;
        if (!Number(text[1..3], 23, out int hours)) return false;
        int rest = 0;
        if (text.Length == 5 && !Number(text[3..], 59, out rest)) return false;
        if (text.Length == 6 && (text[3] != ':' || !Number(text[4..], 59, out rest))) return false;
        minutes = (text[0] == '-' ? -1 : 1) * ((hours * 60) + rest);
        return true;
    }

    private static bool Number(ReadOnlySpan<char> text, int most, out int number)
    {
        number = 0;
        foreach (char sign in text)
        {
            if (!char.IsAsciiDigit(sign)) return false;
            number = (number * 10) + sign - '0';
        }

        return number <= most;
    }
}
