using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>
/// The limits that readings are held against. WMO means the guideline on quality control of automatic stations (Zahumenský 2004, later in WMO-No. 488), read in
/// a transcription; its one-minute limits are taken where they are limits of the quantity and not of the minute.
/// </summary>
public static class QualityLimits
{
    /// <summary>What can be, both ends included.</summary>
    /// <param name="Least">The lowest possible value.</param>
    /// <param name="Most">The highest possible value.</param>
    public readonly record struct Range(double Least, double Most);

    // WMO for temperature, dew point, humidity, wind and radiation. Rain: no more in an hour than the 508 mm (20 in) that a state network allows in six.
    private static readonly ImmutableArray<Range> Ranges =
    [
        new(-80, 60), new(0, 100), new(-80, 35), new(0, 508), new(0, 60), new(0, 1600), new(0, 75), new(0, 508),
    ];

    /// <summary>Humidity up to here is a sensor's play above saturation and read as 100 % (Austrian practice of 2002, restated).</summary>
    public const double HumidityPlay = 104;

    /// <summary>Changes of temperature over 1, 2, 3, 6 and 12 hours that are suspect when exceeded, °C (WMO-No. 305, 1993, VI.21, restated).</summary>
    public static ImmutableArray<(int Hours, double Most)> TemperatureSteps { get; } = [(1, 4), (2, 7), (3, 9), (6, 15), (12, 25)];

    /// <summary>The same for the dew point.</summary>
    public static ImmutableArray<(int Hours, double Most)> DewPointSteps { get; } = [(1, 4), (2, 6), (3, 8), (6, 12), (12, 20)];

    /// <summary>A change of humidity between hours that is suspect when exceeded, percent (practice of a state network, restated).</summary>
    public const double HumidityStep = 60;

    /// <summary>Hours through which a value may stand still (US EPA screening, restated).</summary>
    public const int StillHours = 12;

    /// <summary>Temperature and dew point stand still where they vary by no more, °C (US EPA screening, restated).</summary>
    public const double StillCelsius = 0.5;

    /// <summary>Humidity stands still where it varies by less, percent, and only below <see cref="NearSaturation"/> (WMO).</summary>
    public const double StillHumidity = 1;

    /// <summary>Wind stands still where it varies by less, m/s, and only above a calm of 0.1 m/s (WMO).</summary>
    public const double StillWind = 0.5;

    /// <summary>Above a calm.</summary>
    public const double Calm = 0.1;

    /// <summary>Humidity that air has, or nearly has, in lasting rain, percent (WMO's limit for its persistence test; for rain the project's judgement).</summary>
    public const double NearSaturation = 95;

    /// <summary>Hours of rain on end through which humidity must not stay under <see cref="NearSaturation"/>.</summary>
    public const int RainHours = 3;

    /// <summary>Measured humidity and that of the dew point may differ by so much, percent.</summary>
    public const double HumidityDisagreement = 2;

    /// <summary>The possible values of a column.</summary>
    public static Range Of(Column column) => Ranges[(int)column];
}
