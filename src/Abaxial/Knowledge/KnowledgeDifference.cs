using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Abaxial.Knowledge;

/// <summary>A row that is not the same in two versions of the knowledge.</summary>
/// <param name="CauseId">Whose row.</param>
/// <param name="Key">The row's key as in the files: <c>character/facet@host</c>.</param>
/// <param name="Before">The row before; null where it is new.</param>
/// <param name="After">The row after; null where it is gone.</param>
public sealed record RowChange(string CauseId, string Key, Row? Before, Row? After)
{
    /// <summary>Only the sentence for people was changed: no answer can change by it.</summary>
    public bool IsOnlyWording =>
        Before is not null && After is not null
        && Before.Chances.AsSpan().SequenceEqual(After.Chances.AsSpan())
        && Before.Range == After.Range
        && Before.Strength == After.Strength
        && Before.SourceKind == After.SourceKind;
}

/// <summary>What differs between two versions of the knowledge.</summary>
public sealed record KnowledgeDifference
{
    private static readonly string[] Elsewhere = ["causes", "characters", "sources", "texts", "name", "version"];

    /// <summary>Ids of causes that only the second has.</summary>
    public required ImmutableArray<string> CausesAdded { get; init; }

    /// <summary>Ids of causes that only the first has.</summary>
    public required ImmutableArray<string> CausesRemoved { get; init; }

    /// <summary>Ids of causes that clinics see more or less often than before.</summary>
    public required ImmutableArray<string> SeenChanged { get; init; }

    /// <summary>Ids of characters that are new, gone, or read otherwise.</summary>
    public required ImmutableArray<string> CharactersChanged { get; init; }

    /// <summary>Names of the settings, as in knowledge.yaml, that differ; <c>reading</c> for all of reading.yaml.</summary>
    public required ImmutableArray<string> SettingsChanged { get; init; }

    /// <summary>Rows of causes that both have, by cause and key.</summary>
    public required ImmutableArray<RowChange> Rows { get; init; }

    public static KnowledgeDifference Between(KnowledgeBase before, KnowledgeBase after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        JsonObject old = Fields(before), now = Fields(after);
        Dictionary<string, JsonNode> oldCauses = ById(old, "causes"), nowCauses = ById(now, "causes");
        var both = oldCauses.Keys.Intersect(nowCauses.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return new KnowledgeDifference
        {
            CausesAdded = [.. nowCauses.Keys.Except(oldCauses.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            CausesRemoved = [.. oldCauses.Keys.Except(nowCauses.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            SeenChanged = [.. both.Where(id => !JsonNode.DeepEquals(oldCauses[id]["seen"], nowCauses[id]["seen"]))],
            CharactersChanged = Changed(ById(old, "characters"), ById(now, "characters")),
            SettingsChanged = [.. old.Select(pair => pair.Key).Where(name => !Elsewhere.Contains(name) && !JsonNode.DeepEquals(old[name], now[name]))],
            Rows = [.. both.SelectMany(id => RowsOf(id, before, after, oldCauses[id], nowCauses[id]))],
        };
    }

    private static JsonObject Fields(KnowledgeBase knowledge) => JsonSerializer.SerializeToNode(knowledge.Document, KnowledgeJson.Default.KnowledgeDocument)!.AsObject();

    private static Dictionary<string, JsonNode> ById(JsonObject document, string list) =>
        document[list]!.AsArray().ToDictionary(entry => entry!["id"]!.GetValue<string>(), entry => entry!, StringComparer.Ordinal);

    private static ImmutableArray<string> Changed(Dictionary<string, JsonNode> old, Dictionary<string, JsonNode> now) =>
        [.. old.Keys.Union(now.Keys, StringComparer.Ordinal).Where(id => !JsonNode.DeepEquals(old.GetValueOrDefault(id), now.GetValueOrDefault(id))).Order(StringComparer.Ordinal)];

    private static IEnumerable<RowChange> RowsOf(string id, KnowledgeBase before, KnowledgeBase after, JsonNode old, JsonNode now)
    {
        JsonObject oldRows = old["rows"]!.AsObject(), nowRows = now["rows"]!.AsObject();
        Cause was = before.FindCause(id)!, becomes = after.FindCause(id)!;
        var keys = oldRows.Select(pair => pair.Key).Union(nowRows.Select(pair => pair.Key), StringComparer.Ordinal).Order(StringComparer.Ordinal);
        foreach (string key in keys.Where(key => !JsonNode.DeepEquals(oldRows[key], nowRows[key])))
        {
            yield return new RowChange(id, key, was.Rows.FirstOrDefault(row => KeyOf(row) == key), becomes.Rows.FirstOrDefault(row => KeyOf(row) == key));
        }
    }

    private static string KeyOf(Row row) => $"{row.Character.Id}{(row.Facet is null ? "" : $"/{row.Facet}")}{(row.Host is null ? "" : $"@{row.Host}")}";
}
