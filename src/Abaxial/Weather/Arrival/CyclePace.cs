using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Arrival;

/// <summary>
/// How fast incubation and the latent period pass in an hour, between a slow and a fast end. Two curves of temperature differ most in the cold: the project's
/// (<see cref="LatentPeriod"/>) and that of Andrade-Piedra et al. 2005 (restated). The fast end takes the faster of them and the shortest published period, the
/// slow end the slower and the longest. An hour without temperature passes at the best pace at the fast end and not at all at the slow end.
/// </summary>
/// <param name="table">Latent periods that the user supplied; empty for the two curves.</param>
public sealed class CyclePace(ImmutableArray<(double Celsius, double Hours)> table)
{
    /// <summary>From infection to the first sight of a lesion at 22 °C, the shortest published, hours (BR-1 on potato; Maziero, Maffia and Mizubuti 2009, abstract seen).</summary>
    public const double ShortestIncubation = 44.0;

    /// <summary>The longest published at 22 °C, hours (US-1 on tomato). Same source.</summary>
    public const double LongestIncubation = 69.3;

    private const double LeastCelsius = 3, MostCelsius = 30;

    /// <summary>The latent period as a multiple of the shortest, by the restated curve: 1 at 23 °C.</summary>
    public static double RelativePeriod(double celsius) => 4.571693 + (celsius * (-0.310652 + (0.006755 * celsius)));

    /// <summary>The share of the latent period that an hour completes at the fast end.</summary>
    public double Fast(double celsius) => table.IsEmpty ? PaceFast(celsius) / LatentPeriod.ShortestHours : ByTable(celsius, isFast: true);

    /// <summary>The same at the slow end.</summary>
    public double Slow(double celsius) => table.IsEmpty ? PaceSlow(celsius) / LatentPeriod.LongestHours : ByTable(celsius, isFast: false);

    /// <summary>The same between both ends.</summary>
    public double Middle(double celsius) => (Fast(celsius) + Slow(celsius)) / 2;

    /// <summary>The share of the incubation that an hour completes at the fast end.</summary>
    public double IncubationFast(double celsius) => Fast(celsius) * LatentPeriod.ShortestHours / ShortestIncubation;

    /// <summary>The same at the slow end.</summary>
    public double IncubationSlow(double celsius) => Slow(celsius) * LatentPeriod.LongestHours / LongestIncubation;

    private static double PaceFast(double celsius) => double.IsNaN(celsius) ? 1 : Math.Max(LatentPeriod.Pace(celsius), Restated(celsius));

    private static double PaceSlow(double celsius) => double.IsNaN(celsius) ? 0 : Math.Min(LatentPeriod.Pace(celsius), Restated(celsius));

    /// <summary>The restated curve says nothing of where growth ends; the project's limits do.</summary>
    private static double Restated(double celsius) => celsius > LeastCelsius && celsius < MostCelsius ? Math.Min(1, 1 / RelativePeriod(celsius)) : 0;

    private double ByTable(double celsius, bool isFast) =>
        !double.IsNaN(celsius) ? LatentPeriod.ShareByTable(celsius, table) : isFast ? table.Max(point => 1 / point.Hours) : 0;
}
