using Abaxial.Cli.Pages;
using Abaxial.Files.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Sprays;

namespace Abaxial.Cli.Weather;

/// <summary><c>abaxial weather FILE --sprays SPRAYS.csv</c>: how protection stands, and apart from it how it would go on if a forecast held.</summary>
internal static class SprayRun
{
    /// <exception cref="RecordRefusedException">The applications or the forecast cannot be read, or the record lacks something.</exception>
    public static int Run(WeatherRequest request, SprayUse use, StationRecord raw, StationMapping? mapping, Speech speech)
    {
        var applied = WeatherFiles.Opened(request.Terminal, use.Applications, file => ApplicationFiles.Read(file, use.Applications));
        if (applied.Refusal is { } refusal) throw new RecordRefusedException(refusal);
        WeatherFiles.NameUnknown(request.Terminal, applied.UnknownColumns, speech);
        var record = WeatherFiles.Checked(raw, request.Settings);
        Require(record, request.File);
        Forecast? forecast = null;
        if (use.Forecast is { } name)
        {
            var expected = WeatherFiles.Record(request, name, mapping, speech);
            Require(expected, name);
            forecast = Forecast.Of(expected);
            if (forecast.OffsetMinutes != record.OffsetMinutes) throw new RecordRefusedException(new RecordRefusal(name, 0, "time", "days of another standard time than the record's", ["the same zone for both, named with --zone"]));
        }

        var input = new ModelInput(record, request.Settings);
        var view = new SprayView(record, request.Settings, SprayOutlook.Of(input, applied.Applications, forecast), Season.Of(new SeverityWallin(), input), forecast is not null, use.IsConfirmed);
        if (request.Json)
        {
            SprayJson.Write(view, speech, request.Terminal.Out);
        }
        else
        {
            using var writer = request.Terminal.Writer();
            SprayPage.Write(new Page(writer, request.Terminal), view, speech);
        }

        return ExitCode.Done;
    }

    private static void Require(StationRecord record, string name)
    {
        if (SprayOutlook.Lacking(record) is { } lacking) throw new RecordRefusedException(new RecordRefusal(name, 0, null, $"no hours of {lacking}", ["hours of temperature, humidity and rain"]));
    }
}

/// <summary>How protection stands, with what is shown beside it.</summary>
/// <param name="Record">The checked record.</param>
/// <param name="Settings">The settings; the cultivar's class where it was named.</param>
/// <param name="Outlook">The sums.</param>
/// <param name="Start">The season of severity values, for when protection starts.</param>
/// <param name="HasForecast">Whether a forecast was given.</param>
/// <param name="IsConfirmed">Whether thresholds for starting are void.</param>
internal sealed record SprayView(StationRecord Record, WeatherSettings Settings, SprayOutlook Outlook, Season Start, bool HasForecast, bool IsConfirmed)
{
    private static readonly CultivarClass[] EveryClass = [CultivarClass.Susceptible, CultivarClass.Moderate, CultivarClass.Resistant];

    /// <summary>The classes that the rule is read for: the one that was named, or all.</summary>
    public IEnumerable<CultivarClass> Classes => Settings.Cultivar is { } one ? [one] : EveryClass;

    /// <summary>The threshold of a class.</summary>
    public static double LimitOf(IWeatherModel model, CultivarClass cultivar) => model.Card.Thresholds.First(threshold => threshold.Cultivar == cultivar).Limit;

    /// <summary>By class and kind of unit, the first of some days whose sum is past its threshold, counted from the last application before the days' end.</summary>
    public IEnumerable<(CultivarClass Cultivar, string Unit, double Limit, DateOnly Day)> Past(IReadOnlyList<SprayDay> days)
    {
        if (days.Count == 0 || days[^1].DaysSince is null) yield break; // the rule begins with the first application
        int from = days.Count - 1;
        while (from > 0 && days[from].DaysSince > 0) from--;
        foreach (var cultivar in Classes)
        {
            var (blight, fungicide) = (LimitOf(new BlightUnitsFry(), cultivar), LimitOf(new FungicideUnitsFry(), cultivar));
            if (days.Skip(from).FirstOrDefault(day => day.Blight[(int)cultivar].Sum > blight) is { } first) yield return (cultivar, "blight", blight, first.Day);
            if (days.Skip(from).FirstOrDefault(day => day.Fungicide?.Sum > fungicide) is { } worn) yield return (cultivar, "fungicide", fungicide, worn.Day);
        }
    }
}
