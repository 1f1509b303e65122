using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Browser.Tests.Browsing;
using Abaxial.Knowledge;

namespace Abaxial.Browser.Tests;

/// <summary>Case texts by name: the demo island's, one for every host and way with every character that can be looked at so, and some that are refused.</summary>
internal static class WeighedCases
{
    public static IReadOnlyDictionary<string, string> Island { get; } = Directory
        .EnumerateFiles(Path.Combine(Repository.Root, "demo", "cases"), "*.json")
        .Order(StringComparer.Ordinal)
        .ToDictionary(file => Path.GetFileNameWithoutExtension(file), File.ReadAllText);

    public static IReadOnlyDictionary<string, string> EveryHostAndWay { get; } = (
        from host in NativeLibrary.Knowledge.Document.Hosts
        from way in Enum.GetValues<Way>()
        select (Name: $"{host}, {way.Word()}", Text: EveryCharacter(host, way))).ToDictionary(one => one.Name, one => one.Text);

    public static IReadOnlyDictionary<string, string> Refused { get; } = new Dictionary<string, string>
    {
        ["no text"] = "",
        ["no JSON"] = "{\"format\":\"abaxial-case/1\",\"host\":\"tomato\",\"looks\":[",
        ["another format"] = """{"format":"abaxial-case/9","host":"tomato","looks":[]}""",
        ["a host that is not known"] = """{"format":"abaxial-case/1","host":"vine","looks":[]}""",
        ["a member that stands twice"] = """{"format":"abaxial-case/1","host":"tomato","host":"potato","looks":[]}""",
        ["a state that is not known"] = """{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"concentric-rings","state":"ringed ☂ \u0007","how":"naked-eye"}]}""",
        ["nothing beside something"] = """{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"leaf-underside-growth","states":["none","white-down"],"how":"hand-lens"}]}""",
        ["a number too large"] = """{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"spore-length","of":"lemon-shaped-sporangia","values":[1e999,-2],"how":"microscope"}]}""",
    };

    private static string EveryCharacter(string host, Way way)
    {
        var looks = new JsonArray();
        foreach (var character in NativeLibrary.Knowledge.Characters.Where(character => character.AppliesTo(host) && character.Accepts(way)))
        {
            if (LookAt(character, host) is not { } look) continue;
            look["character"] = character.Id;
            look["how"] = way.Word();
            look["by"] = Vocabulary.Observers[character.Index % Vocabulary.Observers.Length];
            looks.Add((JsonNode)look);
        }

        return new JsonObject { ["format"] = "abaxial-case/1", ["host"] = host, ["looks"] = looks }.ToJsonString();
    }

    /// <summary>What is seen, one state of the character after the other from one character to the next; null where nothing can be.</summary>
    private static JsonObject? LookAt(Character character, string host)
    {
        if (character.IsMeasured)
        {
            var measured = new JsonObject { ["values"] = JsonSerializer.SerializeToNode(new[] { 20.5, 22.25, 31 }) };
            if (character is { OfOnly: null, OfCharacter: { } kinds }) measured["of"] = kinds.States.First(state => kinds.StateIndex(state) != kinds.EmptyState);
            return measured;
        }

        string[] states = [.. character.States.Where((_, state) => character.HasState(state, host))];
        if (states.Length == 0) return null;
        var look = new JsonObject { ["state"] = states[character.Index % states.Length] };
        if (!character.Facets.IsEmpty) look["from"] = character.Facets[0];
        return look;
    }
}
