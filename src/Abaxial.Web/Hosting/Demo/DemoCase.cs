namespace Abaxial.Web.Hosting.Demo;

/// <summary>How a case of the demo island came to the clinic; people and moments are invented (demo/README.md).</summary>
/// <param name="File">The case, without its ending.</param>
/// <param name="TakenIn">When it was taken in.</param>
/// <param name="By">Who took it in.</param>
/// <param name="Sender">Who sent it.</param>
/// <param name="Place">What the sender calls the place.</param>
/// <param name="Says">What the sender said.</param>
internal sealed record DemoCase(string File, string TakenIn, string By, string Sender, string Place, string Says)
{
    /// <summary>Who has to act on it; null where nobody was named.</summary>
    public string? With { get; init; }

    /// <summary>The diagnosis that was signed; null where there is none.</summary>
    public (string Cause, string ProvenBy)? Signed { get; init; }

    /// <summary>Why it was closed; null where it is open.</summary>
    public string? Closed { get; init; }

    /// <summary>The season of 2026, in the order in which the samples came.</summary>
    public static readonly DemoCase[] Season =
    [
        new("06-store-dry-rot", "2026-01-19T10:20:00Z", "d-01", "g-03", "store of the Thrave Potato Society", "A bin near the door is going soft and furry."),
        new("03-greenhouse-gray-mold", "2026-04-16T09:05:00Z", "d-01", "g-01", "greenhouse at Kestle Bight", "The stems rot where we took the side shoots off.")
        {
            Closed = "The sender was told what it is and how to prune; no more is needed.",
        },
        new("10-canker-transplant-house", "2026-05-08T08:35:00Z", "s-02", "g-02", "transplant house", "One bench looks scorched along the edges.") { With = "d-01" },
        new("04-greenhouse-leaf-mold", "2026-06-12T10:00:00Z", "d-01", "g-01", "greenhouse at Kestle Bight", "Yellow on top, velvet below."),
        new("05-blackleg", "2026-06-16T13:40:00Z", "s-05", "g-03", "Nether Thrave, lower field", "Black stems, seen from the road."),
        new("08-spray-burn-or-not", "2026-07-09T17:50:00Z", "s-05", "g-03", "Upper Thrave, field by the mast", "Brown blotches two days after we sprayed.") { With = "d-01" },
        new("07-blossom-end-rot-on-the-side", "2026-07-16T14:10:00Z", "d-01", "g-05", "garden, Sallowmere", "A dark patch on the first tomatoes."),
        new("11-spotted-wilt", "2026-07-23T09:25:00Z", "s-02", "g-01", "tunnel 1 at Kestle Bight", "One plant here, one there.") { With = "d-01" },
        new("01-tunnel-late-blight", "2026-07-28T07:10:00Z", "s-02", "g-01", "tunnel 2 at Kestle Bight", "It came overnight, after the fog.") { With = "d-01" },
        new("12-potato-confirmed", "2026-08-02T06:45:00Z", "s-05", "g-03", "Upper Thrave, west slope", "Found on the walk this morning.")
        {
            With = "d-01", Signed = ("late-blight", "Sporangia under the microscope, and a PCR that was positive with its controls as they should be."),
        },
        new("02-garden-septoria", "2026-08-04T15:30:00Z", "d-01", "g-04", "allotments, Tansy Head", "Is this the blight that everybody talks about?"),
        new("09-drought", "2026-08-19T06:30:00Z", "s-02", "g-04", "allotments, Tansy Head", "I was away for three weeks."),
        new("13-tuber-not-yet-cut", "2026-09-19T16:55:00Z", "d-01", "g-04", "allotments, Tansy Head", "A photograph of one potato; may I eat the others?"),
        new("14-pink-rot", "2026-09-29T11:15:00Z", "d-01", "g-03", "flooded bottom field", "They feel like rubber."),
    ];
}
