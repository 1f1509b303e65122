using System.Text;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>Checks that bytes are one JSON text within the limits, before anything in it is understood.</summary>
internal sealed class CaseForm
{
    private readonly CaseProblems problems;
    private readonly JsonPlace place = new();
    private bool isReadable = true;

    private CaseForm(CaseProblems problems) => this.problems = problems;

    /// <summary>How a case is parsed. One level more than is allowed, so that the level too many is met here, with its place, and not in the parser.</summary>
    public static JsonReaderOptions Options { get; } = new() { MaxDepth = CaseLimits.Depth + 1 };

    /// <summary>Notes what is wrong with the form.</summary>
    /// <returns>Whether the text can be read on: true also where all that is wrong is a key that stands twice.</returns>
    public static bool Check(ReadOnlySpan<byte> utf8, CaseProblems problems)
    {
        if (!utf8.StartsWith(Encoding.UTF8.Preamble)) return new CaseForm(problems).Check(utf8);
        problems.Add("", "a byte order mark", "UTF-8 without a byte order mark");
        return false;
    }

    private bool Check(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8, Options);
        try
        {
            while (reader.Read())
            {
                if (!CheckToken(ref reader)) return false;
            }
        }
        catch (JsonException fault)
        {
            problems.Add(place.ToPointer(), JsonText.Offending(utf8, fault), "JSON");
            return false;
        }

        return isReadable;
    }

    /// <summary>False where there is no use in reading on.</summary>
    private bool CheckToken(ref Utf8JsonReader reader)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject or JsonTokenType.StartArray:
                if (reader.CurrentDepth >= CaseLimits.Depth)
                {
                    problems.Add(place.ToPointer(), $"level {reader.CurrentDepth + 1}", $"at most {CaseLimits.Depth} levels of objects and arrays");
                    return false;
                }

                place.Enter(reader.TokenType == JsonTokenType.StartArray);
                break;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                place.Leave();
                break;
            case JsonTokenType.PropertyName:
                CheckName(ref reader);
                break;
            default:
                if (reader.TokenType == JsonTokenType.String) CheckText(ref reader);
                place.Pass();
                break;
        }

        return !problems.IsFull;
    }

    private void CheckName(ref Utf8JsonReader reader)
    {
        bool isText = CheckText(ref reader);
        string name = isText ? reader.GetString()! : "\uFFFD";
        if (!place.Name(name) && isText) problems.Add(place.ToPointer(), name, "each name once in an object");
    }

    private bool CheckText(ref Utf8JsonReader reader)
    {
        if (JsonText.FaultOf(reader.ValueSpan, reader.ValueIsEscaped) is not { } fault) return true;
        problems.Add(place.ToPointer(), fault, fault[0] == '\\' ? "both halves of a surrogate pair" : "UTF-8");
        isReadable = false;
        return false;
    }
}
