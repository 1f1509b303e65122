using System.Globalization;
using System.Runtime.InteropServices;

namespace Abaxial.Benchmarks.Figures;

/// <summary>What the figures were taken on.</summary>
internal static class Machine
{
    public static string Describe() => $"{Processor()}, {Environment.ProcessorCount} cores, {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}";

    /// <summary>A number in three digits, the same everywhere.</summary>
    public static string Digits(double value) => value.ToString(value >= 100 ? "0" : value >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture);

    private static string Processor()
    {
        const string file = "/proc/cpuinfo";
        string? line = File.Exists(file) ? File.ReadLines(file).FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal)) : null;
        return line is null ? RuntimeInformation.ProcessArchitecture.ToString() : line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
    }
}
