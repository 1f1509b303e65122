namespace Abaxial.Weather;

/// <summary>Whether the sun rises and sets on a day.</summary>
public enum DayKind
{
    /// <summary>It rises and sets.</summary>
    Usual,

    /// <summary>It does not set.</summary>
    PolarDay,

    /// <summary>It does not rise.</summary>
    PolarNight,
}

/// <summary>When the sun rises and sets; both times are NaN where it does not.</summary>
/// <param name="Kind">Whether it does.</param>
/// <param name="RiseHoursUtc">Hours after 00:00 UTC of the day; below 0 or above 24 where it falls on a neighbouring day.</param>
/// <param name="SetHoursUtc">The same for sunset.</param>
public readonly record struct Sun(DayKind Kind, double RiseHoursUtc, double SetHoursUtc)
{
    /// <summary>The upper edge of the sun on the horizon, with the usual bending of light, degrees.</summary>
    private const double HorizonDegrees = -0.833;

    /// <summary>Hours from sunrise to sunset: 24 or 0 on polar days and nights.</summary>
    public double DayLength => Kind switch { DayKind.Usual => SetHoursUtc - RiseHoursUtc, DayKind.PolarDay => 24, _ => 0 };

    /// <summary>
    /// Sunrise and sunset by the low-precision formulas for the sun's place (Astronomical Almanac, from memory; about 0.01° between 1950 and 2050), good to about
    /// a minute or two away from the polar circles.
    /// </summary>
    /// <param name="day">The day; its solar noon is meant.</param>
    /// <param name="latitude">Degrees north, -90 to 90.</param>
    /// <param name="longitude">Degrees east, -180 to 180.</param>
    public static Sun Of(DateOnly day, double latitude, double longitude)
    {
        double noonUtc = 12 - (longitude / 15);
        double days = day.DayNumber - new DateOnly(2000, 1, 1).DayNumber + ((noonUtc - 12) / 24);
        double mean = Turn(280.460 + (0.9856474 * days));
        double anomaly = Radians(Turn(357.528 + (0.9856003 * days)));
        double ecliptic = Radians(mean + (1.915 * Math.Sin(anomaly)) + (0.020 * Math.Sin(2 * anomaly)));
        double tilt = Radians(23.439 - (0.0000004 * days));
        double declination = Math.Asin(Math.Sin(tilt) * Math.Sin(ecliptic));
        double ascension = Degrees(Math.Atan2(Math.Cos(tilt) * Math.Sin(ecliptic), Math.Cos(ecliptic)));
        double transit = noonUtc - (HalfTurn(mean - ascension) / 15); // by the equation of time

        double phi = Radians(latitude);
        double cosine = (Math.Sin(Radians(HorizonDegrees)) - (Math.Sin(phi) * Math.Sin(declination))) / (Math.Cos(phi) * Math.Cos(declination));
        if (cosine <= -1) return new Sun(DayKind.PolarDay, double.NaN, double.NaN);
        if (!(cosine < 1)) return new Sun(DayKind.PolarNight, double.NaN, double.NaN);
        double half = Degrees(Math.Acos(cosine)) / 15;
        return new Sun(DayKind.Usual, transit - half, transit + half);
    }

    private static double Turn(double degrees) => degrees - (360 * Math.Floor(degrees / 360));

    private static double HalfTurn(double degrees) => Turn(degrees + 180) - 180;

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
