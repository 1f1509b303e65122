using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>The Irish rules (Bourke 1953): effective blight hours of humid, mild spells, sooner where rain wets the leaves.</summary>
public sealed class IrishBourke : IWeatherModel
{
    /// <summary>Not below, °C (50 °F).</summary>
    public const double LeastCelsius = 10;

    /// <summary>Not below, percent.</summary>
    public const double LeastPercent = 90;

    /// <summary>The hours of a spell that is wetted by rain, before it counts.</summary>
    public const int WettedLead = 11;

    /// <summary>The hours of a dry spell before it counts.</summary>
    public const int DryLead = 15;

    /// <summary>Rain from which leaves are wetted, mm in an hour. No source was seen for it: the least that a gauge shows.</summary>
    public const double WettingMillimetres = 0.1;

    public string Id => "irish-bourke";

    public ModelCard Card { get; } = new(
        "Bourke 1953, Irish Meteorological Service Technical Notes 12, 13 and 15",
        Confidence.Seen,
        [new Threshold("bourke-warning", ThresholdOf.Value, 12, Confidence.Restated)]);

    public ImmutableArray<Column> Needs { get; } = [Column.Temperature, Column.Humidity, Column.Rain];

    public bool ReadsDaily => false;

    public string? LacksOf(WeatherSettings settings) => null;

    /// <summary>Effective blight hours of a spell.</summary>
    /// <param name="hours">Hours on end at 10 °C or more and 90 % or more.</param>
    /// <param name="isWetted">Whether rain wetted it.</param>
    public static int EffectiveHours(int hours, bool isWetted) => Math.Max(0, hours - (isWetted ? WettedLead : DryLead));

    public ImmutableArray<ModelDay> Days(ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var states = ConditionHours.Of(input, LeastCelsius, LeastPercent);
        var ledger = new HourLedger(input, Needs);
        for (int hour = 0; hour < states.Length; hour++)
        {
            if (ledger.IsMissing(hour)) states[hour] = HourState.Unknown;
        }

        bool isWholeSpell = input.Settings.Is("irish-bourke.wetting", "any-hour");
        return PeriodDays.Of(input, ledger, Run.In(states), run => EffectiveHours(run.Length, IsWetted(input.Rains, run, isWholeSpell)), isSum: true);
    }

    private static bool IsWetted(ReadOnlySpan<double> rains, Run run, bool isWholeSpell)
    {
        int first = isWholeSpell ? 0 : 6, last = isWholeSpell ? run.Length : Math.Min(15, run.Length);
        for (int i = first; i < last; i++)
        {
            if (rains[run.Start + i] >= WettingMillimetres) return true;
        }

        return false;
    }
}
