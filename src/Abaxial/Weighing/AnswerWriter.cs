using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Writes answers as one JSON document each, without white space. The same answer gives the same bytes on every machine.</summary>
public static class AnswerWriter
{
    /// <summary>The value of an answer's member <c>format</c>.</summary>
    public const string Format = "abaxial-answer/1";

    private const int ChanceDecimals = 6;
    private const int DecibanDecimals = 2;
    private const int WorthDecimals = 3;

    /// <summary>The bytes of an answer, in UTF-8.</summary>
    public static byte[] ToUtf8(Answer answer)
    {
        var buffer = new ArrayBufferWriter<byte>(16 * 1024);
        Write(answer, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes an answer, without a line end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number in the answer is not finite.</exception>
    public static void Write(Answer answer, IBufferWriter<byte> to)
    {
        ArgumentNullException.ThrowIfNull(answer);
        using var json = new Utf8JsonWriter(to, JsonForm.Writing);
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("knowledge", answer.Knowledge);
        json.WriteString("standing", answer.Standing.Word());
        json.WriteString("standingBecause", answer.StandingBecause.Word());
        json.WriteString("advice", answer.Advice.Word());
        json.WriteStartObject("lateBlight");
        WriteBand(json, answer.LateBlight);
        json.WriteEndObject();
        WriteCauses(json, answer.Causes);
        json.WriteStartObject("notListed");
        WriteFixed(json, "probability", answer.NotListed, ChanceDecimals);
        json.WriteEndObject();
        WriteEvidence(json, answer.Evidence);
        WriteNextLooks(json, answer.NextLooks);
        WriteConflicts(json, answer.Conflicts);
        json.WriteBoolean("misfit", answer.Misfit);
        json.WriteEndObject();
    }

    private static void WriteBand(Utf8JsonWriter json, CauseChance chance)
    {
        WriteFixed(json, "probability", chance.Probability, ChanceDecimals);
        WriteFixed(json, "low", chance.Low, ChanceDecimals);
        WriteFixed(json, "high", chance.High, ChanceDecimals);
    }

    private static void WriteCauses(Utf8JsonWriter json, ImmutableArray<CauseChance> causes)
    {
        json.WriteStartArray("causes");
        foreach (var chance in causes)
        {
            json.WriteStartObject();
            json.WriteString("id", chance.Cause.Id);
            WriteBand(json, chance);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEvidence(Utf8JsonWriter json, ImmutableArray<Evidence> evidence)
    {
        json.WriteStartArray("evidence");
        foreach (var entry in evidence)
        {
            json.WriteStartObject();
            json.WriteString("character", entry.Character.Id);
            WriteLooks(json, entry.Looks);
            WriteFixed(json, "decibans", entry.Decibans, DecibanDecimals);
            json.WriteString("towards", entry.Towards.Id);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteNextLooks(Utf8JsonWriter json, ImmutableArray<NextLook> looks)
    {
        json.WriteStartArray("nextLooks");
        foreach (var look in looks)
        {
            json.WriteStartObject();
            json.WriteString("character", look.Character.Id);
            json.WriteString("how", look.How.Word());
            WriteFixed(json, "worth", look.Worth, WorthDecimals);
            WriteShortest(json, "minutes", look.Minutes);
            WriteShortest(json, "waitHours", look.WaitHours);
            json.WriteStartArray("outcomes");
            foreach (var outcome in look.Outcomes)
            {
                json.WriteStartObject();
                json.WriteString("state", look.Character.States[outcome.State]);
                WriteFixed(json, "chance", outcome.Chance, ChanceDecimals);
                WriteFixed(json, "lateBlight", outcome.LateBlight, ChanceDecimals);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteConflicts(Utf8JsonWriter json, ImmutableArray<Conflict> conflicts)
    {
        json.WriteStartArray("conflicts");
        foreach (var conflict in conflicts)
        {
            json.WriteStartObject();
            WriteLooks(json, conflict.Looks);
            json.WriteString("why", conflict.Why.Word());
            if (conflict.Chance is { } chance) WriteFixed(json, "chance", chance, ChanceDecimals);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLooks(Utf8JsonWriter json, ImmutableArray<int> looks)
    {
        json.WriteStartArray("looks");
        foreach (int look in looks) json.WriteNumberValue(look);
        json.WriteEndArray();
    }

    private static void WriteFixed(Utf8JsonWriter json, string name, double value, int decimals)
    {
        json.WritePropertyName(name);
        json.WriteFixed(value, decimals);
    }

    // Adding zero turns a negative zero into zero and nothing else into anything else.
    private static void WriteShortest(Utf8JsonWriter json, string name, double value) => json.WriteNumber(name, value + 0.0);
}
