using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Files.Knowledge;
using YamlDotNet.Core;

namespace Abaxial.Files.Weather;

/// <summary>The fields of a small YAML file, each with its line for refusals.</summary>
internal sealed class YamlFields
{
    private readonly JsonObject fields;
    private readonly string path;
    private readonly Dictionary<string, int> lines;

    private YamlFields(JsonObject fields, string path, Dictionary<string, int> lines)
    {
        this.fields = fields;
        this.path = path;
        this.lines = lines;
    }

    public IEnumerable<string> Names => fields.Select(one => one.Key);

    /// <exception cref="RefusedException">The text is no YAML mapping.</exception>
    public static YamlFields Read(TextReader text)
    {
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        try
        {
            return YamlToJson.Read(text, lines) is JsonObject root ? new YamlFields(root, "", lines) : throw new RefusedException(1, null, "something else", "a YAML mapping: name: value");
        }
        catch (YamlException fault)
        {
            throw new RefusedException(fault.Start.Line, null, fault.Message, "YAML");
        }
        catch (InvalidCastException)
        {
            throw new RefusedException(0, null, "a key that is no word", "a YAML mapping: name: value");
        }
    }

    public void RequireKnown(params ImmutableArray<string> known)
    {
        foreach (string name in Names)
        {
            if (!known.Contains(name)) throw new RefusedException(LineOf(name), name, "a field that nothing is known of", known);
        }
    }

    public bool Has(string name) => fields[name] is not null;

    public string? Text(string name) => fields[name] is { } node ? Scalar(node) ?? throw Wrong(name, "a word") : null;

    public double? Number(string name)
    {
        if (fields[name] is not { } node) return null;
        return node is JsonValue value && value.TryGetValue(out double number) && double.IsFinite(number) ? number : throw Wrong(name, "a number");
    }

    public double RequireNumber(string name) => Number(name) ?? throw Wrong(name, "a number");

    /// <summary>A list of words, or one word as a list of one; empty where the field is not there.</summary>
    public ImmutableArray<string> Words(string name)
    {
        if (fields[name] is not { } node) return [];
        if (node is not JsonArray list) return [Scalar(node) ?? throw Wrong(name, "a list")];
        return [.. list.Select(item => item is null ? "" : Scalar(item) ?? throw Wrong(name, "a list of words"))];
    }

    /// <summary>A field that holds fields; null where it is not there.</summary>
    public YamlFields? Fields(string name) => fields[name] switch
    {
        null => null,
        JsonObject inner => new YamlFields(inner, Join(name), lines),
        _ => throw Wrong(name, "fields: name: value"),
    };

    /// <summary>A field that holds fields, or one word.</summary>
    public bool IsWord(string name) => fields[name] is JsonValue;

    /// <summary>A list of fields; empty where it is not there.</summary>
    public ImmutableArray<YamlFields> List(string name)
    {
        if (fields[name] is not { } node) return [];
        if (node is not JsonArray list) throw Wrong(name, "a list");
        return [.. list.Select((item, i) => item is JsonObject inner ? new YamlFields(inner, $"{Join(name)}/{i}", lines) : throw Wrong(name, "a list of fields"))];
    }

    public RefusedException Wrong(string name, params ImmutableArray<string> accepted) =>
        new(LineOf(name), name, fields[name]?.ToJsonString() ?? "nothing", accepted);

    public int LineOf(string name) => lines.GetValueOrDefault(Join(name), lines.GetValueOrDefault(path));

    private string Join(string name) => path.Length == 0 ? name : $"{path}/{name}";

    private static string? Scalar(JsonNode node) => node is not JsonValue value ? null
        : value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : value.ToJsonString();
}
