using System.Text;
using System.Text.Json.Nodes;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>A way to damage a JSON text. The numbers are taken by the count of what there is to choose from.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="Where">Where it is done.</param>
/// <param name="What">What is put there.</param>
internal sealed record BytewiseDamage(int Kind, int Where, int What);

/// <inheritdoc cref="BytewiseDamage"/>
internal sealed record StructuralDamage(int Kind, int Where, int What);

internal static class CaseDamage
{
    private static readonly byte[][] Fragments = [.. new[]
    {
        "NaN", "-Infinity", "null", "true", "1e400", "-0", "0.1", "[", "]", "{", "}", "\"", ",", ":", "\\", "\\ud800", "\\udc00", "\\u0000", "\u00a0", "\ufeff", "\n", "//", "/*",
        "\"host\":\"potato\",", "\"state\":\"unsure\",", "\"states\":[\"none\",\"none\"],", "\"values\":[1],", "\"how\":\"photo\",", "\"of\":\"none\",", "\"surface\":\"moist-chamber\",", "\"hours\":1,",
    }.Select(Encoding.UTF8.GetBytes), [0x80], [0xC0, 0xAF], [0xED, 0xA0, 0x80], [0xF5], [0x00]];

    private static readonly string[] Values =
    [
        "null", "true", "0", "-1", "1e400", "1e-400", "0.5", "\"\"", "\"none\"", "\"unsure\"", "\"leaf\"", "\"tuber\"", "\"photo\"", "\"moist-chamber\"", "\"late-blight\"", "[]", "{}", "[null]", "[[[]]]",
        "[\"none\",\"white-down\"]", "[1,2,3]", "[\"unsure\"]", "{\"character\":\"pycnidia\",\"state\":\"absent\",\"how\":\"photo\"}", "{\"character\":\"spore-length\",\"values\":[3],\"how\":\"microscope\"}",
    ];

    private static readonly string[] Names =
        ["format", "host", "system", "place", "latitude", "priorFactors", "looks", "character", "state", "states", "values", "of", "from", "how", "surface", "hours", "by", "observer", "at", "note", "", "a/b", "~", "ü"];

    public static Gen<BytewiseDamage> Bytewise { get; } = Gen.Select(Gen.Int[0, 6], Gen.Int[0, 1 << 20], Gen.Int[0, 255], (kind, where, what) => new BytewiseDamage(kind, where, what));

    public static Gen<StructuralDamage> Structural { get; } = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 1 << 20], Gen.Int[0, 1 << 20], (kind, where, what) => new StructuralDamage(kind, where, what));

    public static byte[] Apply(byte[] utf8, IEnumerable<BytewiseDamage> damages) => damages.Aggregate(utf8, (damaged, damage) => Damage(damaged, damage.Kind, damage.Where, damage.What));

    /// <summary>Damages a text that is JSON so that it stays JSON.</summary>
    public static byte[] Apply(byte[] utf8, IEnumerable<StructuralDamage> damages)
    {
        var root = JsonNode.Parse(utf8)!;
        foreach (var damage in damages) Damage(root, damage.Kind, damage.Where, damage.What);
        return Encoding.UTF8.GetBytes(root.ToJsonString());
    }

    private static byte[] Damage(byte[] bytes, int kind, int where, int what)
    {
        if (bytes.Length == 0) return Fragments[what % Fragments.Length];
        int at = where % bytes.Length, end = Math.Min(at + 1 + (what % 40), bytes.Length);
        switch (kind)
        {
            case 0: return [.. bytes[..at], (byte)(bytes[at] ^ (1 << (what % 8))), .. bytes[(at + 1)..]];
            case 1: return [.. bytes[..at], (byte)what, .. bytes[(at + 1)..]];
            case 2: return [.. bytes[..at], .. bytes[end..]];
            case 3: return [.. bytes[..end], .. bytes[at..]];
            case 4: return bytes[..at];
            default:
                // After a comma or an opening bracket a fragment has the best chance of being understood.
                int sign = Array.FindIndex(bytes, at, value => value is (byte)',' or (byte)'{' or (byte)'[');
                int place = kind == 5 || sign < 0 ? at : sign + 1;
                return [.. bytes[..place], .. Fragments[what % Fragments.Length], .. bytes[place..]];
        }
    }

    private static void Damage(JsonNode root, int kind, int where, int what)
    {
        JsonNode[] all = [.. Below(root).Where(node => node is JsonObject { Count: > 0 } or JsonArray { Count: > 0 })];
        if (all.Length == 0) return;
        var chosen = all[where % all.Length];
        var value = JsonNode.Parse(Values[what % Values.Length]);
        if (chosen is JsonArray array)
        {
            int index = what % array.Count;
            if (kind == 0) array.RemoveAt(index);
            else if (kind == 1) array[index] = value;
            else if (kind == 2) array.Insert(index, array[index]?.DeepClone());
            else if (kind == 3) array.Clear();
            else array.Add(value);
            return;
        }

        var fields = (JsonObject)chosen;
        string name = fields.ElementAt(what % fields.Count).Key;
        if (kind == 0) fields.Remove(name);
        else if (kind == 1) fields[name] = value;
        else if (kind == 2) fields[Names[what % Names.Length]] = value;
        else if (kind == 3) fields[Names[what % Names.Length]] = fields[name]?.DeepClone();
        else fields[name] = Enumerable.Range(0, what % 40).Aggregate(value, (inner, _) => new JsonArray(inner));
    }

    private static IEnumerable<JsonNode> Below(JsonNode node)
    {
        IEnumerable<JsonNode?> children = node switch { JsonObject fields => fields.Select(field => field.Value), JsonArray items => items, _ => [] };
        return children.OfType<JsonNode>().SelectMany(Below).Prepend(node);
    }
}
