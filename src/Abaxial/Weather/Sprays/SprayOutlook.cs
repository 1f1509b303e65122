using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Sprays;

/// <summary>
/// How protection stands: day by day as observed, and apart from it as it would go on if a forecast held. It says when a rule calls for a spray and never that none
/// is needed.
/// </summary>
/// <param name="Observed">The days of the record, in order.</param>
/// <param name="Ahead">Days to come, by the forecast alone, counted on from the last observed day; empty without a forecast.</param>
/// <param name="Codes">The uses of each FRAC code, by every application that was named.</param>
/// <param name="Last">The last application up to the last observed day; null where there was none.</param>
public sealed record SprayOutlook(ImmutableArray<SprayDay> Observed, ImmutableArray<SprayDay> Ahead, ImmutableArray<CodeUse> Codes, Application? Last)
{
    internal static readonly BlightUnitsFry BlightModel = new();
    internal static readonly FungicideUnitsFry FungicideModel = new();

    private static readonly ImmutableArray<CultivarClass> Classes = [CultivarClass.Susceptible, CultivarClass.Moderate, CultivarClass.Resistant];
    private static readonly Running None = new(0, 0);

    /// <summary>Whether applications are dated after the last observed day; they count in <see cref="Codes"/>.</summary>
    public bool HasPlanned { get; private init; }

    /// <summary>Computes how protection stands.</summary>
    /// <param name="input">An hourly record with temperature, humidity and rain, after quality control.</param>
    /// <param name="applications">Applications, in order of days, one a day.</param>
    /// <param name="forecast">What is expected; null where nobody said.</param>
    /// <exception cref="ArgumentException">The record lacks a column, or the forecast's standard time is another.</exception>
    public static SprayOutlook Of(ModelInput input, ImmutableArray<Application> applications, Forecast? forecast)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (Lacking(input.Record) is { } lacking) throw new ArgumentException($"The record lacks {lacking}.", nameof(input));
        if (forecast is not null && forecast.OffsetMinutes != input.Record.OffsetMinutes) throw new ArgumentException("The forecast's days are those of another standard time.", nameof(forecast));
        var start = new SprayDay(default, null, None, [None, None, None], null);
        var record = input.Record;
        var observed = Run(Values(input, window => window.End - 1 <= record.Last), applications, start, input.Settings);
        if (observed.IsEmpty) return new SprayOutlook([], [], CodeUse.Of(applications), null);
        var lastDay = observed[^1].Day;
        ImmutableArray<SprayDay> ahead = [];
        if (forecast is not null)
        {
            var expected = forecast.After(lastDay, input.Settings, out var isAhead);
            ahead = Run(Values(expected, window => isAhead(window.Day)), applications, observed[^1], input.Settings with { From = null, To = null });
        }

        return new SprayOutlook(observed, ahead, CodeUse.Of(applications), applications.LastOrDefault(application => application.Day <= lastDay))
        {
            HasPlanned = applications.Any(application => application.Day > lastDay),
        };
    }

    /// <summary>What a record lacks for it, in words of columns; null where it has all.</summary>
    public static string? Lacking(StationRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Column[] needs = [Column.Temperature, Column.Humidity, Column.Rain];
        string words = string.Join(", ", needs.Where(column => record.Daily is not null || !record.Hours.Has(column)).Select(column => column.Word()));
        return words.Length == 0 ? null : words;
    }

    /// <summary>What each whole day brings: rain and blight units by class.</summary>
    private static IEnumerable<DayOfUnits> Values(ModelInput input, Func<DayWindow, bool> isWanted)
    {
        var byClass = Classes.Select(cultivar => BlightModel.Days(new ModelInput(input.Record, input.Settings with { Cultivar = cultivar }))).ToArray();
        for (int i = 0; i < input.Windows.Length; i++)
        {
            if (!isWanted(input.Windows[i])) continue;
            int at = i;
            yield return new DayOfUnits(input.Windows[i].Day, input.Summaries[i].RainMillimetres, [.. byClass.Select(days => days[at].Value)]);
        }
    }

    private static ImmutableArray<SprayDay> Run(IEnumerable<DayOfUnits> days, ImmutableArray<Application> applications, SprayDay before, WeatherSettings settings)
    {
        var run = ImmutableArray.CreateBuilder<SprayDay>();
        foreach (var day in days)
        {
            var last = applications.LastOrDefault(application => application.Day <= day.Day);
            if (last is null && day.Day < settings.From) continue; // without an application the sums count from the first day shown
            if (day.Day > settings.To) break;
            var skipped = before.Day == default ? 0 : Math.Max(0, day.Day.DayNumber - before.Day.DayNumber - 1);
            before = last is not null && last.Day == day.Day ? Fresh(last) : Next(before, day, last, skipped);
            run.Add(before);
        }

        return [.. run.Where(day => !(day.Day < settings.From))];
    }

    /// <summary>The day of an application: everything counts from the next day on.</summary>
    private static SprayDay Fresh(Application application) => new(application.Day, 0, None, [None, None, None], application.HasUnits ? None : null);

    private static SprayDay Next(SprayDay before, DayOfUnits day, Application? last, int skipped)
    {
        // An application between two days that the record tells, or before the record: what lies between is not told.
        bool isNew = last is not null && (before.Day == default || last.Day > before.Day);
        var from = isNew ? Fresh(last!) : before;
        int untold = isNew ? day.Day.DayNumber - last!.Day.DayNumber - 1 : skipped;
        Running Add(Running sum, double? value) => (sum with { Untold = sum.Untold + untold }).With(value);
        int? since = last is null ? null : day.Day.DayNumber - last.Day.DayNumber;
        double? units = since is { } days && !double.IsNaN(day.Rain) ? FungicideUnitsFry.Units(days, day.Rain) : null;
        return new SprayDay(
            day.Day, since, Add(from.Rain, day.Rain), [.. from.Blight.Select((sum, cultivar) => Add(sum, day.Blight[cultivar]))], from.Fungicide is { } fungicide ? Add(fungicide, units) : null);
    }

    private readonly record struct DayOfUnits(DateOnly Day, double Rain, ImmutableArray<double?> Blight);
}
