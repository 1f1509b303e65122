using System.Globalization;
using Abaxial.Cli.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Cli.Pages;

/// <summary>A season for people: how good the record is, a line a day, what was crossed, what lacks, what it rests on, and the cautions.</summary>
internal static class WeatherPage
{
    private const int DayColumns = 12;
    private const int ModelColumns = 8;

    public static void Write(Page page, WeatherView view, Speech speech)
    {
        Station(page, view, speech);
        Days(page, view, speech);
        Crossings(page, view, speech);
        Lacking(page, view, speech);
        Rests(page, view, speech);
        page.Heading(speech.Say("weather.head-care"));
        foreach (string key in (string[])["weather.care.no-leave", "weather.care.confirmed", "weather.care.station", "care.licensed"]) page.Text(speech.Say(key), hanging: 2);
    }

    private static void Station(Page page, WeatherView view, Speech speech)
    {
        var record = view.Record;
        page.Line(speech.Say("weather.station", record.Station, record.Zone), Tone.Strong);
        string from = record.Daily is null ? WeatherJson.TimeOf(record, record.First) : Iso(record.Days[0]);
        string to = record.Daily is null ? WeatherJson.TimeOf(record, record.Last) : Iso(record.Days[^1]);
        page.Text(speech.Say("weather.span", from, to, Whole(record.Rows)));
        string missing = string.Join(speech.Word("list.comma"), view.Missing.Where(column => column.Value > 0).Select(column => $"{speech.Say($"weather.column.{column.Key}")} {Whole(column.Value)}"));
        string unit = record.Daily is null ? "hours" : "days";
        page.Text(missing.Length == 0 ? speech.Say($"weather.none-missing-{unit}") : speech.Say($"weather.missing-{unit}", missing), hanging: 2);
        foreach (var kind in record.Flags.GroupBy(flag => flag.Kind).OrderBy(group => group.Key))
        {
            page.Text(speech.Say($"weather.flag.{kind.Key.Word()}", Whole(kind.Count()), Where(kind, record, speech)), hanging: 2, tone: kind.Key == FlagKind.DryInRain ? Tone.Care : Tone.Plain);
        }

        if (record is { Latitude: { } latitude, Longitude: { } longitude } && view.Seasons.FirstOrDefault(season => !season.Days.IsEmpty) is { } any)
        {
            var (first, last) = (any.Days[0].Day.Day, any.Days[^1].Day.Day);
            page.Text(speech.Say("weather.day-length", Number(Sun.Of(first, latitude, longitude).DayLength), Iso(first), Number(Sun.Of(last, latitude, longitude).DayLength), Iso(last)));
        }
    }

    /// <summary>The first readings that were flagged.</summary>
    private static string Where(IEnumerable<Flag> flags, StationRecord record, Speech speech)
    {
        const int Named = 3;
        var all = flags.ToList();
        var named = all.Take(Named).Select(flag =>
        {
            string time = record.Daily is null ? record.TimeOf(flag.Hour).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) : Iso(record.Days[flag.Hour / StationRecord.HoursOfDay]);
            return flag.Column is { } column ? $"{time} {speech.Say($"weather.column.{column.Word()}")} {Number(flag.Value)}" : time;
        });
        return string.Join(speech.Word("list.semicolon"), named) + (all.Count > Named ? speech.Say("weather.and-more") : "");
    }

    private static void Days(Page page, WeatherView view, Speech speech)
    {
        if (view.Seasons.IsEmpty)
        {
            page.Blank();
            page.Text(speech.Say("weather.no-model"), tone: Tone.Care);
            return;
        }

        var days = view.Days().Select(pair => pair.Day.Day.Day).Distinct().ToList();
        int perTable = Math.Max(1, (page.Width - DayColumns - 2) / ModelColumns);
        foreach (var seasons in view.Seasons.Chunk(perTable))
        {
            page.Heading(speech.Say("weather.head-days"));
            page.Line($"  {"".PadRight(DayColumns)}{string.Concat(seasons.Select(season => speech.Say($"weather.short.{season.Model.Id}").PadLeft(ModelColumns)))}", Tone.Faint);
            var byDay = seasons.Select(season => season.Days.DistinctBy(day => day.Day.Day).ToDictionary(day => day.Day.Day)).ToList();
            foreach (var day in days) page.Line($"  {Iso(day).PadRight(DayColumns)}{string.Concat(byDay.Select(season => Cell(season.GetValueOrDefault(day), speech).PadLeft(ModelColumns)))}");
            page.Line($"  {speech.Say("weather.sum").PadRight(DayColumns)}{string.Concat(seasons.Select(season => Sum(season).PadLeft(ModelColumns)))}", Tone.Strong);
        }

        page.Text(speech.Say("weather.legend"), tone: Tone.Faint);
        foreach (var season in view.Seasons) page.Text(speech.Say($"weather.value.{season.Model.Id}", speech.Say($"weather.short.{season.Model.Id}")), hanging: 2, tone: Tone.Faint);
        foreach (var (reason, count) in view.Seasons.SelectMany(season => season.Days).Where(day => day.Day.Value is null).GroupBy(day => day.Day.Notes[0].Key).Select(group => (group.Key, group.Count())))
        {
            page.Text(speech.Say($"weather.untold.{reason}", Whole(count)), hanging: 2);
        }
    }

    private static string Cell(SeasonDay? day, Speech speech) => day is null ? "" : day.Day.Value is { } value ? Number(value) : speech.Say("weather.untold");

    private static string Sum(Season season) => season.Days.IsEmpty ? "" : $"{(season.Days[^1].Untold > 0 ? "≥" : "")}{Number(season.Days[^1].Sum)}";

    private static void Crossings(Page page, WeatherView view, Speech speech)
    {
        page.Heading(speech.Say("weather.head-crossings"));
        bool any = false;
        foreach (var season in view.Seasons)
        {
            foreach (var group in season.Crossings.GroupBy(crossing => crossing.Threshold))
            {
                any = true;
                var first = group.First();
                string text = speech.Say($"weather.threshold.{group.Key.Key}", Number(group.Key.Limit), Iso(first.Day));
                if (group.Skip(1).Any()) text += " " + speech.Say("weather.again", Whole(group.Count() - 1), Iso(group.Last().Day));
                if (first.FirstSeen is { } seen) text += " " + speech.Say("weather.first-seen", Iso(seen.Earliest), Iso(seen.Latest));
                page.Text($"{text} {speech.Say($"weather.confidence.{group.Key.Source.Word()}")}", hanging: 2);
            }
        }

        page.Text(speech.Say(any ? "weather.crossed-means" : "weather.none-crossed"), hanging: 2);
    }

    private static void Lacking(Page page, WeatherView view, Speech speech)
    {
        if (view.Lacking.IsEmpty) return;
        page.Heading(speech.Say("weather.head-lacking"));
        foreach (var (model, what) in view.Lacking) page.Text(speech.Say("weather.lacks", model, what), hanging: 2);
    }

    private static void Rests(Page page, WeatherView view, Speech speech)
    {
        page.Heading(speech.Say("weather.head-rests"));
        foreach (var season in view.Seasons) page.Text($"{season.Model.Id}: {season.Model.Card.Citation}. {speech.Say($"weather.confidence.{season.Model.Card.Table.Word()}")}", hanging: 2);
        var chosen = view.Settings.Named().Where(setting => Concerns(setting.Key, view));
        page.Text(speech.Say("weather.settings", string.Join(speech.Word("list.comma"), chosen.Select(setting => $"{setting.Key} {setting.Value}"))), hanging: 2);
    }

    /// <summary>A convention is shown where its model is; what belongs to no model always is.</summary>
    private static bool Concerns(string setting, WeatherView view)
    {
        int dot = setting.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 || setting.StartsWith("wetness.", StringComparison.Ordinal) || view.Seasons.Any(season => season.Model.Id == setting[..dot]);
    }

    private static string Number(double value) =>
        double.IsNaN(value) ? "" : Math.Round(value, Math.Abs(value) < 10 ? 2 : 1, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Whole(long count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
