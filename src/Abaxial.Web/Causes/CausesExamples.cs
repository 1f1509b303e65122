namespace Abaxial.Web.Causes;

/// <summary>Examples for the description of the API.</summary>
internal static class CausesExamples
{
    private const string Line = """{ "id": "late-blight", "name": "Late blight", "scientific": "Phytophthora infestans", "kind": "oomycete", "hosts": ["potato", "tomato"], "isRegulated": false }""";

    public const string Causes = $$"""{ "knowledge": "solanum 1 0a1b2c3d", "causes": [{{Line}}] }""";

    public const string Cause = $$"""
        {
          "knowledge": "solanum 1 0a1b2c3d", "cause": {{Line}}, "olderNames": [], "eppo": "PHYTIN", "advice": "Ask a licensed adviser.",
          "rows": [{ "character": "concentric-rings", "facet": null, "host": null, "chances": { "absent": 0.93, "faint": 0.06, "clear": 0.01 }, "range": null, "strength": 12, "says": "No target rings.", "source": "Judgement" }]
        }
        """;

    public const string Characters = """
        {
          "knowledge": "solanum 1 0a1b2c3d",
          "characters": [{
            "id": "concentric-rings", "name": "Target rings in the leaf spots", "states": [{ "id": "absent", "name": "absent", "isEmpty": true }], "isMany": false, "isMeasured": false, "organ": "leaf", "hosts": [],
            "ways": ["naked-eye", "hand-lens"], "surfaces": [], "from": [], "minutes": 1, "waitHours": 0
          }]
        }
        """;
}
