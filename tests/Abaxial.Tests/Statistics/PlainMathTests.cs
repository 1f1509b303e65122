using Abaxial.Statistics;
using CsCheck;

namespace Abaxial.Tests.Statistics;

public sealed class PlainMathTests
{
    [Fact]
    public void Exp_is_within_two_units_in_the_last_place_of_the_platform() =>
        Gen.OneOf(Gen.Double[-745.2, 709.79], Gen.Double[-1, 1], Gen.Double[-1e-8, 1e-8], Gen.Double[-745.2, -708]).Sample(x => UnitsApart(PlainMath.Exp(x), Math.Exp(x)) <= 2, iter: 200_000, print: x => $"exp {x:R}: {PlainMath.Exp(x):R} {Math.Exp(x):R}");

    [Fact]
    public void Log_is_within_two_units_in_the_last_place_of_the_platform() =>
        Gen.OneOf(Gen.Double[0.5, 2], Gen.Double[1 - 1e-8, 1 + 1e-8], Gen.Double[0, 1e300], Positive).Sample(x => UnitsApart(PlainMath.Log(x), Math.Log(x)) <= 2, iter: 200_000, print: x => $"log {x:R}: {PlainMath.Log(x):R} {Math.Log(x):R}");

    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(double.NegativeInfinity, 0.0)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(709.79, double.PositiveInfinity)]
    [InlineData(-746.0, 0.0)]
    [InlineData(double.MaxValue, double.PositiveInfinity)]
    [InlineData(double.MinValue, 0.0)]
    [InlineData(double.Epsilon, 1.0)]
    [InlineData(double.NaN, double.NaN)]
    public void Exp_at_the_ends_of_its_range(double x, double expected) => Assert.Equal(expected, PlainMath.Exp(x));

    [Theory]
    [InlineData(1.0, 0.0)]
    [InlineData(0.0, double.NegativeInfinity)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(-1.0, double.NaN)]
    [InlineData(double.NegativeInfinity, double.NaN)]
    [InlineData(double.NaN, double.NaN)]
    public void Log_at_the_ends_of_its_range(double x, double expected) => Assert.Equal(expected, PlainMath.Log(x));

    [Fact]
    public void Zero_with_a_sign_is_zero()
    {
        Assert.Equal(1, PlainMath.Exp(-0.0));
        Assert.Equal(double.NegativeInfinity, PlainMath.Log(-0.0));
    }

    [Theory]
    [InlineData(double.Epsilon)]
    [InlineData(2.2250738585072009e-308)]
    [InlineData(2.2250738585072014e-308)]
    [InlineData(double.MaxValue)]
    [InlineData(0.99999999999999989)]
    [InlineData(1.0000000000000002)]
    [InlineData(1.4142135623730949)]
    [InlineData(1.4142135623730954)]
    public void Log_of_the_least_the_greatest_and_those_where_the_reduction_turns(double x) => Assert.True(UnitsApart(PlainMath.Log(x), Math.Log(x)) <= 2);

    [Fact]
    public void Exp_undoes_log() => Gen.Double[1e-300, 1e300].Sample(x => Math.Abs((PlainMath.Exp(PlainMath.Log(x)) / x) - 1) < 2e-13, iter: 20_000);

    [Theory]
    [InlineData(1.0, 0.0)]
    [InlineData(10.0, 1.0)]
    [InlineData(0.001, -3.0)]
    [InlineData(1e100, 100.0)]
    public void Log10_of_powers_of_ten(double x, double expected) => Assert.Equal(expected, PlainMath.Log10(x), 14);

    // P(x) of Abramowitz and Stegun 1964, Handbook of Mathematical Functions, Table 26.1 (National Bureau of Standards); two tails hold 2 (1 - P).
    [Theory]
    [InlineData(0.0, 0.500000000000000)]
    [InlineData(0.5, 0.691462461274013)]
    [InlineData(1.0, 0.841344746068543)]
    [InlineData(1.5, 0.933192798731142)]
    [InlineData(2.0, 0.977249868051821)]
    [InlineData(2.5, 0.993790334674224)]
    [InlineData(3.0, 0.998650101968370)]
    public void Normal_tail_against_the_published_integral(double z, double below)
    {
        Assert.Equal(2 * (1 - below), PlainMath.NormalTwoSidedTail(z), 3e-15);
        Assert.Equal(PlainMath.NormalTwoSidedTail(z), PlainMath.NormalTwoSidedTail(-z));
    }

    // -log10 Q(x) of Abramowitz and Stegun 1964, Table 26.2.
    [Theory]
    [InlineData(5, 6.54265)]
    [InlineData(10, 23.11805)]
    [InlineData(15, 50.43522)]
    [InlineData(20, 88.56010)]
    [InlineData(25, 137.51475)]
    [InlineData(30, 197.30921)]
    public void Normal_tail_far_out(double z, double minusLog10) => Assert.Equal(minusLog10, -Math.Log10(PlainMath.NormalTwoSidedTail(z) / 2), 0.000006);

    [Fact]
    public void Normal_tail_falls_without_a_step() => Gen.Select(Gen.Double[0, 36], Gen.Double[1e-9, 1]).Sample((z, more) => PlainMath.NormalTwoSidedTail(z + more) < PlainMath.NormalTwoSidedTail(z) + 1e-15, iter: 20_000);

    [Fact]
    public void Normal_tail_of_no_number_is_no_number_and_of_infinity_nothing()
    {
        Assert.Equal(double.NaN, PlainMath.NormalTwoSidedTail(double.NaN));
        Assert.Equal(0, PlainMath.NormalTwoSidedTail(double.NegativeInfinity));
        Assert.Equal(1, PlainMath.NormalTwoSidedTail(0));
    }

    /// <summary>Every positive double is as likely as any other.</summary>
    private static Gen<double> Positive { get; } = Gen.Long[1, BitConverter.DoubleToInt64Bits(double.MaxValue)].Select(BitConverter.Int64BitsToDouble);

    private static long UnitsApart(double one, double other) => Math.Abs(Ordered(one) - Ordered(other));

    private static long Ordered(double x) => BitConverter.DoubleToInt64Bits(x) is var bits && bits < 0 ? long.MinValue - bits : bits;
}
