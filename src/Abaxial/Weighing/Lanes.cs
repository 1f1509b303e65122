using System.Numerics;

namespace Abaxial.Weighing;

/// <summary>
/// Element by element arithmetic over spans, as wide as the machine allows. Every element is rounded by itself in the same order, so that the width does not show in
/// the result; nothing here sums across elements.
/// </summary>
internal static class Lanes
{
    private static int Width => Vector.IsHardwareAccelerated ? Vector<double>.Count : int.MaxValue;

    /// <summary>target *= by</summary>
    public static void Multiply(Span<double> target, ReadOnlySpan<double> by)
    {
        int i = 0;
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * At(by, i)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= by[i];
    }

    /// <summary>target *= by</summary>
    public static void Scale(Span<double> target, double by)
    {
        int i = 0;
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * by).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= by;
    }

    /// <summary>target /= by</summary>
    public static void Divide(Span<double> target, ReadOnlySpan<double> by)
    {
        int i = 0;
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) / At(by, i)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] /= by[i];
    }

    /// <summary>target += by</summary>
    public static void Add(Span<double> target, ReadOnlySpan<double> by)
    {
        int i = 0;
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) + At(by, i)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] += by[i];
    }

    /// <summary>target *= (slope * x) + offset</summary>
    public static void MultiplyLine(Span<double> target, ReadOnlySpan<double> x, double slope, double offset)
    {
        int i = 0;
        var constant = new Vector<double>(offset);
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * ((At(x, i) * slope) + constant)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= (x[i] * slope) + offset;
    }

    /// <summary>target *= (slope * x * y) + offset</summary>
    public static void MultiplyLine(Span<double> target, ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slope, double offset)
    {
        int i = 0;
        var constant = new Vector<double>(offset);
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * ((At(x, i) * At(y, i) * slope) + constant)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= (x[i] * y[i] * slope) + offset;
    }

    /// <summary>target *= x + y</summary>
    public static void MultiplySum(Span<double> target, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int i = 0;
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * (At(x, i) + At(y, i))).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= x[i] + y[i];
    }

    /// <summary>target *= scale * (x + offset)</summary>
    public static void MultiplySum(Span<double> target, ReadOnlySpan<double> x, double offset, double scale)
    {
        int i = 0;
        var constant = new Vector<double>(offset);
        for (; i <= target.Length - Width; i += Vector<double>.Count) (At(target, i) * ((At(x, i) + constant) * scale)).CopyTo(target[i..]);
        for (; i < target.Length; i++) target[i] *= (x[i] + offset) * scale;
    }

    private static Vector<double> At(ReadOnlySpan<double> span, int at) => new(span[at..]);
}
