using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Sprays;

/// <summary>How a crop's protection stands on a day: what has worn it and what it has met since the last application.</summary>
/// <param name="Day">The day.</param>
/// <param name="DaysSince">Days since the last application; 0 on its day; null where there was none before.</param>
/// <param name="Rain">Rain of the days after the application, mm.</param>
/// <param name="Blight">Blight units since then, for the three classes of cultivars.</param>
/// <param name="Fungicide">Fungicide units since then; not told where the last application had no chlorothalonil.</param>
public sealed record SprayDay(DateOnly Day, int? DaysSince, Running Rain, ImmutableArray<Running> Blight, Running? Fungicide)
{
    /// <summary>Whether the sums since an application have passed the threshold of a class, by either kind of unit; the thresholds say nothing before the first.</summary>
    public bool IsPast(CultivarClass cultivar)
    {
        bool Exceeds(IWeatherModel model, double? sum) => sum is { } value && model.Card.Thresholds.Any(threshold => threshold.Cultivar == cultivar && value > threshold.Limit);
        return DaysSince is not null && (Exceeds(SprayOutlook.BlightModel, Blight[(int)cultivar].Sum) || Exceeds(SprayOutlook.FungicideModel, Fungicide?.Sum));
    }
}

/// <summary>A running sum.</summary>
/// <param name="Sum">What is told of it.</param>
/// <param name="Untold">Days that it lacks: it is a least.</param>
public readonly record struct Running(double Sum, int Untold)
{
    /// <summary>The sum with a day more; a day that is not told is counted as such.</summary>
    public Running With(double? value) => value is { } told && !double.IsNaN(told) ? this with { Sum = Exact.Rounded(Sum + told) } : this with { Untold = Untold + 1 };
}
