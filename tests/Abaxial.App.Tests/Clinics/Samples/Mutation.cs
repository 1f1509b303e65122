using System.Text;
using System.Text.Json.Nodes;

namespace Abaxial.App.Tests.Clinics.Samples;

/// <summary>Damages requests: their bytes, their structure, their values. The same number gives the same damage.</summary>
internal static class Mutation
{
    private static readonly string[] Odd =
    [
        "null", "true", "-1", "0", "1e400", "-1e308", "123456789012345678901234567890", "0.1e-999", "\"\"", "\"\\ud800\"", "\"\\u0000\"", "\"\u202e\"", "\"../../etc/passwd\"", "\"2026-13-45\"", "\"9999-12-31T23:59:59.9999999Z\"",
        "\"0001-01-01T00:00:00.0000000Z\"", "{}", "[]", "[null]", "[[[[[[[[]]]]]]]]", "\"'; DROP TABLE entries; --\"", "\"7ZZZZZZZZZZZZZZZZZZZZZZZZZ\"", "NaN", "01", "\"<script>\"",
    ];

    /// <summary>One damaged body.</summary>
    public static byte[] Of(string valid, Random random) => random.Next(4) switch
    {
        0 => Bytes(Encoding.UTF8.GetBytes(valid), random),
        1 => Deep(valid, random),
        _ => Encoding.UTF8.GetBytes(Structure(valid, random)),
    };

    private static byte[] Bytes(byte[] bytes, Random random)
    {
        var damaged = bytes.ToList();
        for (int times = random.Next(1, 6); times > 0 && damaged.Count > 0; times--)
        {
            int at = random.Next(damaged.Count);
            switch (random.Next(5))
            {
                case 0: damaged[at] = (byte)random.Next(256); break;
                case 1: damaged.RemoveAt(at); break;
                case 2: damaged.Insert(at, (byte)random.Next(256)); break;
                case 3: damaged.RemoveRange(at, Math.Min(damaged.Count - at, random.Next(1, 40))); break;
                default: damaged.InsertRange(at, damaged.GetRange(at, Math.Min(damaged.Count - at, random.Next(1, 40)))); break;
            }
        }

        return [.. damaged];
    }

    private static byte[] Deep(string valid, Random random)
    {
        int levels = random.Next(1, 3_000);
        string deep = random.Next(2) == 0 ? new string('[', levels) + new string(']', levels) : string.Concat(Enumerable.Repeat("{\"a\":", levels)) + "1" + new string('}', levels);
        return Encoding.UTF8.GetBytes(valid.Replace("1", deep, StringComparison.Ordinal));
    }

    /// <summary>Puts odd values in places, takes members out, gives them other names, names them twice.</summary>
    private static string Structure(string valid, Random random)
    {
        var root = JsonNode.Parse(valid)!;
        for (int times = random.Next(1, 4); times > 0; times--)
        {
            var parents = new List<JsonNode>();
            Collect(root, parents);
            Damage(parents[random.Next(parents.Count)], random);
        }

        string text = root.ToJsonString();
        foreach (string odd in Odd) text = text.Replace($"\"@{Array.IndexOf(Odd, odd)}@\"", odd, StringComparison.Ordinal);
        return random.Next(8) == 0 ? text.Insert(1, "\"kind\":\"look\",\"kind\":\"look\",") : text;
    }

    private static void Damage(JsonNode parent, Random random)
    {
        var value = random.Next(12) == 0 ? JsonValue.Create(new string('x', random.Next(1, 30_000))) : JsonValue.Create($"@{random.Next(Odd.Length)}@");
        if (parent is JsonArray list)
        {
            if (list.Count > 0 && random.Next(2) == 0) list.RemoveAt(random.Next(list.Count));
            else list.Add(value);
        }
        else if (parent is JsonObject { Count: > 0 } members)
        {
            string name = members.ElementAt(random.Next(members.Count)).Key;
            if (random.Next(4) == 0) members.Remove(name);
            else if (random.Next(6) == 0) members[name + random.Next(3)] = value;
            else members[name] = value;
        }
    }

    private static void Collect(JsonNode? node, List<JsonNode> parents)
    {
        if (node is JsonObject members)
        {
            parents.Add(members);
            foreach (var (_, child) in members) Collect(child, parents);
        }
        else if (node is JsonArray list)
        {
            parents.Add(list);
            foreach (var child in list) Collect(child, parents);
        }
    }
}
