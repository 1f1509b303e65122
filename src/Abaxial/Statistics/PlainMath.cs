namespace Abaxial.Statistics;

/// <summary>
/// Exponential and logarithm from plain IEEE 754 additions, multiplications and divisions, so that every machine, native or in a browser,
/// gives the same bits. The platform's own functions differ in the last place from one C library to the next.
/// </summary>
/// <remarks>
/// Both reduce the argument by powers of two and sum a Taylor series by Horner's rule, even and odd terms apart; the series are cut where the next term is below
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

        // sum of r^n / n! for n = 0..13, |r| <= ln 2 / 2; in halves, so that the steps need not wait for each other
        double r2 = r * r;
        double even = 1.0 / 479001600;
        even = (1.0 / 3628800) + (r2 * even);
        even = (1.0 / 40320) + (r2 * even);
        even = (1.0 / 720) + (r2 * even);
        even = (1.0 / 24) + (r2 * even);
        even = 0.5 + (r2 * even);
        double odd = 1.0 / 6227020800;
        odd = (1.0 / 39916800) + (r2 * odd);
        odd = (1.0 / 362880) + (r2 * odd);
        odd = (1.0 / 5040) + (r2 * odd);
        odd = (1.0 / 120) + (r2 * odd);
        odd = (1.0 / 6) + (r2 * odd);
        double sum = 1 + (r + ((r2 * even) + (r2 * r * odd)));
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
        double z2 = z * z;
        double even = 1.0 / 23;
        even = (1.0 / 19) + (z2 * even);
        even = (1.0 / 15) + (z2 * even);
        even = (1.0 / 11) + (z2 * even);
        even = (1.0 / 7) + (z2 * even);
        even = (1.0 / 3) + (z2 * even);
        double odd = 1.0 / 21;
        odd = (1.0 / 17) + (z2 * odd);
        odd = (1.0 / 13) + (z2 * odd);
        odd = (1.0 / 9) + (z2 * odd);
        odd = (1.0 / 5) + (z2 * odd);
        double lnM = (2 * s) + (2 * s * z * (even + (z * odd)));
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
