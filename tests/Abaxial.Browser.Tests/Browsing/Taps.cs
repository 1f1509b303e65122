using System.Text.Json.Nodes;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>A case as it grows under somebody's thumb.</summary>
internal static class Taps
{
    /// <summary>The case without looks, with its first, its first two, and so on: what a page weighs after each tap.</summary>
    public static string[] LookByLook(string caseJson)
    {
        int looks = JsonNode.Parse(caseJson)!["looks"]!.AsArray().Count;
        return [.. Enumerable.Range(0, looks + 1).Select(made => WithFirstLooks(caseJson, made))];
    }

    private static string WithFirstLooks(string caseJson, int count)
    {
        var root = JsonNode.Parse(caseJson)!;
        var looks = root["looks"]!.AsArray();
        while (looks.Count > count) looks.RemoveAt(count);
        return root.ToJsonString();
    }
}
