using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather;

/// <summary>What one model says of the days that were asked for, with running totals and the thresholds that were crossed.</summary>
/// <param name="Model">The model.</param>
/// <param name="Days">The days, in order, each with the total up to it.</param>
/// <param name="Crossings">Thresholds that were crossed, in order of days.</param>
public sealed record Season(IWeatherModel Model, ImmutableArray<SeasonDay> Days, ImmutableArray<Crossing> Crossings)
{
    /// <summary>Computes a model over a record.</summary>
    /// <param name="model">A model that lacks nothing.</param>
    /// <param name="input">The record and the settings; days before <see cref="WeatherSettings.From"/> are looked back on, but not counted.</param>
    public static Season Of(IWeatherModel model, ModelInput input)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(input);
        var settings = input.Settings;
        var days = ImmutableArray.CreateBuilder<SeasonDay>();
        double sum = 0;
        int untold = 0;
        foreach (var day in model.Days(input))
        {
            if (day.Day < settings.From || day.Day > settings.To) continue;
            sum += day.Added ?? day.Value ?? 0;
            if (day.Value is null) untold++;
            days.Add(new SeasonDay(day, Exact.Rounded(sum), untold));
        }

        var all = days.ToImmutable();
        var crossings = model.Card.Thresholds.Where(threshold => threshold.Holds(settings)).SelectMany(threshold => CrossingsOf(threshold, model, all, settings));
        return new Season(model, all, [.. crossings.OrderBy(crossing => crossing.Index).ThenBy(crossing => crossing.Threshold.Limit)]);
    }

    private static IEnumerable<Crossing> CrossingsOf(Threshold threshold, IWeatherModel model, ImmutableArray<SeasonDay> days, WeatherSettings settings) => threshold.Of switch
    {
        ThresholdOf.Sum => First(threshold, days, day => day.Sum >= threshold.Limit),
        ThresholdOf.Value => Each(threshold, days, (_, day) => day.Day.Value >= threshold.Limit),
        ThresholdOf.DaysInARow => InARow(threshold, days),
        _ => SinceSpray(threshold, model, days, settings),
    };

    private static IEnumerable<Crossing> First(Threshold threshold, ImmutableArray<SeasonDay> days, Func<SeasonDay, bool> isCrossed) =>
        Each(threshold, days, (_, day) => isCrossed(day)).Take(1);

    /// <summary>The days on which a condition begins to hold.</summary>
    private static IEnumerable<Crossing> Each(Threshold threshold, ImmutableArray<SeasonDay> days, Func<int, SeasonDay, bool> isCrossed)
    {
        bool was = false;
        for (int i = 0; i < days.Length; i++)
        {
            bool isNow = isCrossed(i, days[i]);
            if (isNow && !was) yield return Crossing.On(threshold, i, days[i].Day.Day);
            was = isNow;
        }
    }

    private static IEnumerable<Crossing> InARow(Threshold threshold, ImmutableArray<SeasonDay> days)
    {
        int row = 0;
        for (int i = 0; i < days.Length; i++)
        {
            row = days[i].Day.Value >= 1 ? row + 1 : 0;
            if (row != (int)threshold.Limit) continue;
            yield return Crossing.On(threshold, i, days[i].Day.Day);
            yield break;
        }
    }

    private static IEnumerable<Crossing> SinceSpray(Threshold threshold, IWeatherModel model, ImmutableArray<SeasonDay> days, WeatherSettings settings)
    {
        // Fungicide units are totals since the spray already.
        if (model is FungicideUnitsFry) return Each(threshold, days, (_, day) => day.Day.Value > threshold.Limit);
        var sums = new double[days.Length];
        double sum = 0;
        for (int i = 0; i < days.Length; i++)
        {
            sum = settings.Sprayed.Contains(days[i].Day.Day) ? 0 : sum + (days[i].Day.Value ?? 0);
            sums[i] = sum;
        }

        return Each(threshold, days, (i, _) => sums[i] > threshold.Limit);
    }
}

/// <summary>A day of a season.</summary>
/// <param name="Day">What the model says of it.</param>
/// <param name="Sum">The running total up to and with it.</param>
/// <param name="Untold">Days up to and with it that could not be told: the total lacks them.</param>
public sealed record SeasonDay(ModelDay Day, double Sum, int Untold);

/// <summary>A threshold that was crossed.</summary>
/// <param name="Threshold">Which.</param>
/// <param name="Index">The place of the day among the season's days.</param>
/// <param name="Day">The day.</param>
public sealed record Crossing(Threshold Threshold, int Index, DateOnly Day)
{
    /// <summary>The published range for the first sight of the disease after it, both days included; null where there is none.</summary>
    public (DateOnly Earliest, DateOnly Latest)? FirstSeen { get; private init; }

    /// <summary>The crossing on a day.</summary>
    public static Crossing On(Threshold threshold, int index, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(threshold);
        return new Crossing(threshold, index, day)
        {
            FirstSeen = threshold.FirstSeen is { } range ? (day.AddDays(range.Earliest), day.AddDays(range.Latest)) : null,
        };
    }
}
