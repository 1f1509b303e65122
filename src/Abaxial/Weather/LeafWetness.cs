namespace Abaxial.Weather;

/// <summary>Which hours leaves are wet: as measured, and estimated where that is missing. Any hour with rain is wet in every way of estimating.</summary>
public static class LeafWetness
{
    /// <summary>Minutes from which an hour counts as wet: half of it. The project's judgement.</summary>
    public const double WetMinutes = 30;

    /// <summary>Air is humid enough for wet leaves from here on, percent (Sentelhas et al. 2008, Agricultural and Forest Meteorology 148:392-400; conference version seen in part).</summary>
    public const double HumidPercent = 90;

    /// <summary>Wetting starts at this dew-point depression or less, °C (Gillespie, Srivastava and Pitblado 1993, Journal of Applied Meteorology 32:1019-1026, from memory).</summary>
    public const double WettingDepression = 2.0;

    /// <summary>Wetness ends at this dew-point depression or more, °C. Same source.</summary>
    public const double DryingDepression = 3.8;

    /// <summary>By humidity: wet at 90 % or more.</summary>
    public static HourState ByHumidity(double humidityPercent) =>
        double.IsNaN(humidityPercent) ? HourState.Unknown : humidityPercent >= HumidPercent ? HourState.Yes : HourState.No;

    /// <summary>By dew-point depression: the state before is kept between the two limits.</summary>
    /// <param name="depressionCelsius">Air temperature less dew point, °C.</param>
    /// <param name="before">The state of the hour before.</param>
    public static HourState ByDepression(double depressionCelsius, HourState before) =>
        double.IsNaN(depressionCelsius) ? HourState.Unknown
        : depressionCelsius <= WettingDepression ? HourState.Yes
        : depressionCelsius >= DryingDepression ? HourState.No
        : before;

    /// <summary>
    /// By the classification tree of Gleason et al. 1994, Plant Disease 78:1011-1016, as restated; the square of the humidity in its last branch is from memory
    /// (the restatement prints the first power, with which the branch could never be wet). Under 0 °C the tree says nothing.
    /// </summary>
    /// <param name="celsius">Air temperature, °C.</param>
    /// <param name="humidityPercent">Relative humidity, percent.</param>
    /// <param name="windMetresPerSecond">Wind, m/s, at the height it was measured.</param>
    /// <param name="depressionCelsius">Dew-point depression, °C.</param>
    public static HourState ByTree(double celsius, double humidityPercent, double windMetresPerSecond, double depressionCelsius)
    {
        if (double.IsNaN(celsius + humidityPercent + windMetresPerSecond + depressionCelsius)) return HourState.Unknown;
        if (depressionCelsius >= 3.7) return HourState.No;
        if (celsius < 0) return HourState.Unknown;
        if (windMetresPerSecond < 2.5) return CalmSum(celsius, humidityPercent, windMetresPerSecond, depressionCelsius) > 14.4674 ? HourState.Yes : HourState.No;
        if (humidityPercent < 87.8) return HourState.No;
        return WindySum(celsius, humidityPercent, windMetresPerSecond, depressionCelsius) > 37.0 ? HourState.Yes : HourState.No;
    }

    /// <summary>The tree's sum for wind under 2.5 m/s.</summary>
    public static double CalmSum(double celsius, double humidityPercent, double wind, double depression) =>
        (1.6064 * Math.Sqrt(celsius)) + (0.0036 * celsius * celsius) + (0.1531 * humidityPercent) - (0.4599 * wind * depression) - (0.0035 * celsius * humidityPercent);

    /// <summary>The tree's sum for wind of 2.5 m/s or more.</summary>
    public static double WindySum(double celsius, double humidityPercent, double wind, double depression) =>
        (0.7921 * Math.Sqrt(celsius)) + (0.0046 * humidityPercent * humidityPercent) - (2.3889 * wind) - (0.0390 * celsius * wind) + (1.0613 * wind * depression);

    /// <summary>The state of every hour, and which of them are estimates.</summary>
    /// <param name="record">The record.</param>
    /// <param name="way"><c>humidity</c>, <c>depression</c> or <c>tree</c>; used where wetness was not measured.</param>
    public static (HourState[] States, bool[] Estimated) Of(StationRecord record, string way)
    {
        ArgumentNullException.ThrowIfNull(record);
        var hours = record.Hours;
        var states = new HourState[hours.Count];
        var estimated = new bool[hours.Count];
        var measured = hours.Of(Column.Wetness);
        var rains = hours.Of(Column.Rain);
        var before = HourState.Unknown;
        for (int hour = 0; hour < states.Length; hour++)
        {
            if (!measured.IsEmpty && !double.IsNaN(measured[hour]))
            {
                states[hour] = measured[hour] >= WetMinutes ? HourState.Yes : HourState.No;
            }
            else
            {
                bool hasRain = !rains.IsEmpty && rains[hour] > 0;
                states[hour] = hasRain ? HourState.Yes : Estimate(hours, hour, way, before);
                estimated[hour] = states[hour] != HourState.Unknown;
            }

            before = states[hour];
        }

        return (states, estimated);
    }

    private static HourState Estimate(HourTable hours, int hour, string way, HourState before)
    {
        double celsius = At(hours, Column.Temperature, hour), humidity = At(hours, Column.Humidity, hour);
        if (way == "humidity") return ByHumidity(humidity);
        double dewPoint = At(hours, Column.DewPoint, hour);
        if (double.IsNaN(dewPoint)) dewPoint = Psychrometrics.DewPointCelsius(celsius, humidity);
        double depression = celsius - dewPoint;
        return way == "depression" ? ByDepression(depression, before) : ByTree(celsius, humidity, At(hours, Column.Wind, hour), depression);
    }

    private static double At(HourTable hours, Column column, int hour) => hours.Has(column) ? hours.Of(column)[hour] : double.NaN;
}
