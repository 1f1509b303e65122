using System.Globalization;
using Abaxial.Files.Weather;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>A refused record as people read it: file, line, column, what stands there, what would do.</summary>
internal static class WeatherRefusalPage
{
    public static void Write(Page page, RecordRefusal refusal, Speech speech)
    {
        page.Line(speech.Say("weather.refused", refusal.File), Tone.Danger);
        string line = refusal.Line.ToString(CultureInfo.InvariantCulture);
        page.Text(refusal switch
        {
            { Line: 0 } => speech.Say("weather.refused-whole"),
            { Column: { } column } => speech.Say("weather.refused-column", line, column),
            _ => speech.Say("weather.refused-line", line),
        });
        page.Text(speech.Say("refusal.found", refusal.Found), indent: 4, hanging: 2);
        if (!refusal.Accepted.IsEmpty) page.Text(speech.Say("refusal.accepted", string.Join(speech.Word("list.comma"), refusal.Accepted)), indent: 4, hanging: 2);
    }
}
