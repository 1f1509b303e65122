using Abaxial.Statistics;

namespace Abaxial.Weather;

/// <summary>A formula of the Magnus form, A exp(m t / (n + t)), for the pressure of saturated water vapour.</summary>
/// <param name="Hectopascal">A, hPa.</param>
/// <param name="Slope">m.</param>
/// <param name="Celsius">n, °C.</param>
public sealed record SaturationFormula(double Hectopascal, double Slope, double Celsius)
{
    /// <summary>WMO-No. 8, over water, -45 to 60 °C. Formula restated in a hydrology code; the range is from memory.</summary>
    public static SaturationFormula Wmo { get; } = new(6.112, 17.62, 243.12);

    /// <summary>WMO-No. 8, over ice, -65 to 0 °C, from memory.</summary>
    public static SaturationFormula WmoIce { get; } = new(6.112, 22.46, 272.62);

    /// <summary>Alduchov and Eskridge 1996, Journal of Applied Meteorology 35:601-609, over water. Coefficients restated.</summary>
    public static SaturationFormula AlduchovEskridge { get; } = new(6.1094, 17.625, 243.04);

    /// <summary>The same over ice, from memory.</summary>
    public static SaturationFormula AlduchovEskridgeIce { get; } = new(6.1121, 22.587, 273.86);

    /// <summary>Tetens as FAO Irrigation and Drainage Paper 56 has it; held against the paper's printed examples.</summary>
    public static SaturationFormula Fao56 { get; } = new(6.108, 17.27, 237.3);

    /// <summary>Bolton 1980, restated in a manual.</summary>
    public static SaturationFormula Bolton { get; } = new(6.112, 17.67, 243.5);

    /// <summary>The pressure over a flat surface of pure water or ice, hPa.</summary>
    /// <param name="celsius">Temperature, °C; NaN gives NaN.</param>
    public double At(double celsius) => Hectopascal * PlainMath.Exp(Slope * celsius / (Celsius + celsius));

    /// <summary>The temperature at which a vapour pressure saturates, °C.</summary>
    /// <param name="hectopascal">Vapour pressure, hPa, above zero; otherwise NaN.</param>
    public double TemperatureOf(double hectopascal)
    {
        if (!(hectopascal > 0)) return double.NaN;
        double g = PlainMath.Log(hectopascal / Hectopascal);
        return Celsius * g / (Slope - g);
    }
}

/// <summary>What follows from temperature and moisture of air. Where no formula is named it is that of WMO-No. 8 over water.</summary>
public static class Psychrometrics
{
    /// <summary>Standard pressure at sea level, hPa.</summary>
    public const double StandardHectopascal = 1013.25;

    /// <summary>Dew point, °C.</summary>
    /// <param name="celsius">Air temperature, °C.</param>
    /// <param name="humidityPercent">Relative humidity over water, above 0 up to 100 %; at 0 or below there is no dew point and NaN is given.</param>
    /// <param name="formula">The formula for saturation.</param>
    public static double DewPointCelsius(double celsius, double humidityPercent, SaturationFormula? formula = null)
    {
        var saturation = formula ?? SaturationFormula.Wmo;
        return saturation.TemperatureOf(saturation.At(celsius) * humidityPercent / 100);
    }

    /// <summary>Relative humidity over water, percent; above 100 where the dew point is above the temperature.</summary>
    /// <param name="celsius">Air temperature, °C.</param>
    /// <param name="dewPointCelsius">Dew point, °C.</param>
    /// <param name="formula">The formula for saturation.</param>
    public static double HumidityPercent(double celsius, double dewPointCelsius, SaturationFormula? formula = null)
    {
        var saturation = formula ?? SaturationFormula.Wmo;
        return 100 * saturation.At(dewPointCelsius) / saturation.At(celsius);
    }

    /// <summary>How much vapour more the air could hold, hPa.</summary>
    /// <inheritdoc cref="DewPointCelsius"/>
    public static double DeficitHectopascal(double celsius, double humidityPercent, SaturationFormula? formula = null) =>
        (formula ?? SaturationFormula.Wmo).At(celsius) * (1 - (humidityPercent / 100));

    /// <summary>By how much moist air holds more vapour than a formula for pure vapour says (WMO-No. 8, from memory).</summary>
    /// <param name="hectopascal">Air pressure, hPa.</param>
    public static double Enhancement(double hectopascal) => 1.0016 + (3.15e-6 * hectopascal) - (0.074 / hectopascal);

    /// <summary>Vapour pressure from an aspirated psychrometer, hPa (WMO-No. 8, from memory).</summary>
    /// <param name="celsius">Dry bulb, °C.</param>
    /// <param name="wetBulbCelsius">Wet bulb, °C.</param>
    /// <param name="hectopascal">Air pressure, hPa.</param>
    public static double VapourHectopascal(double celsius, double wetBulbCelsius, double hectopascal = StandardHectopascal) =>
        (Enhancement(hectopascal) * SaturationFormula.Wmo.At(wetBulbCelsius)) - (6.53e-4 * (1 + (0.000944 * wetBulbCelsius)) * hectopascal * (celsius - wetBulbCelsius));

    /// <summary>Wet-bulb temperature of an aspirated psychrometer with water on the bulb, °C, to a millionth of a degree.</summary>
    /// <param name="celsius">Air temperature, -45 to 60 °C.</param>
    /// <param name="humidityPercent">Relative humidity over water, 0 to 100 %.</param>
    /// <param name="hectopascal">Air pressure, hPa.</param>
    public static double WetBulbCelsius(double celsius, double humidityPercent, double hectopascal = StandardHectopascal)
    {
        if (double.IsNaN(celsius) || double.IsNaN(humidityPercent)) return double.NaN;
        double vapour = Enhancement(hectopascal) * SaturationFormula.Wmo.At(celsius) * humidityPercent / 100;
        double low = celsius - 60, high = celsius;
        while (high - low > 1e-7)
        {
            double middle = (low + high) / 2;
            if (VapourHectopascal(celsius, middle, hectopascal) < vapour) low = middle;
            else high = middle;
        }

        return high;
    }
}
