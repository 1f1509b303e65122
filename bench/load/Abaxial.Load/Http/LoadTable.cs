using System.Globalization;

namespace Abaxial.Load.Http;

/// <summary>How long one request took.</summary>
/// <param name="What">What was asked for.</param>
/// <param name="Milliseconds">From sending it to the last byte of the answer.</param>
/// <param name="IsWell">It was answered with what was asked for.</param>
internal sealed record Taken(string What, double Milliseconds, bool IsWell);

/// <summary>Prints what requests took, as a table in Markdown.</summary>
internal static class LoadTable
{
    /// <summary>Prints the table.</summary>
    /// <returns>0 where every request was answered well; 2 otherwise.</returns>
    public static int Write(TextWriter output, HttpPlan plan, IReadOnlyCollection<Taken> times, double seconds)
    {
        string think = plan.ThinkMilliseconds == 0 ? "without a pause" : string.Create(CultureInfo.InvariantCulture, $"{plan.ThinkMilliseconds} ms between requests in the mean");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{plan.Users} people at once, {think}, {seconds:0} s counted of {plan.Seconds} s."));
        output.WriteLine();
        output.WriteLine("| request | requests | a second | p50 ms | p95 ms | p99 ms | longest ms | not answered well |");
        output.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (var group in times.GroupBy(taken => taken.What).OrderBy(group => group.Key, StringComparer.Ordinal)) WriteRow(output, group.Key, [.. group], seconds);
        WriteRow(output, "all", [.. times], seconds);
        return times.Count > 0 && times.All(taken => taken.IsWell) ? 0 : 2;
    }

    /// <summary>The value that a share of the sorted values does not exceed; NaN of nothing.</summary>
    public static double Quantile(double[] sorted, double share) => sorted.Length == 0 ? double.NaN : sorted[Math.Max((int)Math.Ceiling(share * sorted.Length) - 1, 0)];

    private static void WriteRow(TextWriter output, string what, Taken[] taken, double seconds)
    {
        double[] sorted = [.. taken.Select(one => one.Milliseconds).Order()];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {sorted.Length} | {sorted.Length / seconds:0.0} | {Quantile(sorted, 0.5):0.0} | {Quantile(sorted, 0.95):0.0} | {Quantile(sorted, 0.99):0.0} | {Quantile(sorted, 1):0.0} | {taken.Count(one => !one.IsWell)} |"));
    }
}
