using System.Globalization;

namespace Abaxial.Weighing;

/// <summary>Dates and times as ISO 8601 writes them in its extended form: 2026-07-14, 2026-07-14T09:30, 2026-07-14T09:30:15.5+02:00.</summary>
internal static class IsoTime
{
    public static bool IsDateOrTime(ReadOnlySpan<char> text)
    {
        if (text.Length < 10 || !TryDate(text[..10], out _)) return false;
        return text.Length == 10 || (text[10] == 'T' && IsTimeWithOffset(text[11..]));
    }

    public static bool TryDate(ReadOnlySpan<char> text, out DateOnly date) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date);

    private static bool IsTimeWithOffset(ReadOnlySpan<char> text)
    {
        int zone = text.IndexOfAny('Z', '+', '-');
        if (zone < 0) return IsTime(text);
        var offset = text[(zone + 1)..];
        bool isOffset = text[zone] == 'Z' ? offset.IsEmpty : offset.Length == 2 ? IsNumber(offset, 23) : IsClock(offset);
        return isOffset && IsTime(text[..zone]);
    }

    private static bool IsTime(ReadOnlySpan<char> text)
    {
        if (text.Length <= 5) return IsClock(text);
        if (text.Length < 8 || text[5] != ':' || !IsNumber(text[6..8], 59) || !IsClock(text[..5])) return false;
        return text.Length == 8 || (text.Length > 9 && text[8] is ('.' or ',') && !text[9..].ContainsAnyExceptInRange('0', '9'));
    }

    private static bool IsClock(ReadOnlySpan<char> text) => text.Length == 5 && text[2] == ':' && IsNumber(text[..2], 23) && IsNumber(text[3..], 59);

    private static bool IsNumber(ReadOnlySpan<char> text, int most) =>
        text.Length == 2 && char.IsAsciiDigit(text[0]) && char.IsAsciiDigit(text[1]) && ((text[0] - '0') * 10) + text[1] - '0' <= most;
}
