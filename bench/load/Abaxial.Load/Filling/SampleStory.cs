using Abaxial.Knowledge;
using Abaxial.Samples;

namespace Abaxial.Load.Filling;

/// <summary>Something that somebody did to a sample.</summary>
/// <param name="Author">Who.</param>
/// <param name="IsApart">On a telephone without coverage: what was written just before had not been seen there.</param>
/// <param name="Payload">What; or, of the entries before it, what to make of them.</param>
/// <param name="Texts">Texts that the payload seals.</param>
internal sealed record Deed(string Author, bool IsApart, Func<IReadOnlyList<Entry>, Payload> Payload, params SealedText[] Texts);

/// <summary>What happens to one sample, from taking in to closing.</summary>
internal sealed class SampleStory(Random chance, Island island, Sightings sightings, KnowledgeBase knowledge, string[] photographs)
{
    /// <summary>So many deeds, the first of which takes the sample in.</summary>
    public IEnumerable<Deed> Of(SampleNumber number, int count, bool isClosed)
    {
        string host = sightings.Host(), submitter = island.Grower(), scout = island.Scout(), person = island.Diagnostician();
        var cause = sightings.CauseOf(host);
        yield return TakenIn(host, submitter, chance.Next(3) == 0 ? scout : person);
        yield return Say(person, new Numbered(number));
        yield return Look(host, cause, person);
        int ending = isClosed ? 3 : 0;
        for (int left = count - 3 - ending; left > 0; left--) yield return Between(host, cause, submitter, scout, person);
        if (!isClosed) yield break;
        var right = chance.Next(8) == 0 ? sightings.CauseOf(host) : cause;
        yield return Say(person, new DiagnosisSigned { Case = 1, Primary = [right.Id], ProvenBy = chance.Next(4) == 0 ? "microscope" : null, Engine = new EngineSaid(knowledge.Id, "open", right.Id) });
        yield return Message(person, "out", submitter, island.Reply(right.Names["en"]));
        yield return Say(person, new Closed("answered"));
    }

    private Deed TakenIn(string host, string submitter, string by)
    {
        var says = Seal(submitter, island.Sentence());
        var place = Seal(submitter, $$"""{"latitude":{{44 + (chance.Next(1000) / 10_000.0):0.0000}},"longitude":{{-31 - (chance.Next(1000) / 10_000.0):0.0000}}}""");
        var taken = new TakenIn
        {
            Host = host,
            System = island.Pick(knowledge.Document.Systems.Where(system => host == "potato" ? system is "field" or "garden" or "storage" : system is not "storage").ToArray()),
            Cultivar = chance.Next(3) == 0 ? null : island.Cultivar(),
            Area = new Area(island.Place(), 44, -31, 80_000),
            Submitter = submitter,
            Says = says.Seal(),
            Place = place.Seal(),
        };
        return new Deed(by, false, _ => taken, says, place);
    }

    private Deed Between(string host, Cause cause, string submitter, string scout, string person) => chance.Next(20) switch
    {
        < 9 => Look(host, cause, chance.Next(4) == 0 ? scout : person),
        < 12 => Photograph(scout),
        < 15 => Message(chance.Next(2) == 0 ? submitter : person, chance.Next(2) == 0 ? "in" : "out", submitter, island.Sentence()),
        < 17 => Say(person, new HandedOver(island.Diagnostician())),
        < 18 => Say(person, new PriorFactorStated(1, cause.Id, 1.5, "weather of the last two weeks")),
        < 19 => new Deed(person, false, StrikeLook),
        _ => new Deed(person, false, MarkPhotograph),
    };

    private Deed Look(string host, Cause cause, string by)
    {
        bool isScout = by[0] == 's';
        var look = sightings.Look(host, cause, isScout ? "scout" : "diagnostician", by);
        return new Deed(by, isScout && chance.Next(2) == 0, _ => look);
    }

    private Deed Photograph(string by)
    {
        string sha256 = island.Pick(photographs);
        return Say(by, new PhotographAdded(sha256, "image/jpeg", PhotographBytes));
    }

    /// <summary>Bytes of every photograph of the pool.</summary>
    public const int PhotographBytes = 64;

    private static Payload StrikeLook(IReadOnlyList<Entry> before) => before.LastOrDefault(entry => entry.Kind == EntryKind.Look) is { } look && before.Count > 4
        ? Correction.Striking(look.Id, EntryKind.Look, "another plant's leaf")
        : new HandedOver("d-01");

    private Payload MarkPhotograph(IReadOnlyList<Entry> before) => before.LastOrDefault(entry => entry.Kind == EntryKind.Photograph) is { } photograph && PayloadReader.Read(photograph).Payload is PhotographAdded added
        ? new PhotographMarked { Sha256 = added.Sha256, Side = chance.Next(2) == 0 ? "upper" : "lower" }
        : new HandedOver("d-02");

    private Deed Message(string by, string direction, string about, string words)
    {
        var text = Seal(about, words);
        return new Deed(by, false, _ => new MessageNoted(direction, text.Seal()), text);
    }

    private static Deed Say(string by, Payload payload) => new(by, false, _ => payload);

    private SealedText Seal(string person, string words)
    {
        byte[] salt = new byte[SealedText.SaltLength];
        chance.NextBytes(salt);
        return new SealedText(person, salt, words);
    }
}
