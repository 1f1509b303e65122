using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Knowledge;
using YamlDotNet.Core;

namespace Abaxial.Files.Knowledge;

/// <summary>Something wrong in a knowledge file.</summary>
/// <param name="File">The file, relative to the folder.</param>
/// <param name="Line">The line, from 1; 0 where it is not known.</param>
/// <param name="Found">What is wrong, in a sentence.</param>
public sealed record KnowledgeFileProblem(string File, int Line, string Found);

/// <summary>A knowledge folder, compiled.</summary>
/// <param name="Compiled">The compiled JSON in UTF-8; empty where there are problems that kept it from being compiled.</param>
/// <param name="Knowledge">The knowledge; null where there are problems.</param>
/// <param name="Problems">What is wrong, with file and line.</param>
public sealed record CompiledKnowledge(byte[] Compiled, KnowledgeBase? Knowledge, ImmutableArray<KnowledgeFileProblem> Problems);

/// <summary>Reads a folder of knowledge files (YAML) and compiles it into the one JSON document that the library reads.</summary>
public sealed class KnowledgeFolder
{
    private static readonly JsonSerializerOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly string folder;
    private readonly List<KnowledgeFileProblem> problems = [];
    private readonly Dictionary<string, (string File, int Line)> places = new(StringComparer.Ordinal);
    private JsonObject words = [];

    private KnowledgeFolder(string folder) => this.folder = folder;

    /// <summary>Compiles a folder.</summary>
    /// <param name="folder">The folder that holds knowledge.yaml.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    public static CompiledKnowledge Compile(string folder)
    {
        if (!Directory.Exists(folder)) throw new DirectoryNotFoundException($"There is no folder '{folder}'.");
        return new KnowledgeFolder(folder).Compile();
    }

    private CompiledKnowledge Compile()
    {
        var document = ReadObject("knowledge.yaml", "");
        words = document["words"] as JsonObject ?? [];
        var characters = ReadObject("characters.yaml", "");
        document["groups"] = Detach(characters, "groups");
        document["characters"] = Detach(characters, "characters");
        document["reading"] = ReadObject("reading.yaml", "reading");
        document["sources"] = ReadSources();
        document["causes"] = ReadCauses();
        document["texts"] = ReadTexts();
        if (problems.Count > 0) return new CompiledKnowledge([], null, [.. problems]);

        byte[] compiled = JsonSerializer.SerializeToUtf8Bytes(document, Compact);
        var reading = KnowledgeBase.Read(compiled);
        return new CompiledKnowledge(compiled, reading.Knowledge, [.. reading.Problems.Select(Place)]);
    }

    private JsonObject ReadObject(string file, string under)
    {
        if (ReadFile(file, under) is JsonObject fields) return fields;
        if (problems.All(problem => problem.File != file)) problems.Add(new KnowledgeFileProblem(file, 1, "The file is missing or holds no mapping."));
        return [];
    }

    private JsonNode? ReadFile(string file, string under)
    {
        string path = Path.Combine(folder, file);
        if (!File.Exists(path)) return null;
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        try
        {
            using var text = File.OpenText(path);
            var node = YamlToJson.Read(text, lines);
            foreach (var (place, line) in lines) places[under.Length == 0 ? place : place.Length == 0 ? under : $"{under}/{place}"] = (file, line);
            return node;
        }
        catch (YamlException problem)
        {
            problems.Add(new KnowledgeFileProblem(file, (int)problem.Start.Line, problem.Message));
            return null;
        }
    }

    private static JsonNode? Detach(JsonObject from, string name)
    {
        var node = from[name];
        from.Remove(name);
        return node;
    }

    private JsonArray ReadSources()
    {
        var all = new JsonArray();
        if (ReadFile("sources.yaml", "sources") is not JsonArray list) return all;
        foreach (var entry in list.ToArray())
        {
            list.Remove(entry);
            if (entry is not JsonObject source) continue;
            foreach (string name in new[] { "year", "seen" })
            {
                if (source[name] is JsonValue value) source[name] = value.ToJsonString().Trim('"');
            }

            all.Add(source);
        }

        return all;
    }

    private JsonArray ReadCauses()
    {
        var causes = new JsonArray();
        string path = Path.Combine(folder, "causes");
        if (!Directory.Exists(path)) return causes;
        foreach (string file in Directory.EnumerateFiles(path, "*.yaml").Order(StringComparer.Ordinal))
        {
            string id = Path.GetFileNameWithoutExtension(file);
            var cause = ReadObject($"causes/{id}.yaml", $"causes/{id}");
            if (cause["id"]?.ToString() != id) problems.Add(new KnowledgeFileProblem($"causes/{id}.yaml", 1, $"The file's name and the id '{cause["id"]}' differ."));
            if (cause["seen"] is JsonObject seen) seen["source"] = SourceList(seen["source"]);
            if (cause["rows"] is JsonObject rows)
            {
                foreach (var (key, row) in rows)
                {
                    if (row is JsonObject fields) PrepareRow(fields, $"causes/{id}.yaml", $"causes/{id}/rows/{key}");
                    else problems.Add(new KnowledgeFileProblem($"causes/{id}.yaml", LineOf($"causes/{id}/rows/{key}"), $"Row '{key}' is not a mapping."));
                }
            }

            causes.Add(cause);
        }

        return causes;
    }

    private void PrepareRow(JsonObject row, string file, string at)
    {
        row["source"] = SourceList(row["source"]);
        var say = new JsonObject();
        foreach (string language in row.Select(pair => pair.Key).Where(key => key.Length == 2 && key != "is").ToArray()) say[language] = Detach(row, language);
        row["say"] = say;
        if (row["is"] is not JsonObject chances) return;
        foreach (string state in chances.Select(pair => pair.Key).ToArray())
        {
            if (chances[state] is not JsonValue value || value.GetValueKind() != JsonValueKind.String) continue;
            if (words[value.ToString()] is { } chance) chances[state] = chance.DeepClone();
            else problems.Add(new KnowledgeFileProblem(file, LineOf($"{at}/is/{state}"), $"'{value}' is no word for a chance; accepted: {string.Join(", ", words.Select(pair => pair.Key))}, or a number."));
        }
    }

    private static JsonArray SourceList(JsonNode? source) => source switch
    {
        JsonArray list => [.. list.Select(item => item?.DeepClone())],
        JsonValue value => [value.DeepClone()],
        _ => [],
    };

    private JsonObject ReadTexts()
    {
        var texts = new JsonObject();
        string path = Path.Combine(folder, "texts");
        if (!Directory.Exists(path)) return texts;
        foreach (string file in Directory.EnumerateFiles(path, "*.yaml").Order(StringComparer.Ordinal))
        {
            string language = Path.GetFileNameWithoutExtension(file);
            texts[language] = ReadObject($"texts/{language}.yaml", $"texts/{language}");
        }

        return texts;
    }

    private int LineOf(string at) => places.TryGetValue(at, out var place) ? place.Line : 0;

    private KnowledgeFileProblem Place(KnowledgeProblem problem)
    {
        for (string at = problem.At; ; at = at[..Math.Max(at.LastIndexOf('/'), 0)])
        {
            if (places.TryGetValue(at, out var place) && at.Length > 0) return new KnowledgeFileProblem(place.File, place.Line, $"{problem.At}: {problem.Found}");
            if (at.Length == 0) return new KnowledgeFileProblem("knowledge.yaml", 0, $"{problem.At}: {problem.Found}");
        }
    }
}
