using Abaxial.Weather.Models;

namespace Abaxial.Weather.Priors;

/// <summary>The station that is asked about a place.</summary>
/// <param name="Input">Its record and the settings.</param>
/// <param name="Kilometres">How far it is.</param>
/// <param name="PassedOver">Stations that are nearer, but whose record is not good enough.</param>
public sealed record NearestStation(ModelInput Input, double Kilometres, int PassedOver)
{
    /// <summary>A station farther away says nothing of a place, km. The project's judgement.</summary>
    public const double MostKilometres = 50;

    private const double EarthKilometres = 6371;

    /// <summary>The nearest station whose record of the days before is good enough; null where there is none within <see cref="MostKilometres"/>.</summary>
    /// <param name="latitude">Degrees north.</param>
    /// <param name="longitude">Degrees east.</param>
    /// <param name="stations">Records with the settings; those without a place are left out.</param>
    /// <param name="noticed">The last day that counts.</param>
    public static NearestStation? Of(double latitude, double longitude, IEnumerable<ModelInput> stations, DateOnly noticed)
    {
        ArgumentNullException.ThrowIfNull(stations);
        int passedOver = 0;
        foreach (var (input, kilometres) in stations.Where(station => station.Record is { Latitude: not null, Longitude: not null })
            .Select(station => (station, KilometresBetween(latitude, longitude, station.Record.Latitude!.Value, station.Record.Longitude!.Value)))
            .Where(pair => pair.Item2 <= MostKilometres).OrderBy(pair => pair.Item2).ThenBy(pair => pair.station.Record.Station, StringComparer.Ordinal))
        {
            if (WeatherPrior.IsGood(input, noticed)) return new NearestStation(input, kilometres, passedOver);
            passedOver++;
        }

        return null;
    }

    /// <summary>The distance of two places, km, on a plane that touches the globe between them: good to a percent within the distances that count, and wrong at the poles.</summary>
    public static double KilometresBetween(double latitude, double longitude, double otherLatitude, double otherLongitude)
    {
        double east = Math.Abs(longitude - otherLongitude);
        if (east > 180) east = 360 - east;
        double middle = (latitude + otherLatitude) / 2 * Math.PI / 180;
        double x = east * Math.PI / 180 * Cosine(middle), y = (latitude - otherLatitude) * Math.PI / 180;
        return EarthKilometres * Math.Sqrt((x * x) + (y * y));
    }

    /// <summary>The cosine by its series: angles of the platform are for the sun alone.</summary>
    private static double Cosine(double angle)
    {
        double term = 1, sum = 1;
        for (int i = 2; i <= 24; i += 2)
        {
            term *= -angle * angle / (i * (i - 1));
            sum += term;
        }

        return sum;
    }
}
