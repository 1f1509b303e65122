using System.Numerics;
using System.Runtime.InteropServices;

namespace Abaxial.Weighing;

/// <summary>
/// Element by element arithmetic over spans, as wide as the machine allows. Every element is rounded by itself in the same order, so that the width does not show in
/// the result; nothing here sums across elements.
/// </summary>
internal static class Lanes
{
    /// <summary>target *= by</summary>
    public static void Multiply(Span<double> target, ReadOnlySpan<double> by)
    {
        var wide = Wide(target);
        var factor = Wide(by)[..wide.Length];
        for (int i = 0; i < wide.Length; i++) wide[i] *= factor[i];
        for (int i = Done(wide); i < target.Length; i++) target[i] *= by[i];
    }

    /// <summary>target *= by</summary>
    public static void Scale(Span<double> target, double by)
    {
        var wide = Wide(target);
        for (int i = 0; i < wide.Length; i++) wide[i] *= by;
        for (int i = Done(wide); i < target.Length; i++) target[i] *= by;
    }

    /// <summary>target /= by</summary>
    public static void Divide(Span<double> target, ReadOnlySpan<double> by)
    {
        var wide = Wide(target);
        var divisor = Wide(by)[..wide.Length];
        for (int i = 0; i < wide.Length; i++) wide[i] /= divisor[i];
        for (int i = Done(wide); i < target.Length; i++) target[i] /= by[i];
    }

    /// <summary>target += by</summary>
    public static void Add(Span<double> target, ReadOnlySpan<double> by)
    {
        var wide = Wide(target);
        var more = Wide(by)[..wide.Length];
        for (int i = 0; i < wide.Length; i++) wide[i] += more[i];
        for (int i = Done(wide); i < target.Length; i++) target[i] += by[i];
    }

    /// <summary>target += by * scale</summary>
    public static void AddScaled(Span<double> target, ReadOnlySpan<double> by, double scale)
    {
        var wide = Wide(target);
        var more = Wide(by)[..wide.Length];
        for (int i = 0; i < wide.Length; i++) wide[i] += more[i] * scale;
        for (int i = Done(wide); i < target.Length; i++) target[i] += by[i] * scale;
    }

    /// <summary>target *= (x * slope) + offset</summary>
    public static void MultiplyLine(Span<double> target, ReadOnlySpan<double> x, double slope, double offset)
    {
        var wide = Wide(target);
        var line = Wide(x)[..wide.Length];
        var constant = new Vector<double>(offset);
        for (int i = 0; i < wide.Length; i++) wide[i] *= (line[i] * slope) + constant;
        for (int i = Done(wide); i < target.Length; i++) target[i] *= (x[i] * slope) + offset;
    }

    /// <summary>target *= (x * y * slope) + offset</summary>
    public static void MultiplyLine(Span<double> target, ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slope, double offset)
    {
        var wide = Wide(target);
        var first = Wide(x)[..wide.Length];
        var second = Wide(y)[..wide.Length];
        var constant = new Vector<double>(offset);
        for (int i = 0; i < wide.Length; i++) wide[i] *= (first[i] * second[i] * slope) + constant;
        for (int i = Done(wide); i < target.Length; i++) target[i] *= (x[i] * y[i] * slope) + offset;
    }

    /// <summary>target *= (x + y) * scale</summary>
    public static void MultiplySum(Span<double> target, ReadOnlySpan<double> x, ReadOnlySpan<double> y, double scale)
    {
        var wide = Wide(target);
        var first = Wide(x)[..wide.Length];
        var second = Wide(y)[..wide.Length];
        for (int i = 0; i < wide.Length; i++) wide[i] *= (first[i] + second[i]) * scale;
        for (int i = Done(wide); i < target.Length; i++) target[i] *= (x[i] + y[i]) * scale;
    }

    /// <summary>target *= (x + offset) * scale</summary>
    public static void MultiplySum(Span<double> target, ReadOnlySpan<double> x, double offset, double scale)
    {
        var wide = Wide(target);
        var first = Wide(x)[..wide.Length];
        var constant = new Vector<double>(offset);
        for (int i = 0; i < wide.Length; i++) wide[i] *= (first[i] + constant) * scale;
        for (int i = Done(wide); i < target.Length; i++) target[i] *= (x[i] + offset) * scale;
    }

    /// <summary>The least element: exact, whatever the order.</summary>
    public static double Least(ReadOnlySpan<double> values)
    {
        var wide = Wide(values);
        var least = new Vector<double>(double.PositiveInfinity);
        for (int i = 0; i < wide.Length; i++) least = Vector.Min(least, wide[i]);
        double result = double.PositiveInfinity;
        for (int lane = 0; wide.Length > 0 && lane < Vector<double>.Count; lane++) result = Math.Min(result, least[lane]);
        for (int i = wide.Length * Vector<double>.Count; i < values.Length; i++) result = Math.Min(result, values[i]);
        return result;
    }

    /// <summary>The part that fits whole vectors; nothing where the machine has none.</summary>
    private static Span<Vector<double>> Wide(Span<double> span) => Vector.IsHardwareAccelerated ? MemoryMarshal.Cast<double, Vector<double>>(span) : [];

    private static ReadOnlySpan<Vector<double>> Wide(ReadOnlySpan<double> span) => Vector.IsHardwareAccelerated ? MemoryMarshal.Cast<double, Vector<double>>(span) : [];

    private static int Done(Span<Vector<double>> wide) => wide.Length * Vector<double>.Count;
}
