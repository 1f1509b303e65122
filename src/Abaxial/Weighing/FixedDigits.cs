using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>
/// Numbers with a fixed count of decimals. A double is a whole number times a power of two: it is rounded from that exact value in whole numbers, halves
/// away from zero, so that no platform's arithmetic or formatting has a say.
/// </summary>
internal static class FixedDigits
{
    private const int LongestText = 340;
    private const int MostDecimals = 9;
    private const double FirstWithoutFraction = 1L << 53;

    /// <summary>Writes a number: <c>0.012346</c>, <c>-14.20</c>; never a negative zero.</summary>
    /// <param name="json">Where to write.</param>
    /// <param name="value">Any finite number.</param>
    /// <param name="decimals">How many decimals, 1 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite, or the count of decimals is out of range.</exception>
    public static void WriteFixed(this Utf8JsonWriter json, double value, int decimals)
    {
        Span<byte> text = stackalloc byte[LongestText];
        json.WriteRawValue(text[..Format(value, decimals, text)], skipInputValidation: true);
    }

    /// <inheritdoc cref="WriteFixed"/>
    public static string ToText(double value, int decimals)
    {
        Span<byte> text = stackalloc byte[LongestText];
        return Encoding.ASCII.GetString(text[..Format(value, decimals, text)]);
    }

    private static int Format(double value, int decimals, Span<byte> text)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite numbers can be written.");
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, MostDecimals);
        ulong unit = 1;
        for (int i = 0; i < decimals; i++) unit *= 10;

        double size = Math.Abs(value);
        UInt128 units = size < FirstWithoutFraction ? Units(size, unit) : 0;
        int length = 0, written;
        if (value < 0 && (units != 0 || size >= FirstWithoutFraction)) text[length++] = (byte)'-';
        if (size < FirstWithoutFraction) ((ulong)(units / unit)).TryFormat(text[length..], out written, provider: CultureInfo.InvariantCulture);
        else size.TryFormat(text[length..], out written, "F0", CultureInfo.InvariantCulture);
        length += written;
        text[length++] = (byte)'.';
        ulong rest = (ulong)(units % unit);
        for (int i = decimals - 1; i >= 0; i--)
        {
            text[length + i] = (byte)('0' + (rest % 10));
            rest /= 10;
        }

        return length + decimals;
    }

    /// <summary>A number under 2⁵³ in units of the last decimal, rounded.</summary>
    private static UInt128 Units(double size, ulong unit)
    {
        long bits = BitConverter.DoubleToInt64Bits(size);
        int exponent = (int)(bits >> 52);
        ulong mantissa = (ulong)bits & ((1UL << 52) - 1);
        if (exponent > 0) mantissa |= 1UL << 52;
        int shift = 1075 - Math.Max(exponent, 1);           // size = mantissa / 2^shift
        UInt128 scaled = (UInt128)mantissa * unit;          // under 2^83
        if (shift > 84) return 0;                           // under half a unit
        return shift == 0 ? scaled : (scaled + (UInt128.One << (shift - 1))) >> shift;
    }
}
