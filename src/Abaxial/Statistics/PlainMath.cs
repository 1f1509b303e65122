namespace Abaxial.Statistics;

/// <summary>
/// Exponential and logarithm from plain IEEE 754 additions, multiplications and divisions, so that every machine, native or in a browser,
/// gives the same bits. The platform's own functions differ in the last place from one C library to the next.
/// </summary>
/// <remarks>
/// Both reduce the argument by powers of two and sum a Taylor series by Horner's rule; the series are cut where the next term is below
/// 2^-60 of the sum. The error is under 2 units in the last place (compared with the platform's in the tests).
/// </remarks>
public static class PlainMath
{
    // ln 2 split so that k * Ln2High is exact for |k| < 2^20.
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const double Ln10 = 2.302585092994045684018;

    /// <summary>e to the power <paramref name="x"/>. NaN gives NaN; below -745.2 gives 0; above 709.78 gives positive infinity.</summary>
    public static double Exp(double x)
    {
        if (double.IsNaN(x)) return x;
        if (x > 709.782712893384) return double.PositiveInfinity;
        if (x < -745.2) return 0;

        double k = Math.Floor((x / (Ln2High + Ln2Low)) + 0.5);
        double r = x - (k * Ln2High) - (k * Ln2Low);

        // sum of r^n / n! for n = 0..13, |r| <= ln 2 / 2
        double sum = 1 + (r / 13);
        sum = 1 + (r * sum / 12);
        sum = 1 + (r * sum / 11);
        sum = 1 + (r * sum / 10);
        sum = 1 + (r * sum / 9);
        sum = 1 + (r * sum / 8);
        sum = 1 + (r * sum / 7);
        sum = 1 + (r * sum / 6);
        sum = 1 + (r * sum / 5);
        sum = 1 + (r * sum / 4);
        sum = 1 + (r * sum / 3);
        sum = 1 + (r * sum / 2);
        sum = 1 + (r * sum);
        return Math.ScaleB(sum, (int)k);
    }

    /// <summary>The natural logarithm. Zero gives negative infinity; a negative number or NaN gives NaN.</summary>
    public static double Log(double x)
    {
        if (double.IsNaN(x) || x < 0) return double.NaN;
        if (x == 0) return double.NegativeInfinity;
        if (double.IsPositiveInfinity(x)) return x;

        int scale = 0;
        if (x < 2.2250738585072014e-308)
        {
            x *= 18014398509481984.0; // 2^54: a subnormal number becomes a normal one
            scale = -54;
        }

        long bits = BitConverter.DoubleToInt64Bits(x);
        int exponent = (int)((bits >> 52) & 0x7FF) - 1023;
        double m = BitConverter.Int64BitsToDouble((bits & 0x000F_FFFF_FFFF_FFFF) | 0x3FF0_0000_0000_0000);
        if (m > 1.4142135623730951)
        {
            m *= 0.5;
            exponent++;
        }

        exponent += scale;

        // ln m = 2 atanh s = 2 (s + s^3/3 + s^5/5 + …), |s| <= 0.1716
        double s = (m - 1) / (m + 1);
        double z = s * s;
        double tail = 1.0 / 23;
        tail = (1.0 / 21) + (z * tail);
        tail = (1.0 / 19) + (z * tail);
        tail = (1.0 / 17) + (z * tail);
        tail = (1.0 / 15) + (z * tail);
        tail = (1.0 / 13) + (z * tail);
        tail = (1.0 / 11) + (z * tail);
        tail = (1.0 / 9) + (z * tail);
        tail = (1.0 / 7) + (z * tail);
        tail = (1.0 / 5) + (z * tail);
        tail = (1.0 / 3) + (z * tail);
        double lnM = (2 * s) + (2 * s * z * tail);
        return (exponent * Ln2High) + (lnM + (exponent * Ln2Low));
    }

    /// <summary>The logarithm to base ten, from <see cref="Log"/>.</summary>
    public static double Log10(double x) => Log(x) / Ln10;

    /// <summary>The chance that a standard normal variable lies further from zero than <paramref name="z"/>, on both sides together.</summary>
    /// <remarks>
    /// erfc by its series below 2.5 and by its continued fraction above (Abramowitz and Stegun 1964, Handbook of Mathematical Functions, 7.1.5 and 7.1.14).
    /// </remarks>
    public static double NormalTwoSidedTail(double z)
    {
        double x = Math.Abs(z) / 1.4142135623730951;
        if (double.IsNaN(x)) return double.NaN;
        if (x > 26) return 0;
        if (x < 1.8)
        {
            double term = x, sum = x;
            for (int n = 1; n < 60; n++)
            {
                term *= -x * x / n;
                sum += term / ((2 * n) + 1);
            }

            return 1 - (1.1283791670955126 * sum);
        }

        double fraction = x;
        for (int n = 60; n >= 1; n--) fraction = x + (n / 2.0 / fraction);
        return Exp(-x * x) / (fraction * 1.7724538509055161);
    }
}
