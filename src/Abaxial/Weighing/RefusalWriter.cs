using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>Writes refusals as one JSON document each, without white space.</summary>
public static class RefusalWriter
{
    /// <summary>The value of a refusal's member <c>format</c>.</summary>
    public const string Format = "abaxial-refusal/1";

    /// <summary>The bytes of a refusal, in UTF-8.</summary>
    /// <inheritdoc cref="Write"/>
    public static byte[] ToUtf8(int caseNumber, ImmutableArray<CaseProblem> problems)
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(caseNumber, problems, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes a refusal, without a line end.</summary>
    /// <param name="caseNumber">Which case of the files or the stream was refused, from 1.</param>
    /// <param name="problems">Why.</param>
    /// <param name="to">Where to write.</param>
    public static void Write(int caseNumber, ImmutableArray<CaseProblem> problems, IBufferWriter<byte> to)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(caseNumber);
        using var json = new Utf8JsonWriter(to, JsonForm.Writing);
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteNumber("case", caseNumber);
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("at", problem.At);
            json.WriteString("found", problem.Found);
            json.WriteStartArray("accepted");
            foreach (string accepted in problem.Accepted) json.WriteStringValue(accepted);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
