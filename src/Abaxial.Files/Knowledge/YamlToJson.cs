using System.Globalization;
using System.Text.Json.Nodes;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Abaxial.Files.Knowledge;

/// <summary>Reads YAML as the JSON it would be: plain scalars as numbers, booleans or null where they look so, quoted ones as text.</summary>
public static class YamlToJson
{
    /// <summary>Reads one document.</summary>
    /// <param name="text">The YAML text.</param>
    /// <param name="lines">Receives the line (from 1) of every mapping key and list entry, by slash-separated path: of a list entry its place, and of one that has an id that as well, under which its own keys stand.</param>
    /// <exception cref="YamlException">The text is not YAML, or a key stands twice.</exception>
    public static JsonNode? Read(TextReader text, IDictionary<string, int> lines)
    {
        var stream = Load(text);
        return stream.Documents.Count == 0 ? null : Convert(stream.Documents[0].RootNode, "", lines);
    }

    private static YamlStream Load(TextReader text)
    {
        var stream = new YamlStream();
        try
        {
            stream.Load(text);
        }
        catch (InvalidOperationException problem)
        {
            // What the parser says of brackets that are never closed.
            throw new YamlException("The text ends within something that was begun.", problem);
        }

        return stream;
    }

    private static JsonNode? Convert(YamlNode node, string path, IDictionary<string, int> lines)
    {
        lines[path] = (int)node.Start.Line;
        switch (node)
        {
            case YamlMappingNode mapping:
                var fields = new JsonObject();
                foreach (var (key, value) in mapping.Children)
                {
                    string name = ((YamlScalarNode)key).Value ?? "";
                    string child = Join(path, name);
                    fields[name] = Convert(value, child, lines);
                    lines[child] = (int)key.Start.Line;
                }

                return fields;
            case YamlSequenceNode sequence:
                var items = new JsonArray();
                foreach (var item in sequence.Children)
                {
                    string place = Join(path, items.Count.ToString(CultureInfo.InvariantCulture));
                    items.Add(Convert(item, IdOf(item) is { } id ? Join(path, id) : place, lines));
                    lines[place] = (int)item.Start.Line;
                }

                return items;
            default:
                return Scalar((YamlScalarNode)node);
        }
    }

    private static string? IdOf(YamlNode item) => item is YamlMappingNode mapping && mapping.Children.TryGetValue(new YamlScalarNode("id"), out var id) ? (id as YamlScalarNode)?.Value : null;

    private static string Join(string path, string name) => path.Length == 0 ? name : $"{path}/{name}";

    private static JsonValue? Scalar(YamlScalarNode node)
    {
        string text = node.Value ?? "";
        if (node.Style != ScalarStyle.Plain) return JsonValue.Create(text);
        if (text is "" or "null" or "~") return null;
        if (text is "true" or "false") return JsonValue.Create(text == "true");
        bool isNumber = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && !char.IsLetter(text[^1]);
        return isNumber ? JsonValue.Create(number) : JsonValue.Create(text);
    }
}
