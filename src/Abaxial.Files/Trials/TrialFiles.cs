using System.Collections.Immutable;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Files.Knowledge;
using YamlDotNet.Core;

namespace Abaxial.Files.Trials;

/// <summary>Reads trials: lists of them in YAML, and plain case files in JSON of which nothing is asked.</summary>
public static class TrialFiles
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly ImmutableHashSet<string> Known = ImmutableHashSet.Create(
        StringComparer.Ordinal, ["id", "story", "source", "leads", "late-blight", "standing", "advice", "advice-not", "case"]);

    /// <summary>Reads every <c>*.yaml</c> and <c>*.json</c> of a folder, in the order of their names.</summary>
    /// <exception cref="IOException">The folder or a file cannot be read.</exception>
    /// <exception cref="InvalidDataException">A file is not a list of trials, or two trials have one id; the message names file and line.</exception>
    public static ImmutableArray<Trial> ReadFolder(string folder)
    {
        var trials = ImmutableArray.CreateBuilder<Trial>();
        foreach (string path in Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal))
        {
            if (path.EndsWith(".yaml", StringComparison.Ordinal)) trials.AddRange(Read(path));
            if (path.EndsWith(".json", StringComparison.Ordinal)) trials.Add(ReadCase(path));
        }

        var seen = new Dictionary<string, Trial>(StringComparer.Ordinal);
        foreach (var trial in trials)
        {
            if (!seen.TryAdd(trial.Id, trial)) throw Wrong(trial.File, trial.Line, $"the id '{trial.Id}' stands in {seen[trial.Id].File} too");
        }

        return trials.ToImmutable();
    }

    /// <summary>Reads one file of trials.</summary>
    /// <inheritdoc cref="ReadFolder"/>
    public static ImmutableArray<Trial> Read(string path)
    {
        string file = Path.GetFileName(path);
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        JsonNode? root;
        try
        {
            using var text = File.OpenText(path);
            root = YamlToJson.Read(text, lines);
        }
        catch (YamlException problem)
        {
            throw Wrong(file, (int)problem.Start.Line, problem.Message);
        }

        if (root is not JsonArray list) throw Wrong(file, 1, "the file is not a list of trials");
        return [.. list.Select((entry, index) => ReadTrial(entry, file, lines.GetValueOrDefault(index.ToString(CultureInfo.InvariantCulture))))];
    }

    private static Trial ReadCase(string path) => new() { Id = Path.GetFileNameWithoutExtension(path), File = Path.GetFileName(path), Line = 0, Case = File.ReadAllBytes(path) };

    private static Trial ReadTrial(JsonNode? entry, string file, int line)
    {
        if (entry is not JsonObject fields) throw Wrong(file, line, "a trial is a mapping");
        string? unknown = fields.Select(pair => pair.Key).FirstOrDefault(key => !Known.Contains(key));
        if (unknown is not null) throw Wrong(file, line, $"'{unknown}' is no member of a trial; accepted: {string.Join(", ", Known.Order(StringComparer.Ordinal))}");
        if (fields["id"] is null || fields["case"] is null) throw Wrong(file, line, "a trial needs an id and a case");
        var bounds = fields["late-blight"] as JsonObject;
        return new Trial
        {
            Id = fields["id"]!.ToString(),
            File = file,
            Line = line,
            Story = fields["story"]?.ToString() ?? "",
            Sources = Words(fields["source"]),
            Leads = Words(fields["leads"]),
            AtMost = Bound(bounds, "at-most", file, line),
            AtLeast = Bound(bounds, "at-least", file, line),
            Standings = Words(fields["standing"]),
            Advice = Words(fields["advice"]),
            AdviceNot = Words(fields["advice-not"]),
            Case = JsonSerializer.SerializeToUtf8Bytes(fields["case"], Relaxed),
        };
    }

    private static double? Bound(JsonObject? bounds, string name, string file, int line) => bounds?[name] switch
    {
        null => null,
        JsonValue value when value.TryGetValue(out double bound) && bound is >= 0 and <= 1 => bound,
        var other => throw Wrong(file, line, $"'{other.ToJsonString()}' is no probability"),
    };

    private static ImmutableArray<string> Words(JsonNode? node) => node switch
    {
        null => [],
        JsonArray list => [.. list.Select(item => item?.ToString() ?? "")],
        _ => [node.ToString()],
    };

    private static InvalidDataException Wrong(string file, int line, string found) => new($"{file}({line}): {found}.");
}
