using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>All models, in order of their ids.</summary>
public static class WeatherModels
{
    public static ImmutableArray<IWeatherModel> All { get; } =
    [
        .. new IWeatherModel[]
        {
            new SeverityWallin(), new RainFavorableHyre(), new ScheduleKrause(), new Beaumont(), new Smith(), new Hutton(), new IrishBourke(), new BlightUnitsFry(),
            new FungicideUnitsFry(), new EarlyBlightMadden(), new PhysiologicalDays(), new InfectionMagarey(), new BacterialSpotSurface(), new LatentPeriod(),
        }.OrderBy(model => model.Id, StringComparer.Ordinal),
    ];

    /// <summary>The model of an id; null where there is none.</summary>
    public static IWeatherModel? Find(string id) => All.FirstOrDefault(model => model.Id == id);

    /// <summary>What a record and the settings lack for a model, in words of columns and options with commas between; null where it can be computed.</summary>
    /// <param name="model">The model.</param>
    /// <param name="record">The record.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="wasAsked">Whether the model was asked for by name: then wetness that no sensor measured is estimated where the other columns allow it.</param>
    public static string? Lacking(IWeatherModel model, StationRecord record, WeatherSettings settings, bool wasAsked = false)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(settings);
        var lacking = record.Daily is { } daily ? OfDaily(model, daily) : OfHours(model, record.Hours, wasAsked, settings);
        if (model.LacksOf(settings) is { } option) lacking = lacking.Append(option);
        string words = string.Join(", ", lacking.Distinct());
        return words.Length == 0 ? null : words;
    }

    private static IEnumerable<string> OfDaily(IWeatherModel model, DailyTable daily)
    {
        if (!model.ReadsDaily) return model.Needs.Select(column => $"hourly {column.Word()}");
        return model.Needs.Contains(Column.Rain) && daily.RainMillimetres.IsEmpty ? [Column.Rain.Word()] : [];
    }

    private static IEnumerable<string> OfHours(IWeatherModel model, HourTable hours, bool estimatesWetness, WeatherSettings settings)
    {
        foreach (var column in model.Needs.Where(column => !hours.Has(column)))
        {
            if (column != Column.Wetness || !estimatesWetness)
            {
                yield return column.Word();
                continue;
            }

            if (!hours.Has(Column.Humidity)) yield return Column.Humidity.Word();
            if (settings.Is("wetness.way", "tree") && !hours.Has(Column.Wind)) yield return Column.Wind.Word();
        }
    }
}
