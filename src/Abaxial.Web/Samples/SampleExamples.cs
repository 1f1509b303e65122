namespace Abaxial.Web.Samples;

/// <summary>Examples for the description of the API, all of the demo's island.</summary>
internal static class SampleExamples
{
    public const string Written = """{ "sample": "01K1H7Z0000000000000000000", "entry": "01K1H8A0000000000000000000" }""";

    public const string TakeIn = """
        {
          "host": "tomato", "system": "high-tunnel", "stage": "fruiting", "noticed": "2026-07-28", "submitter": "g-11", "says": "White growth in two rows since the fog.",
          "place": { "latitude": 44.06, "longitude": -31.12, "uncertaintyMeters": 500 },
          "cases": [{ "looks": [{ "character": "concentric-rings", "state": "absent", "how": "hand-lens", "by": "scout", "observer": "s-02" }] }]
        }
        """;

    public const string Entry = """
        { "kind": "look", "version": 1, "payload": { "case": 1, "observation": { "character": "leaf-underside-growth", "states": ["white-down"], "how": "hand-lens", "surface": "wet-morning", "by": "diagnostician" } } }
        """;

    public const string Correction = """
        { "why": "That was another leaf.", "version": 1, "payload": { "case": 1, "observation": { "character": "concentric-rings", "state": "clear", "how": "hand-lens" } } }
        """;

    public const string Case = """{ "format": "abaxial-case/1", "host": "tomato", "looks": [{ "character": "concentric-rings", "state": "absent", "how": "hand-lens" }] }""";

    public const string Merge = """{ "entries": [], "texts": [{ "person": "g-11", "salt": "AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=", "text": "White growth in two rows." }] }""";

    public const string Merged = """{ "added": 3, "wereThere": 0, "refused": [{ "index": 3, "problems": [{ "at": "/author", "found": "s-05", "accepted": ["s-02"] }] }] }""";

    /// <summary>The beginning of an answer; docs/schema has the whole of it.</summary>
    public const string Answer = """
        {
          "format": "abaxial-answer/1", "knowledge": "solanum 2026.1 84354d1a", "standing": "open", "standingBecause": "probability", "advice": "hold",
          "lateBlight": { "probability": 0.312, "low": 0.151, "high": 0.498 }, "causes": [{ "id": "late-blight", "probability": 0.312, "low": 0.151, "high": 0.498 }]
        }
        """;

    public const string List = """
        {
          "samples": [{
            "sample": "01K1H7Z0000000000000000000", "number": "26-0142-D", "host": "tomato", "system": "high-tunnel", "area": "Kestle Bight", "with": "d-01", "taken": "2026-07-28T08:12:00+00:00", "promised": null,
            "snoozedUntil": null, "isOpen": true, "standing": "likely", "lateBlight": 0.91, "leader": "late-blight", "leaderPercent": 91, "diagnosed": [], "photographs": 2, "looks": 13
          }],
          "next": null
        }
        """;

    public const string Sample = """
        {
          "sample": "01K1H7Z0000000000000000000", "number": "26-0142-D",
          "takenIn": {
            "host": "tomato", "system": "high-tunnel", "stage": "fruiting", "purpose": null, "noticed": "2026-07-28", "cultivar": null,
            "area": { "name": "Kestle Bight", "latitude": 44, "longitude": -31, "uncertaintyMeters": 80500 }, "place": { "latitude": 44.06, "longitude": -31.12 },
            "submitter": "g-11", "says": "White growth in two rows since the fog.", "promised": null
          },
          "cases": [{ "number": 1, "case": { "format": "abaxial-case/1", "host": "tomato", "looks": [] }, "problems": [], "looks": [] }],
          "photographs": [], "diagnoses": [], "messages": [{ "entry": "01K1H8A0000000000000000000", "made": "2026-07-28T09:00:00+00:00", "direction": "in", "text": "It rained all night." }],
          "with": null, "snoozedUntil": null, "closedBecause": null, "erased": [], "timeline": [], "heads": ["01K1H8A0000000000000000000"]
        }
        """;

    public const string Entries = """{ "entries": [{ "hash": "9f2c1d8be0a4417d2f6f0b7c3f5a1e6d9f2c1d8be0a4417d2f6f0b7c3f5a1e6d", "entry": { "kind": "look" } }], "next": null }""";
}
