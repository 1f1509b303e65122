using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Beaumont's period (1947): 48 hours on end, mild and humid.</summary>
public sealed class Beaumont : IWeatherModel
{
    /// <summary>Not less than, °C (50 °F).</summary>
    public const double LeastCelsius = 10;

    /// <summary>Not below, percent.</summary>
    public const double LeastPercent = 75;

    /// <summary>Hours on end.</summary>
    public const int Hours = 48;

    public string Id => "beaumont";

    public ModelCard Card { get; } = new(
        "Beaumont 1947, Transactions of the British Mycological Society 31:45-53",
        Confidence.Restated,
        [new Threshold("beaumont-period", ThresholdOf.Value, 1, Confidence.Restated) { FirstSeen = (10, 21) }]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var states = ConditionHours.Of(input, LeastCelsius, LeastPercent, input.Settings.Is("beaumont.limits", "strict"));
        var ledger = new HourLedger(input, Needs);
        var runs = Run.In(states);
        var days = ImmutableArray.CreateBuilder<ModelDay>(input.Windows.Length);
        int next = 0;
        foreach (var window in input.Windows)
        {
            while (next < runs.Length && runs[next].Last < window.Start) next++;
            bool isPeriod = false;
            for (int i = next; i < runs.Length && runs[i].Start + Hours <= window.End; i++) isPeriod |= runs[i].Length >= Hours;
            days.Add(ledger.Gap(window, Hours - 1) is { } gap
                ? new ModelDay(window.Day, null, ledger.Of(window)) { Notes = [gap] }
                : new ModelDay(window.Day, isPeriod ? 1 : 0, ledger.Of(window)));
        }

        return days.ToImmutable();
    }
}
