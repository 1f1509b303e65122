using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Arrival;

namespace Abaxial.Cli.Pages;

/// <summary>When the lesions of fields began, for the clinic: a paragraph a field, the wet hours that fit several, what it rests on, and the cautions.</summary>
internal static class ArrivalPage
{
    public static void Write(Page page, ImmutableArray<ArrivalEstimate> estimates, WeatherSettings settings, Speech speech)
    {
        page.Line(speech.Say("arrival.head"), Tone.Strong);
        foreach (var estimate in estimates) Field(page, estimate, speech);
        if (estimates.Length > 1) Shared(page, SharedPeriod.Of(estimates), speech);
        page.Heading(speech.Say("weather.head-rests"));
        page.Text(speech.Say("arrival.rests.growth"), hanging: 2);
        page.Text(settings.Pathogen is { LatentPeriods.IsEmpty: false } supplied ? speech.Say("arrival.rests.table", supplied.Name) : speech.Say("arrival.rests.cycle"), hanging: 2);
        page.Text(speech.Say("arrival.rests.wet"), hanging: 2);
        page.Text(speech.Say("weather.settings", $"wetness.way {settings.Value("wetness.way")}"), hanging: 2);
        page.Heading(speech.Say("weather.head-care"));
        foreach (string key in (string[])["arrival.care.oldest", "arrival.care.source", "weather.care.station"]) page.Text(speech.Say(key), hanging: 2);
    }

    private static void Field(Page page, ArrivalEstimate estimate, Speech speech)
    {
        var finding = estimate.Finding;
        page.Heading(finding.Field);
        string measure = finding.Lesion.Least < finding.Lesion.Most ? speech.Say("arrival.range", Number(finding.Lesion.Least), Number(finding.Lesion.Most)) : Number(finding.Lesion.Least);
        string of = finding.Lesion.Of == LesionMeasureOf.Millimetres ? "millimetres" : "days-visible";
        page.Text(speech.Say($"arrival.{of}", measure, Time(finding.Seen), finding.Record.Station), hanging: 2);
        if (estimate.Declined is { } why)
        {
            page.Text(speech.Say($"arrival.declined.{why.Key}", [.. why.Values]), hanging: 2, tone: Tone.Care);
            return;
        }

        page.Text(speech.Say("arrival.infection", Time(estimate.Infection.Earliest), Time(estimate.Infection.Latest)), hanging: 2, tone: Tone.Strong);
        page.Text(speech.Say("arrival.spores", Time(estimate.Spores.Earliest), Time(estimate.Spores.Latest), Number(ArrivalEstimate.SporeHours)), hanging: 2);
        page.Text(speech.Say("arrival.cycle", Number(estimate.CycleHours), Number(Math.Round(estimate.Cycles, 1))), hanging: 2);
        if (estimate.IsWidened) page.Text(speech.Say("arrival.widened"), hanging: 2);
        if (estimate.MissingHours > 0) page.Text(speech.Say("arrival.missing", Number(estimate.MissingHours)), hanging: 2);
        page.Text(speech.Say(estimate.Periods.IsEmpty ? "arrival.no-period" : "arrival.periods"), hanging: 2, tone: estimate.Periods.IsEmpty ? Tone.Care : Tone.Plain);
        foreach (var period in estimate.Periods)
        {
            string fit = speech.Say(period.IsFavorable ? "arrival.period.good" : "arrival.period.poor"), estimated = period.IsEstimated ? speech.Say("arrival.period.estimated") : "";
            page.Text(speech.Say("arrival.period", Time(period.From), Time(period.To), Number(period.Hours), Number(Math.Round(period.MeanCelsius, 1)), fit, estimated), indent: 4, hanging: 2);
        }
    }

    private static void Shared(Page page, ImmutableArray<SharedPeriod> shared, Speech speech)
    {
        page.Heading(speech.Say("arrival.head-shared"));
        foreach (var one in shared) page.Text(speech.Say("arrival.shared", Time(one.FromUtc), Time(one.ToUtc), string.Join(speech.Word("list.comma"), one.Fields)), hanging: 2);
        if (shared.IsEmpty) page.Text(speech.Say("arrival.none-shared"));
        page.Text(speech.Say("arrival.shared-means"), hanging: 2);
    }

    private static string Time(DateTime time) => time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
