using System.Collections.Immutable;
using Abaxial.Statistics;

namespace Abaxial.Weather.Models;

/// <summary>Parameters of a pathogen that a user supplies. None ships: no published set was seen.</summary>
/// <param name="Name">What the set is called.</param>
public sealed record PathogenSet(string Name)
{
    /// <summary>Parameters of infection; null where the set has none.</summary>
    public InfectionParameters? Infection { get; init; }

    /// <summary>Latent periods by temperature, in order of temperature; empty where the set has none.</summary>
    public ImmutableArray<(double Celsius, double Hours)> LatentPeriods { get; init; } = [];
}

/// <summary>Parameters of the generic infection model.</summary>
/// <param name="LeastCelsius">Tmin: no infection at or below, °C.</param>
/// <param name="BestCelsius">Topt, °C; between the other two.</param>
/// <param name="MostCelsius">Tmax: no infection at or above, °C.</param>
/// <param name="LeastHours">Wmin: wet hours needed at the best temperature.</param>
/// <param name="MostHours">Wmax: where more are needed there is no infection.</param>
/// <param name="JoiningHours">D50: two wet spells count together where fewer dry hours part them; 0 where they never do.</param>
public sealed record InfectionParameters(double LeastCelsius, double BestCelsius, double MostCelsius, double LeastHours, double MostHours, double JoiningHours = 0)
{
    /// <summary>The response to temperature, 0 to 1.</summary>
    public double Response(double celsius)
    {
        if (!(celsius > LeastCelsius && celsius < MostCelsius)) return 0;
        double upper = MostCelsius - BestCelsius, lower = BestCelsius - LeastCelsius;
        return (MostCelsius - celsius) / upper * PlainMath.Exp(lower / upper * PlainMath.Log((celsius - LeastCelsius) / lower));
    }

    /// <summary>Wet hours needed at a temperature; positive infinity where infection is not possible.</summary>
    public double HoursNeeded(double celsius)
    {
        double response = Response(celsius);
        double hours = response > 0 ? LeastHours / response : double.PositiveInfinity;
        return hours <= MostHours ? hours : double.PositiveInfinity;
    }
}
