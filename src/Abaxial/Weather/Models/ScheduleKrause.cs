using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>Spray schedule from severity values and rain-favourable days of the last seven days, today included (Krause, Massie and Hyre 1975).</summary>
public sealed class ScheduleKrause : IWeatherModel
{
    private const int Days7 = 7;
    private const int ManyFavorableDays = 5;

    // By severity under 3, then 3, 4, 5, 6, and more than 6.
    private static readonly ImmutableArray<int> Few = [-1, -1, 0, 1, 1, 2];
    private static readonly ImmutableArray<int> Many = [-1, 0, 1, 2, 2, 2];

    private readonly SeverityWallin severity = new();
    private readonly RainFavorableHyre favorable = new();

    public string Id => "schedule-krause";

    public ModelCard Card { get; } = new("Krause, Massie and Hyre 1975, Plant Disease Reporter 59:95-98", Confidence.Restated, []);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity, Column.Rain];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>The code of the matrix.</summary>
    /// <param name="favorableDays">Favourable days of the last seven.</param>
    /// <param name="severityValues">Severity values of the last seven days.</param>
    /// <returns>-1: the rule does not call for a spray; 0: a warning, look again in two or three days; 1: every seven days; 2: every five days.</returns>
    public static int Code(int favorableDays, int severityValues) => (favorableDays >= ManyFavorableDays ? Many : Few)[Math.Clamp(severityValues - 2, 0, Few.Length - 1)];

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var ledger = new HourLedger(input, Needs);
        var severities = severity.Days(input);
        var favorables = favorable.Days(input);
        var days = ImmutableArray.CreateBuilder<ModelDay>(severities.Length);
        for (int i = 0; i < severities.Length; i++)
        {
            var window = input.Windows[i];
            var inputs = ledger.Of(window);
            var gap = ledger.Gap(window) ?? Gap(severities, i) ?? Gap(favorables, i);
            days.Add(gap is not null
                ? new ModelDay(window.Day, null, inputs) { Notes = [gap] }
                : new ModelDay(window.Day, Code((int)Sum(favorables, i), (int)Sum(severities, i)), inputs));
        }

        return days.ToImmutable();
    }

    private static double Sum(ImmutableArray<ModelDay> days, int last)
    {
        double sum = 0;
        for (int i = last - Days7 + 1; i <= last; i++) sum += days[i].Value!.Value;
        return sum;
    }

    private static DayNote? Gap(ImmutableArray<ModelDay> days, int last)
    {
        if (last < Days7 - 1) return DayNote.Of("record-starts", (Days7 - 1) * StationRecord.HoursOfDay);
        int lacking = days.AsSpan().Slice(last - Days7 + 1, Days7).ToArray().Count(day => day.Value is null);
        return lacking == 0 ? null : DayNote.Of("days-untold", lacking, Days7);
    }
}
