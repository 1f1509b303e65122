namespace Abaxial.Weather.Arrival;

/// <summary>
/// How a lesion of late blight widens with temperature. The response and the first diameter are those of Andrade-Piedra, Hijmans, Forbes, Fry and Nelson 2005,
/// Phytopathology 95:1191-1199, read where code published by its authors restates them; the paper's abstract was seen, its equations were not.
/// </summary>
public static class LesionGrowth
{
    /// <summary>Diameter of a lesion at the end of the latent period, mm (restated).</summary>
    public const double FirstMillimetres = 2;

    /// <summary>Growth of the diameter at the best temperature, mm a day, on one cultivar without marked resistance (restated).</summary>
    public const double MillimetresPerDay = 4.1;

    /// <summary>The slow end of the band, mm a day: resistance, age of the leaf, dry days. The project's judgement about the restated value.</summary>
    public const double SlowestPerDay = 2.5;

    /// <summary>The fast end of the band, mm a day. The project's judgement about the restated value.</summary>
    public const double FastestPerDay = 5;

    /// <summary>Wider lesions have met the edge of a leaflet or each other and tell no age any more, mm. The project's judgement.</summary>
    public const double MostMillimetres = 40;

    private const double LeastCelsius = 4.09, BendCelsius = 8, MostCelsius = 32.94;

    /// <summary>Growth as a share of that at the best temperature: about 1 at 22.5 °C, 0 below 4.09 °C and above 32.94 °C.</summary>
    /// <param name="celsius">Air temperature, °C; NaN gives NaN.</param>
    public static double Response(double celsius)
    {
        if (double.IsNaN(celsius)) return double.NaN;
        if (celsius < LeastCelsius || celsius > MostCelsius) return 0;
        double response = celsius < BendCelsius
            ? (0.064246 * celsius) - 0.262690
            : 0.126636 + (celsius * (-0.038378 + (celsius * (0.008593 - (0.000229 * celsius)))));
        return Math.Max(0, response);
    }
}
