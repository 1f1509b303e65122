using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

/// <summary>Case files for tests, most of them with one thing in them.</summary>
internal static class CaseText
{
    public static KnowledgeBase Knowledge { get; } = BuiltIn.Solanum();

    /// <summary>The case that the interface shows as its example.</summary>
    public const string Example = """
        {
          "format": "abaxial-case/1",
          "host": "tomato",
          "system": "high-tunnel",
          "stage": "fruiting",
          "purpose": "market",
          "noticed": "2026-07-14",
          "place": { "latitude": 55.21, "longitude": -4.02, "uncertaintyMeters": 2000 },
          "priorFactors": [ { "cause": "late-blight", "factor": 2.5, "reason": "21 days of weather at the nearest station" } ],
          "looks": [
            { "character": "organs-affected", "states": ["leaf"], "how": "naked-eye", "by": "scout", "observer": "s-07" },
            { "character": "leaf-underside-growth", "state": "none", "how": "hand-lens", "surface": "dry-day", "by": "diagnostician" },
            { "character": "pycnidia", "state": "present", "how": "hand-lens", "by": "diagnostician" },
            { "character": "concentric-rings", "state": "unsure", "how": "photo", "by": "grower" },
            { "character": "spore-length", "of": "lemon-shaped-sporangia", "values": [28.1, 31.0, 33.4], "how": "microscope", "by": "diagnostician" }
          ]
        }
        """;

    public static string With(string members, string host = "tomato") => $$"""{"format":"abaxial-case/1","host":"{{host}}",{{members}}}""";

    public static string WithLooks(params string[] looks) => With($"\"looks\":[{string.Join(',', looks)}]");

    public static CaseReading Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    public static CaseReading Read(byte[] utf8) => CaseReader.Read(utf8, Knowledge);

    /// <summary>The case, where it must be accepted.</summary>
    public static Case Accepted(string text)
    {
        var reading = Read(text);
        Assert.Empty(reading.Problems);
        return reading.Case!;
    }

    /// <summary>The one look of an accepted case.</summary>
    public static Look AcceptedLook(string look) => Assert.Single(Accepted(WithLooks(look)).Looks);

    /// <summary>The one problem of a refused case.</summary>
    public static CaseProblem TheProblem(string text) => Assert.Single(Read(text).Problems);
}
