using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Abaxial.Speaking;
using Abaxial.Weather.Arrival;

namespace Abaxial.Cli.Weather;

/// <summary>Writes when lesions began as JSON Lines: a document a field, then one of the wet hours that fit several. Times are UTC.</summary>
internal static class ArrivalJson
{
    public static void Write(ImmutableArray<ArrivalEstimate> estimates, Speech speech, Stream to)
    {
        foreach (var estimate in estimates) JsonLine.Write(to, json => Field(json, estimate, speech));
        JsonLine.Write(to, json =>
        {
            json.WriteStartArray("shared");
            foreach (var shared in SharedPeriod.Of(estimates))
            {
                json.WriteStartObject();
                json.WriteString("from", Utc(shared.FromUtc));
                json.WriteString("to", Utc(shared.ToUtc));
                json.WriteStartArray("fields");
                foreach (string field in shared.Fields) json.WriteStringValue(field);
                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("caution", $"{speech.Say("arrival.shared-means")} {speech.Say("arrival.care.source")}");
        });
    }

    private static void Field(Utf8JsonWriter json, ArrivalEstimate estimate, Speech speech)
    {
        var offset = TimeSpan.FromMinutes(estimate.Finding.Record.OffsetMinutes);
        json.WriteString("field", estimate.Finding.Field);
        json.WriteString("station", estimate.Finding.Record.Station);
        json.WriteString("declined", estimate.Declined is { } why ? speech.Say($"arrival.declined.{why.Key}", [.. why.Values]) : null);
        if (estimate.Declined is not null) return;
        Span(json, "infection", estimate.Infection.Earliest - offset, estimate.Infection.Latest - offset);
        Span(json, "spores", estimate.Spores.Earliest - offset, estimate.Spores.Latest - offset);
        json.WriteNumber("cycleHours", estimate.CycleHours);
        json.WriteBoolean("widened", estimate.IsWidened);
        json.WriteNumber("cycles", Math.Round(estimate.Cycles, 2, MidpointRounding.AwayFromZero));
        json.WriteNumber("missing", estimate.MissingHours);
        json.WriteStartArray("wetPeriods");
        foreach (var period in estimate.Periods)
        {
            json.WriteStartObject();
            json.WriteString("from", Utc(period.From - offset));
            json.WriteString("to", Utc(period.To - offset));
            json.WriteNumber("hours", period.Hours);
            json.WriteNumber("celsius", Math.Round(period.MeanCelsius, 2, MidpointRounding.AwayFromZero));
            json.WriteBoolean("favorable", period.IsFavorable);
            json.WriteBoolean("estimated", period.IsEstimated);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Span(Utf8JsonWriter json, string name, DateTime from, DateTime to)
    {
        json.WriteStartArray(name);
        json.WriteStringValue(Utc(from));
        json.WriteStringValue(Utc(to));
        json.WriteEndArray();
    }

    private static string Utc(DateTime time) => time.ToString("yyyy-MM-ddTHH:mmZ", CultureInfo.InvariantCulture);
}
