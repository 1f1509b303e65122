using System.Buffers;
using System.Globalization;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Writes cases as case files in one canonical form, without white space: members in the order of the reader's list, states in the order of the knowledge, everything that is known said.</summary>
public static class CaseWriter
{
    /// <summary>The bytes of a case file, in UTF-8. Reading them gives the same case.</summary>
    public static byte[] ToUtf8(Case written)
    {
        var buffer = new ArrayBufferWriter<byte>(4 * 1024);
        Write(written, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes a case file, without a line end.</summary>
    public static void Write(Case written, IBufferWriter<byte> to)
    {
        ArgumentNullException.ThrowIfNull(written);
        using var json = new Utf8JsonWriter(to, JsonForm.Writing);
        json.WriteStartObject();
        json.WriteString("format", CaseReader.Format);
        json.WriteString("host", written.Host);
        WriteIfKnown(json, "system", written.System);
        WriteIfKnown(json, "stage", written.Stage);
        WriteIfKnown(json, "purpose", written.Purpose);
        WriteIfKnown(json, "noticed", written.Noticed?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        if (written.Place is { } place) WritePlace(json, place);
        if (!written.PriorFactors.IsEmpty) WriteFactors(json, written);
        json.WriteStartArray("looks");
        foreach (var look in written.Looks) WriteLook(json, look);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter json, Place place)
    {
        json.WriteStartObject("place");
        json.WriteNumber("latitude", place.Latitude);
        json.WriteNumber("longitude", place.Longitude);
        if (place.UncertaintyMeters is { } uncertainty) json.WriteNumber("uncertaintyMeters", uncertainty);
        json.WriteEndObject();
    }

    private static void WriteFactors(Utf8JsonWriter json, Case written)
    {
        json.WriteStartArray("priorFactors");
        foreach (var factor in written.PriorFactors)
        {
            json.WriteStartObject();
            json.WriteString("cause", factor.Cause.Id);
            json.WriteNumber("factor", factor.Factor);
            json.WriteString("reason", factor.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLook(Utf8JsonWriter json, Look look)
    {
        json.WriteStartObject();
        json.WriteString("character", look.Character.Id);
        WriteIfKnown(json, look.Character.IsMeasured ? "of" : "from", look.Facet);
        WriteSeen(json, look);
        json.WriteString("how", look.How.Word());
        WriteIfKnown(json, "surface", look.Surface?.Word());
        if (look.Hours is { } hours) json.WriteNumber("hours", hours);
        json.WriteString("by", look.By.Word());
        WriteIfKnown(json, "observer", look.Person);
        WriteIfKnown(json, "at", look.At);
        WriteIfKnown(json, "note", look.Note);
        json.WriteEndObject();
    }

    private static void WriteSeen(Utf8JsonWriter json, Look look)
    {
        if (look.IsUnsure)
        {
            json.WriteString("state", SeenReader.Unsure);
        }
        else if (look.Character.IsMeasured)
        {
            json.WriteStartArray("values");
            foreach (double value in look.Values) json.WriteNumberValue(value);
            json.WriteEndArray();
        }
        else if (look.Character.IsMany)
        {
            json.WriteStartArray("states");
            foreach (int state in look.States) json.WriteStringValue(look.Character.States[state]);
            json.WriteEndArray();
        }
        else
        {
            json.WriteString("state", look.Character.States[look.States[0]]);
        }
    }

    private static void WriteIfKnown(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null) json.WriteString(name, value);
    }
}
