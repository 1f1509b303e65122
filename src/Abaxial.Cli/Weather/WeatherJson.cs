using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Abaxial.Files.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Cli.Weather;

/// <summary>Writes a station and its days as JSON Lines.</summary>
internal static class WeatherJson
{
    private const int Decimals = 6;
    private const int Chunk = 64 << 10;
    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The station first, then a document a model and day.</summary>
    public static void Write(WeatherView view, Speech speech, Stream to)
    {
        var buffer = new ArrayBufferWriter<byte>(2 * Chunk);
        using var json = new Utf8JsonWriter(buffer, Form);
        Station(json, view);
        EndLine(json, buffer);
        foreach (var (season, day) in view.Days())
        {
            Day(json, season.Model.Id, day, speech);
            EndLine(json, buffer);
            if (buffer.WrittenCount >= Chunk) Empty(buffer, to);
        }

        Empty(buffer, to);
    }

    /// <summary>A refusal, on a line.</summary>
    public static void Write(RecordRefusal refusal, Stream to)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(buffer, Form);
        json.WriteStartObject();
        json.WriteString("format", "abaxial-record-refusal/1");
        json.WriteString("file", refusal.File);
        json.WriteNumber("line", refusal.Line);
        json.WriteString("column", refusal.Column);
        json.WriteString("found", refusal.Found);
        json.WriteStartArray("accepted");
        foreach (string accepted in refusal.Accepted) json.WriteStringValue(accepted);
        json.WriteEndArray();
        json.WriteEndObject();
        EndLine(json, buffer);
        Empty(buffer, to);
    }

    /// <summary>Notes as one text; null where there are none.</summary>
    public static string? NoteOf(ModelDay day, Speech speech) =>
        day.Notes.IsEmpty ? null : string.Join(' ', day.Notes.Select(note => speech.Say($"weather.note.{note.Key}", [.. note.Values])));

    /// <summary>A time of the record in ISO 8601, with the offset of its standard time.</summary>
    public static string TimeOf(StationRecord record, int hour)
    {
        var offset = TimeSpan.FromMinutes(record.OffsetMinutes);
        string text = record.TimeOf(hour).ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture);
        return record.OffsetMinutes == 0 ? $"{text}Z" : string.Create(CultureInfo.InvariantCulture, $"{text}{(offset < TimeSpan.Zero ? '-' : '+')}{offset:hh\\:mm}");
    }

    private static void Station(Utf8JsonWriter json, WeatherView view)
    {
        var record = view.Record;
        json.WriteStartObject();
        json.WriteString("station", record.Station);
        json.WriteString("zone", record.Zone);
        json.WriteString("from", record.Daily is null ? TimeOf(record, record.First) : Iso(record.Days[0]));
        json.WriteString("to", record.Daily is null ? TimeOf(record, record.Last) : Iso(record.Days[^1]));
        json.WriteNumber("rows", record.Rows);
        json.WriteStartObject("missing");
        foreach (var (column, hours) in view.Missing) json.WriteNumber(column, hours);
        json.WriteEndObject();
        json.WriteStartObject("flags");
        foreach (var kind in record.Flags.GroupBy(flag => flag.Kind).OrderBy(group => group.Key)) json.WriteNumber(kind.Key.Word(), kind.Count());
        json.WriteEndObject();
        json.WriteStartObject("settings");
        foreach (var (name, value) in view.Settings.Named()) json.WriteString(name, value);
        if (record is { Latitude: { } latitude, Longitude: { } longitude })
        {
            Number(json, "latitude", latitude);
            Number(json, "longitude", longitude);
        }

        json.WriteEndObject();
        json.WriteStartObject("lacking");
        foreach (var (model, what) in view.Lacking) json.WriteString(model, what);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Day(Utf8JsonWriter json, string model, SeasonDay season, Speech speech)
    {
        var day = season.Day;
        json.WriteStartObject();
        json.WriteString("day", Iso(day.Day));
        json.WriteString("model", model);
        if (day.Value is { } value) Number(json, "value", value);
        else json.WriteNull("value");
        Number(json, "sum", season.Sum);
        json.WriteStartObject("inputs");
        json.WriteNumber("hours", day.Inputs.Hours);
        json.WriteNumber("estimated", day.Inputs.Estimated);
        json.WriteNumber("missing", day.Inputs.Missing);
        json.WriteEndObject();
        json.WriteString("note", NoteOf(day, speech));
        if (day.Band is { } band)
        {
            json.WriteStartArray("band");
            json.WriteNumberValue(Rounded(band.Low));
            json.WriteNumberValue(Rounded(band.High));
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double value) => json.WriteNumber(name, Rounded(value));

    private static double Rounded(double value) => Math.Round(value, Decimals, MidpointRounding.AwayFromZero) + 0.0; // no negative zero

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static void EndLine(Utf8JsonWriter json, ArrayBufferWriter<byte> buffer)
    {
        json.Flush();
        buffer.Write("\n"u8);
        json.Reset();
    }

    private static void Empty(ArrayBufferWriter<byte> buffer, Stream to)
    {
        to.Write(buffer.WrittenSpan);
        to.Flush();
        buffer.ResetWrittenCount();
    }
}
