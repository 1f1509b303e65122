using System.Text;
using System.Text.Json.Nodes;
using Abaxial.Browser.Tests.Browsing;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Benchmarks.Workload;

/// <summary>The demo island's cases.</summary>
internal static class IslandCases
{
    public static string Text(string name) => File.ReadAllText(Path.Combine(Repository.Root, "demo", "cases", $"{name}.json"));

    /// <summary>Every case as one line of a stream, in the order of their names.</summary>
    public static byte[][] Lines() =>
    [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "demo", "cases"), "*.json").Order(StringComparer.Ordinal)
            .Select(file => Encoding.UTF8.GetBytes(JsonNode.Parse(File.ReadAllText(file))!.ToJsonString())),
    ];

    public static Case Read(string name, KnowledgeBase knowledge) => Read(Encoding.UTF8.GetBytes(Text(name)), knowledge);

    public static Case Read(byte[] text, KnowledgeBase knowledge)
    {
        var reading = CaseReader.Read(text, knowledge);
        return reading.Case ?? throw new InvalidDataException($"The case is refused: {reading.Problems[0]}");
    }
}
