using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

/// <summary>The built-in knowledge with nothing known of one character, so that every cause takes its background.</summary>
internal static class EvenKnowledge
{
    public static KnowledgeBase Without(string character)
    {
        var document = JsonNode.Parse(BuiltIn.SolanumBytes())!;
        foreach (var cause in document["causes"]!.AsArray())
        {
            var rows = cause!["rows"]!.AsObject();
            foreach (string key in rows.Select(pair => pair.Key).Where(key => key.Split('/', '@')[0] == character).ToArray()) rows.Remove(key);
        }

        return KnowledgeBase.Read(JsonSerializer.SerializeToUtf8Bytes(document)).OrThrow();
    }

    /// <summary>The same case, read against other knowledge.</summary>
    public static Case Moved(Case weighed, KnowledgeBase knowledge) => CaseReader.Read(CaseWriter.ToUtf8(weighed), knowledge).Case!;
}
