using System.Diagnostics;
using System.Globalization;

namespace Abaxial.Load.Measuring;

/// <summary>How long something took, over many times, in milliseconds; the processor time is this program's own, not a server's.</summary>
internal readonly record struct Timing(double P50, double P95, double P99, double Processor)
{
    private const int WarmUp = 20;

    /// <summary>Does something many times, one after the other.</summary>
    /// <returns>The times, and the mean of what it gave.</returns>
    public static async Task<(Timing Timing, double Mean)> OfAsync(Func<int, Task<int>> act, int times)
    {
        for (int i = 0; i < WarmUp; i++) await act(i);
        double[] taken = new double[times];
        double sum = 0;
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            sum += await act(WarmUp + i);
            taken[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        double processor = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / times;
        Array.Sort(taken);
        return (new Timing(At(0.5), At(0.95), At(0.99), processor), sum / times);

        double At(double part) => taken[Math.Min(times - 1, (int)Math.Ceiling(part * times) - 1)];
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{P50:0.0} | {P95:0.0} | {P99:0.0} | {Processor:0.0}");
}
