using System.Globalization;
using Abaxial.Cli.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Sprays;

namespace Abaxial.Cli.Pages;

/// <summary>How protection stands, for people: the last days as observed, the days to come apart from them, what the rule says, the rotation, and the cautions.</summary>
internal static class SprayPage
{
    private const int ShownDays = 14;
    private const int DayColumns = 12, Columns = 10;

    public static void Write(Page page, SprayView view, Speech speech)
    {
        page.Line(speech.Say("sprays.head", view.Record.Station), Tone.Strong);
        if (view.IsConfirmed) page.Text(speech.Say("sprays.confirmed"), tone: Tone.Danger);
        page.Text(view.Outlook.Last is { } last ? speech.Say("sprays.last", Iso(last.Day), Materials(last, speech)) : speech.Say("sprays.none"), hanging: 2);
        page.Heading(speech.Say("sprays.head-observed"));
        Days(page, [.. view.Outlook.Observed.TakeLast(ShownDays)], speech);
        page.Text(speech.Say("sprays.legend"), hanging: 2, tone: Tone.Faint);
        if (view.Outlook.Last is null) page.Text(speech.Say("sprays.no-application-legend"), hanging: 2, tone: Tone.Faint);
        page.Text(speech.Say("sprays.fungicide-only"), hanging: 2, tone: Tone.Faint);
        page.Heading(speech.Say("sprays.head-ahead"));
        if (view.Outlook.Ahead.IsEmpty) page.Text(speech.Say(view.HasForecast ? "sprays.forecast-empty" : "sprays.no-forecast"));
        else Days(page, view.Outlook.Ahead, speech);
        Rule(page, view, speech);
        Rotation(page, view.Outlook, speech);
        page.Heading(speech.Say("weather.head-rests"));
        page.Text($"blight-units-fry, fungicide-units-fry: {new BlightUnitsFry().Card.Citation}. {speech.Say("weather.confidence.memory")}", hanging: 2);
        page.Heading(speech.Say("weather.head-care"));
        foreach (string key in (string[])["weather.care.no-leave", "weather.care.confirmed", "sprays.care.label", "sprays.care.window", "weather.care.station", "care.licensed"]) page.Text(speech.Say(key), hanging: 2);
    }

    private static void Days(Page page, IReadOnlyList<SprayDay> days, Speech speech)
    {
        string[] heads = ["days", "rain", "susceptible", "moderate", "resistant", "fungicide"];
        page.Line($"  {"".PadRight(DayColumns)}{string.Concat(heads.Select(head => speech.Say($"sprays.column.{head}").PadLeft(Columns)))}", Tone.Faint);
        foreach (var day in days)
        {
            string untold = speech.Say("weather.untold");
            string[] cells = [day.DaysSince is { } since ? Number(since) : untold, Sum(day.Rain), .. day.Blight.Select(Sum), day.Fungicide is { } fungicide ? Sum(fungicide) : untold];
            page.Line($"  {Iso(day.Day).PadRight(DayColumns)}{string.Concat(cells.Select(cell => cell.PadLeft(Columns)))}");
        }
    }

    private static void Rule(Page page, SprayView view, Speech speech)
    {
        page.Heading(speech.Say("sprays.head-rule"));
        if (view.IsConfirmed) page.Text(speech.Say("weather.care.confirmed"), hanging: 2, tone: Tone.Danger);
        else if (view.Outlook.Last is null) Start(page, view, speech);
        bool any = false;
        foreach (var (cultivar, unit, limit, day) in view.Past(view.Outlook.Observed))
        {
            any = true;
            page.Text(speech.Say("sprays.past", speech.Say($"sprays.class.{cultivar.Word()}"), Number(limit), speech.Say($"sprays.{unit}"), Iso(day)), hanging: 2, tone: Tone.Care);
        }

        var observed = view.Past(view.Outlook.Observed).Select(past => (past.Cultivar, past.Unit)).ToHashSet();
        foreach (var (cultivar, unit, limit, day) in view.Past(view.Outlook.Ahead).Where(past => !observed.Contains((past.Cultivar, past.Unit))))
        {
            any = true;
            page.Text(speech.Say("sprays.past-ahead", speech.Say($"sprays.class.{cultivar.Word()}"), Number(limit), speech.Say($"sprays.{unit}"), Iso(day)), hanging: 2, tone: Tone.Care);
        }

        if (!any && !view.IsConfirmed && view.Outlook.Last is not null) page.Text(speech.Say("sprays.none-past"), hanging: 2);
    }

    private static void Start(Page page, SprayView view, Speech speech)
    {
        var crossing = view.Start.Crossings.FirstOrDefault(crossing => crossing.Threshold.Key == "severity-start");
        double sum = view.Start.Days.IsEmpty ? 0 : view.Start.Days[^1].Sum, limit = view.Start.Model.Card.Thresholds.First(threshold => threshold.Key == "severity-start").Limit;
        page.Text(crossing is null ? speech.Say("sprays.not-started", Number(sum), Number(limit)) : speech.Say("sprays.start", Number(sum), Number(limit), Iso(crossing.Day)), hanging: 2);
    }

    private static void Rotation(Page page, SprayOutlook outlook, Speech speech)
    {
        if (outlook.Codes.IsEmpty) return;
        page.Heading(speech.Say("sprays.head-rotation"));
        if (outlook.HasPlanned) page.Text(speech.Say("sprays.planned"), hanging: 2);
        foreach (var code in outlook.Codes)
        {
            string text = speech.Say("sprays.code", code.Code, Number(code.Uses), Number(code.Longest), Number(code.Running));
            string remark = code.IsFlagged ? speech.Say("sprays.repeated") : FracCode.IsMultiSite(code.Code) ? speech.Say("sprays.multi-site") : "";
            page.Text($"{text} {remark}", hanging: 2, tone: code.IsFlagged ? Tone.Care : Tone.Plain);
        }
    }

    private static string Materials(Application application, Speech speech) =>
        string.Join(speech.Word("list.comma"), application.Materials.Select(material => speech.Say("sprays.material", material.Code, material.Ingredient)));

    private static string Sum(Running sum) => $"{(sum.Untold > 0 ? "≥" : "")}{Number(Math.Round(sum.Sum, 1, MidpointRounding.AwayFromZero))}";

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
