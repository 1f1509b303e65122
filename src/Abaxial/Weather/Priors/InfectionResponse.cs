using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Priors;

/// <summary>What makes an hour wet for a response.</summary>
public enum WetBy
{
    /// <summary>Humidity of 90 % or more.</summary>
    Humidity,

    /// <summary>Wet leaves, as measured, or estimated where that is missing.</summary>
    LeafWetness,
}

/// <summary>
/// How infection by one cause answers to wetness and temperature, after a published model that is among the models here, and what a span of such days is worth as
/// a factor on its prior.
/// </summary>
/// <param name="Cause">The id of the cause.</param>
/// <param name="Host">The host that the model was made for; null for both.</param>
/// <param name="Model">The model whose table or equation it rests on.</param>
/// <param name="WetBy">What makes an hour wet.</param>
/// <param name="LeastHours">Wet hours that make a day of infection at the best temperature.</param>
/// <param name="HoursNeeded">The same at a temperature, °C; positive infinity where infection is not possible.</param>
/// <param name="Curve">Days of infection and the factor, both rising; straight lines between, the ends hold outside. The project's judgement.</param>
public sealed record InfectionResponse(
    string Cause, string? Host, IWeatherModel Model, WetBy WetBy, double LeastHours, Func<double, double> HoursNeeded, ImmutableArray<(double Days, double Factor)> Curve)
{
    /// <summary>Humid from here on, percent.</summary>
    public const double HumidPercent = 90;

    /// <summary>Half of the greatest severity that the equation of bacterial spot gives is reached at about so many wet hours.</summary>
    private const double BacterialSpotHours = 24;

    private const double BacterialSpotBest = 26.67;

    /// <summary>The causes whose response is published and computed here. Everything else is left alone.</summary>
    public static ImmutableArray<InfectionResponse> All { get; } =
    [
        new("late-blight", null, new SeverityWallin(), WetBy.Humidity, 10, Wallin, [(0, 0.5), (4, 1), (8, 1), (16, 3)]),
        new("early-blight", "tomato", new EarlyBlightMadden(), WetBy.LeafWetness, 6, Madden, [(0, 0.6), (4, 1), (10, 1), (18, 2)]),
        new("bacterial-spot", "tomato", new BacterialSpotSurface(), WetBy.LeafWetness, BacterialSpotHours, BacterialSpot, [(0, 0.6), (2, 1), (6, 1), (12, 2)]),
    ];

    /// <summary>The factor of a number of days of infection.</summary>
    public double FactorOf(double days)
    {
        if (days <= Curve[0].Days) return Curve[0].Factor;
        for (int i = 1; i < Curve.Length; i++)
        {
            var (from, to) = (Curve[i - 1], Curve[i]);
            if (days <= to.Days) return from.Factor + ((to.Factor - from.Factor) * (days - from.Days) / (to.Days - from.Days));
        }

        return Curve[^1].Factor;
    }

    /// <summary>The hours from which Wallin's table gives its first value.</summary>
    private static double Wallin(double celsius)
    {
        foreach (var row in SeverityWallin.Table)
        {
            if (celsius >= row.FromCelsius && celsius < row.ToCelsius) return row.Hours[0];
        }

        return double.PositiveInfinity;
    }

    /// <summary>The hours from which the table of Madden et al. gives its second value; the first is given after a common dew.</summary>
    private static double Madden(double celsius)
    {
        double whole = Exact.HalfUp(celsius);
        foreach (var row in EarlyBlightMadden.Table)
        {
            if (whole >= row.FromCelsius && whole <= row.ToCelsius) return row.Hours[1];
        }

        return double.PositiveInfinity;
    }

    /// <summary>The hours at the best temperature, longer as the equation's answer to temperature falls.</summary>
    private static double BacterialSpot(double celsius)
    {
        double share = BacterialSpotSurface.Severity(celsius, BacterialSpotHours) / BacterialSpotSurface.Severity(BacterialSpotBest, BacterialSpotHours);
        return share > 0 ? BacterialSpotHours / Math.Min(1, share) : double.PositiveInfinity;
    }
}
