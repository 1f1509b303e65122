using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Severity values of late blight (Wallin 1962): what each wet period is worth, by its length and mean temperature.</summary>
public sealed class SeverityWallin : IWeatherModel
{
    public const string ModelId = "severity-wallin";

    /// <summary>A row of the table: a class of mean temperature, and the hours from which 1, 2, 3 and 4 are given.</summary>
    /// <param name="FromCelsius">The lower edge, within the class.</param>
    /// <param name="ToCelsius">The upper edge, outside.</param>
    /// <param name="FromFahrenheit">The lowest whole degree of the class in the print in °F.</param>
    /// <param name="ToFahrenheit">The highest.</param>
    /// <param name="Hours">Hours from which each value is given.</param>
    public sealed record Row(double FromCelsius, double ToCelsius, int FromFahrenheit, int ToFahrenheit, ImmutableArray<int> Hours);

    /// <summary>The table as reprinted in an open textbook (°C, hours) and by a university (°F).</summary>
    public static ImmutableArray<Row> Table { get; } =
    [
        new(7.2, 11.7, 45, 53, [16, 19, 22, 25]),
        new(11.7, 15.1, 54, 59, [13, 16, 19, 22]),
        new(15.1, 26.7, 60, 80, [10, 13, 16, 19]),
    ];

    public string Id => ModelId;

    public ModelCard Card { get; } = new(
        "Wallin 1962, American Potato Journal 39:306-312",
        Confidence.Restated,
        [
            new Threshold("severity-start", ThresholdOf.Sum, 18, Confidence.Restated) { FirstSeen = (7, 14) },
            new Threshold("severity-action", ThresholdOf.Sum, 20, Confidence.Restated),
        ]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>The severity of one wet period.</summary>
    /// <param name="hours">Its length.</param>
    /// <param name="meanCelsius">Its mean temperature, °C.</param>
    /// <param name="inWholeFahrenheit">Whether the mean is first rounded to whole °F, halves up; otherwise the edges in °C hold.</param>
    /// <returns>0 to 4.</returns>
    public static int Severity(int hours, double meanCelsius, bool inWholeFahrenheit = false)
    {
        foreach (var row in Table)
        {
            double fahrenheit = Exact.HalfUp(Exact.Fahrenheit(meanCelsius));
            bool isIn = inWholeFahrenheit ? fahrenheit >= row.FromFahrenheit && fahrenheit <= row.ToFahrenheit : meanCelsius >= row.FromCelsius && meanCelsius < row.ToCelsius;
            if (!isIn) continue;
            int severity = 0;
            while (severity < row.Hours.Length && hours >= row.Hours[severity]) severity++;
            return severity;
        }

        return 0;
    }

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var settings = input.Settings;
        bool inFahrenheit = settings.Is("severity-wallin.edges", "fahrenheit");
        double humid = settings.Is("severity-wallin.humidity", "80") ? 80 : 90;
        var states = ConditionHours.Of(input, double.NegativeInfinity, humid);
        var ledger = new HourLedger(input, Needs);
        if (settings.Is("severity-wallin.hours", "period"))
        {
            return PeriodDays.Of(input, ledger, Run.In(states), run => Severity(run.Length, input.MeanOf(run), inFahrenheit), isSum: true);
        }

        return [.. input.Windows.Select(window => Pooled(input, ledger, states, window, inFahrenheit))];
    }

    /// <summary>The other reading of the rule: all wet hours of a day together.</summary>
    private static ModelDay Pooled(ModelInput input, HourLedger ledger, HourState[] states, DayWindow window, bool inFahrenheit)
    {
        if (ledger.Gap(window) is { } gap) return new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] };
        var (hours, mean) = WetHours.In(input.Temperatures, states, window);
        return new ModelDay(window.Day, hours == 0 ? 0 : Severity(hours, mean, inFahrenheit), ledger.Of(window));
    }
}

/// <summary>The hours of a day that meet a condition, taken together.</summary>
internal static class WetHours
{
    /// <summary>How many there are, and their mean temperature; NaN where there are none.</summary>
    public static (int Hours, double MeanCelsius) In(ReadOnlySpan<double> temperatures, ReadOnlySpan<HourState> states, DayWindow window)
    {
        int hours = 0;
        double sum = 0;
        for (int hour = Math.Max(window.Start, 0); hour < Math.Min(window.End, states.Length); hour++)
        {
            if (states[hour] != HourState.Yes) continue;
            hours++;
            sum += temperatures[hour];
        }

        return (hours, hours == 0 ? double.NaN : Exact.Mean(sum, hours));
    }
}
