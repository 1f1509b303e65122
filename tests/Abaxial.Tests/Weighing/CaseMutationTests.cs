using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>Case files that were damaged, by bytes and by structure: whatever comes, the reader gives a case or says why not.</summary>
public sealed partial class CaseMutationTests
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

    private static readonly Gen<byte[]> Written = GenCase.Of(4).Select(CaseWriter.ToUtf8);

    [Fact]
    public void Damaged_bytes_give_a_case_or_problems() =>
        Gen.Select(Written, Gen.Select(Gen.Int[0, 6], Gen.Int[0, 1 << 20], Gen.Int[0, 255]).Array[1, 6])
            .Sample((bytes, damages) => AssertAnswered(damages.Aggregate(bytes, (damaged, damage) => Damage(damaged, damage.Item1, damage.Item2, damage.Item3))), iter: 12_000);

    [Fact]
    public void Damaged_structures_give_a_case_or_problems_at_places_that_exist() =>
        Gen.Select(Written, Gen.Select(Gen.Int[0, 4], Gen.Int[0, 1 << 20], Gen.Int[0, 1 << 20]).Array[1, 4])
            .Sample((bytes, damages) =>
            {
                var root = JsonNode.Parse(bytes)!;
                foreach (var (kind, where, what) in damages) Damage(root, kind, where, what);
                byte[] damaged = Encoding.UTF8.GetBytes(root.ToJsonString());
                foreach (var problem in AssertAnswered(damaged).Problems) AssertExists(JsonNode.Parse(damaged)!, problem);
            }, iter: 12_000);

    [Fact]
    public void Arbitrary_bytes_give_problems() => Gen.Byte.Array[0, 64].Sample(bytes => AssertAnswered(bytes).IsRefused, iter: 10_000);

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

    private static CaseReading AssertAnswered(byte[] utf8)
    {
        var reading = CaseText.Read(utf8);
        Assert.Equal(reading.Case is null, !reading.Problems.IsEmpty);
        Assert.InRange(reading.Problems.Length, 0, CaseLimits.Problems);
        foreach (var problem in reading.Problems)
        {
            Assert.Matches(Pointer(), problem.At);
            Assert.InRange(problem.Found.Length, 1, 100);
            Assert.NotEmpty(problem.Accepted);
        }

        if (reading.Case is not null) Assert.False(CaseText.Read(CaseWriter.ToUtf8(reading.Case)).IsRefused);
        return reading;
    }

    /// <summary>The place exists, or its parent does where something is missing.</summary>
    private static void AssertExists(JsonNode root, CaseProblem problem)
    {
        string[] steps = [.. problem.At.Split('/').Skip(1).Select(step => step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];
        if (problem.Found == "(missing)") steps = steps[..^1];
        JsonNode? at = root;
        foreach (string step in steps)
        {
            Assert.True(at is JsonObject fields ? fields.ContainsKey(step) : at is JsonArray items && int.Parse(step, System.Globalization.CultureInfo.InvariantCulture) < items.Count, problem.ToString());
            at = at is JsonObject found ? found[step] : at![int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)];
        }
    }

    [GeneratedRegex(@"\A(/([^~/]|~[01])*)*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Pointer();
}
