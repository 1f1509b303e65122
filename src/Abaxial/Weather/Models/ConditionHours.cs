namespace Abaxial.Weather.Models;

/// <summary>The hours that meet a model's condition on temperature and humidity.</summary>
internal static class ConditionHours
{
    /// <summary>Whether each hour is humid and warm enough; unknown where either reading is missing.</summary>
    /// <param name="input">The record.</param>
    /// <param name="leastCelsius">The limit of temperature, °C; negative infinity for none.</param>
    /// <param name="leastPercent">The limit of humidity, percent.</param>
    /// <param name="isStrict">Whether the limits themselves are outside.</param>
    public static HourState[] Of(ModelInput input, double leastCelsius, double leastPercent, bool isStrict = false)
    {
        var temperatures = input.Temperatures;
        var humidities = input.Humidities;
        var states = new HourState[temperatures.Length];
        for (int hour = 0; hour < states.Length; hour++)
        {
            double celsius = temperatures[hour], percent = humidities[hour];
            bool isMet = isStrict ? celsius > leastCelsius && percent > leastPercent : celsius >= leastCelsius && percent >= leastPercent;
            states[hour] = double.IsNaN(celsius) || double.IsNaN(percent) ? HourState.Unknown : isMet ? HourState.Yes : HourState.No;
        }

        return states;
    }

    /// <summary>How many hours of a window meet the condition.</summary>
    public static int CountIn(ReadOnlySpan<HourState> states, DayWindow window)
    {
        int count = 0;
        for (int hour = Math.Max(window.Start, 0); hour < Math.Min(window.End, states.Length); hour++)
        {
            if (states[hour] == HourState.Yes) count++;
        }

        return count;
    }
}
