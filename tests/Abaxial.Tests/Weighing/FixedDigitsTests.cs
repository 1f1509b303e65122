using System.Globalization;
using System.Numerics;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

public sealed class FixedDigitsTests
{
    [Theory]
    [InlineData(0.0, 6, "0.000000")]
    [InlineData(1.0, 6, "1.000000")]
    [InlineData(0.012345, 6, "0.012345")]
    [InlineData(0.999999499, 6, "0.999999")]
    [InlineData(0.9999995, 6, "1.000000")]      // as a double just above the half
    [InlineData(0.0000005, 6, "0.000000")]      // as a double just below the half
    [InlineData(0.00000050000001, 6, "0.000001")]
    [InlineData(-0.0000004, 6, "0.000000")]
    [InlineData(-14.2, 2, "-14.20")]
    [InlineData(0.125, 2, "0.13")]              // exactly half: away from zero
    [InlineData(-0.125, 2, "-0.13")]
    [InlineData(0.375, 2, "0.38")]
    [InlineData(2.5, 3, "2.500")]
    [InlineData(0.0625, 3, "0.063")]
    [InlineData(-0.0625, 3, "-0.063")]
    [InlineData(1.005, 2, "1.00")]              // as a double just below the half
    [InlineData(9.995, 2, "9.99")]
    [InlineData(99.9951, 2, "100.00")]
    [InlineData(double.Epsilon, 6, "0.000000")]
    [InlineData(-double.Epsilon, 6, "0.000000")]
    [InlineData(9007199254740991, 2, "9007199254740991.00")]
    [InlineData(9007199254740992, 2, "9007199254740992.00")]
    [InlineData(-1e22, 3, "-10000000000000000000000.000")]
    public void Halves_of_the_exact_value_go_away_from_zero(double value, int decimals, string text) => Assert.Equal(text, FixedDigits.ToText(value, decimals));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Only_finite_numbers_have_digits(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => FixedDigits.ToText(value, 6));

    [Fact]
    public void The_digits_agree_with_whole_number_arithmetic_of_any_length() =>
        Gen.Select(Gen.OneOf(Gen.Double[-1, 1], Gen.Double[-3000, 3000], Gen.Double, Halves), Gen.Int[1, 9])
            .Where((value, _) => double.IsFinite(value))
            .Sample((value, decimals) => Assert.Equal(Exact(value, decimals), FixedDigits.ToText(value, decimals)), iter: 20_000);

    [Fact]
    public void Greater_numbers_never_have_smaller_digits() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[0, 1e-5]).Sample((value, more) =>
            decimal.Parse(FixedDigits.ToText(value, 6), CultureInfo.InvariantCulture) <= decimal.Parse(FixedDigits.ToText(value + more, 6), CultureInfo.InvariantCulture));

    /// <summary>Numbers that are exactly half of a last decimal, and their neighbours.</summary>
    private static Gen<double> Halves => Gen.Select(Gen.Int[-100_000, 100_000], Gen.Int[-1, 1], (eighths, step) =>
        step == 0 ? eighths / 8.0 : step > 0 ? Math.BitIncrement(eighths / 8.0) : Math.BitDecrement(eighths / 8.0));

    private static string Exact(double value, int decimals)
    {
        long bits = BitConverter.DoubleToInt64Bits(Math.Abs(value));
        int exponent = (int)(bits >> 52);
        BigInteger mantissa = (bits & ((1L << 52) - 1)) | (exponent > 0 ? 1L << 52 : 0);
        int power = Math.Max(exponent, 1) - 1075;
        var unit = BigInteger.Pow(10, decimals);
        var (above, below) = power >= 0 ? (mantissa * unit << power, BigInteger.One) : (mantissa * unit, BigInteger.One << -power);
        var units = ((2 * above) + below) / (2 * below);
        string digits = units.ToString(CultureInfo.InvariantCulture).PadLeft(decimals + 1, '0');
        return $"{(value < 0 && !units.IsZero ? "-" : "")}{digits[..^decimals]}.{digits[^decimals..]}";
    }
}
