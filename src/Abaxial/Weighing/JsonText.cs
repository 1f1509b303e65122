using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace Abaxial.Weighing;

/// <summary>What a parser of JSON leaves unchecked or says badly: the bytes inside strings, and what stands where the text stops being JSON.</summary>
internal static class JsonText
{
    /// <summary>What in a string is no text: a byte that is not UTF-8, or half of a surrogate pair written as an escape; null where all of it is text.</summary>
    public static string? FaultOf(ReadOnlySpan<byte> between, bool hasEscapes)
    {
        if (!Utf8.IsValid(between)) return Byte(FirstInvalid(between));
        return hasEscapes ? LoneSurrogate(between) : null;
    }

    /// <summary>The word, number or sign that keeps a text from being JSON, with its line and byte, both from 1.</summary>
    public static string Offending(ReadOnlySpan<byte> utf8, JsonException fault)
    {
        long line = fault.LineNumber ?? 0, byteInLine = fault.BytePositionInLine ?? 0;
        int start = 0;
        for (long passed = 0; passed < line; passed++) start += utf8[start..].IndexOf((byte)'\n') + 1;
        int first = (int)Math.Min(start + byteInLine, utf8.Length), end = first;
        bool isInText = first < utf8.Length && utf8[first] < ' ';     // a control character in a string; what stands before it is sound
        while (!isInText && first < utf8.Length && first > start && IsWordPart(utf8[first - 1])) first--;
        while (end < utf8.Length && IsWordPart(utf8[end])) end++;
        string found = first == utf8.Length ? "the end of the text" : end > first ? Encoding.ASCII.GetString(utf8[first..Math.Min(end, first + 40)]) : OneSign(utf8[first..]);
        return string.Create(CultureInfo.InvariantCulture, $"{found} (line {line + 1}, byte {first - start + 1})");
    }

    private static bool IsWordPart(byte value) => char.IsAsciiLetterOrDigit((char)value) || value is (byte)'.' or (byte)'+' or (byte)'-' or (byte)'_';

    private static string OneSign(ReadOnlySpan<byte> rest)
    {
        bool isSign = Rune.DecodeFromUtf8(rest, out var rune, out _) == System.Buffers.OperationStatus.Done && !Rune.IsControl(rune);
        return isSign ? rune.ToString() : Byte(rest[0]);
    }

    private static string Byte(byte value) => $"byte 0x{value:X2}";

    private static byte FirstInvalid(ReadOnlySpan<byte> utf8)
    {
        while (Rune.DecodeFromUtf8(utf8, out _, out int length) == System.Buffers.OperationStatus.Done) utf8 = utf8[length..];
        return utf8[0];
    }

    private static string? LoneSurrogate(ReadOnlySpan<byte> between)
    {
        string? high = null;
        for (int i = 0; i < between.Length; i++)
        {
            if (between[i] != (byte)'\\')
            {
                if (high is not null) return high;
                continue;
            }

            bool isUnicode = between[i + 1] == (byte)'u';
            char unit = isUnicode ? (char)ushort.Parse(between.Slice(i + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) : ' ';
            if (high is not null != char.IsLowSurrogate(unit)) return high ?? Escape(unit);
            high = char.IsHighSurrogate(unit) ? Escape(unit) : null;
            i += isUnicode ? 5 : 1;
        }

        return high;
    }

    private static string Escape(char unit) => $"\\u{(int)unit:x4}";
}
