using System.Text.Encodings.Web;
using System.Text.Json;

namespace Abaxial.Cli.Weather;

/// <summary>Writes a JSON document on a line of its own.</summary>
internal static class JsonLine
{
    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes one object.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="members">Writes what is in it.</param>
    public static void Write(Stream to, Action<Utf8JsonWriter> members)
    {
        using var line = new MemoryStream();
        using (var json = new Utf8JsonWriter(line, Form))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        line.Write("\n"u8);
        to.Write(line.GetBuffer().AsSpan(0, (int)line.Length));
        to.Flush();
    }
}
