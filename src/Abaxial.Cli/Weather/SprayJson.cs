using System.Globalization;
using System.Text.Json;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Sprays;

namespace Abaxial.Cli.Weather;

/// <summary>Writes how protection stands as JSON Lines: the rotation and the caution first, then a document a day; a day of the forecast says so.</summary>
internal static class SprayJson
{
    public static void Write(SprayView view, Speech speech, Stream to)
    {
        JsonLine.Write(to, json => Head(json, view, speech));
        foreach (var day in view.Outlook.Observed) JsonLine.Write(to, json => Day(json, day, view, isForecast: false));
        foreach (var day in view.Outlook.Ahead) JsonLine.Write(to, json => Day(json, day, view, isForecast: true));
    }

    private static void Head(Utf8JsonWriter json, SprayView view, Speech speech)
    {
        json.WriteString("station", view.Record.Station);
        json.WriteString("lastApplication", view.Outlook.Last is { } last ? Iso(last.Day) : null);
        json.WriteBoolean("thresholdsVoid", view.IsConfirmed);
        json.WriteStartArray("codes");
        foreach (var code in view.Outlook.Codes)
        {
            json.WriteStartObject();
            json.WriteString("frac", code.Code);
            json.WriteNumber("uses", code.Uses);
            json.WriteNumber("running", code.Running);
            json.WriteNumber("longest", code.Longest);
            json.WriteBoolean("flagged", code.IsFlagged);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("caution", $"{speech.Say(view.IsConfirmed ? "sprays.confirmed" : "weather.care.no-leave")} {speech.Say("care.licensed")}");
    }

    private static void Day(Utf8JsonWriter json, SprayDay day, SprayView view, bool isForecast)
    {
        json.WriteString("day", Iso(day.Day));
        json.WriteBoolean("forecast", isForecast);
        if (day.DaysSince is { } since) json.WriteNumber("daysSince", since);
        else json.WriteNull("daysSince");
        Sum(json, "rain", day.Rain);
        json.WriteStartObject("blightUnits");
        foreach (var cultivar in Enum.GetValues<CultivarClass>()) Sum(json, cultivar.Word(), day.Blight[(int)cultivar]);
        json.WriteEndObject();
        if (day.Fungicide is { } fungicide) Sum(json, "fungicideUnits", fungicide);
        else json.WriteNull("fungicideUnits");
        json.WriteStartArray("past");
        foreach (var cultivar in view.Classes.Where(day.IsPast)) json.WriteStringValue(cultivar.Word());
        json.WriteEndArray();
    }

    private static void Sum(Utf8JsonWriter json, string name, Running sum)
    {
        json.WriteStartObject(name);
        json.WriteNumber("sum", Math.Round(sum.Sum, 6, MidpointRounding.AwayFromZero));
        json.WriteNumber("untold", sum.Untold);
        json.WriteEndObject();
    }

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
