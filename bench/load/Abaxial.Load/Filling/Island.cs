using System.Globalization;

namespace Abaxial.Load.Filling;

/// <summary>Places, people, cultivars and sentences of the invented island, more than it has: a season of a hundred thousand samples.</summary>
internal sealed class Island(Random chance)
{
    private static readonly string[] Places = ["Sallowmere", "Upper Thrave", "Nether Thrave", "Kestle Bight", "Tansy Head", "Ostmarrow", "Fenholm", "Little Crake", "Wrenfold End", "Pellow Strand", "Dunnick Moor", "Gannet Stairs"];
    private static readonly string[] Corners = ["", " East", " West", " Hill", " Harbor"];
    private static readonly string[] Cultivars = ["Sallow Plum", "Thrave Early", "Kestle Red", "Bight Cherry", "Harbor Oxheart", "Moor White", "Gannet Blue", "Tansy Russet", "Señora Amable", "Frühe Rote"];
    private static readonly string[] Starts = ["The lower leaves", "The tops", "Two rows by the hedge", "The plants at the vents", "Some of the fruit", "Half of the lot", "The whole bed", "A few tubers", "The new shoots", "The tunnel"];
    private static readonly string[] Deeds = ["went over", "turned brown", "look scorched", "hang limp", "smell", "have spots", "are bronzed", "rot from one side", "lost their leaves", "stand still"];
    private static readonly string[] Times = ["since the fog", "after the storm", "since Monday", "within two days", "for a week", "since we watered", "after the spray", "overnight", "since the frost", "little by little"];
    private static readonly string[] Questions = ["Is it the blight?", "May we sell the rest?", "Shall we pull them?", "My neighbor has it too.", "We sprayed nothing.", "Please call before noon.", "The photographs show it.", "It was so last year as well."];
    private static readonly string[] Notes = ["same on the next plant", "growth only at the edge", "dry below", "rubbed: nothing", "seen against the light", "two leaves of five", "after a night in the bag", "fresh this morning"];

    public string Place() => Pick(Places) + Pick(Corners);

    public string Cultivar() => Pick(Cultivars);

    public string Note() => Pick(Notes);

    /// <summary>What a sender says, with a ticket that nobody else has.</summary>
    public string Sentence() => $"{Pick(Starts)} {Pick(Deeds)} {Pick(Times)}. {Pick(Questions)} Ticket {Ticket()}.";

    public string Reply(string cause) => $"We looked at it today and think of {cause}. {Pick(Starts)} should be watched; call us where it goes on. Ticket {Ticket()}.";

    /// <summary>Few growers send often, many once.</summary>
    public string Grower() => string.Create(CultureInfo.InvariantCulture, $"g-{(int)(5000 * chance.NextDouble() * chance.NextDouble()):0000}");

    public string Scout() => string.Create(CultureInfo.InvariantCulture, $"s-{chance.Next(1, 21):00}");

    public string Diagnostician() => string.Create(CultureInfo.InvariantCulture, $"d-{chance.Next(1, 9):00}");

    public T Pick<T>(IReadOnlyList<T> list) => list[chance.Next(list.Count)];

    private string Ticket() => string.Create(CultureInfo.InvariantCulture, $"{(char)('k' + chance.Next(10))}{(char)('a' + chance.Next(26))}{chance.Next(100_000):00000}");
}
