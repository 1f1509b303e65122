using Abaxial.Samples;

namespace Abaxial.Data;

/// <summary>What the entries of a store say of other things in it, gathered while it is walked.</summary>
internal sealed class EntryFacts
{
    private readonly Dictionary<EntryId, EntryId> sampleOf = [];
    private readonly HashSet<EntryId> samples = [];
    private readonly List<(EntryId Head, EntryId Sample, EntryId Entry)> unseen = [];

    public long Count { get; private set; }

    public long Samples => samples.Count;

    public List<(Seal Seal, string Entry)> Seals { get; } = [];

    public List<(string Sha256, string Entry)> Photographs { get; } = [];

    public HashSet<(string Number, string Sample)> Numbers { get; } = [];

    public HashSet<string> Erased { get; } = new(StringComparer.Ordinal);

    /// <summary>Adds an entry; null where it could not be read.</summary>
    public void Add(string id, Entry? entry)
    {
        Count++;
        if (entry is null) return;
        sampleOf.TryAdd(entry.Id, entry.Sample);
        samples.Add(entry.Sample);
        foreach (var head in entry.Heads)
        {
            if (sampleOf.GetValueOrDefault(head) != entry.Sample) unseen.Add((head, entry.Sample, entry.Id));
        }

        var payload = PayloadReader.Read(entry).Payload;
        if (payload is null) return;
        foreach (var seal in payload.Seals) Seals.Add((seal, id));
        switch (payload is Correction { Replacement: { } replacement } ? replacement : payload)
        {
            case PhotographAdded photograph:
                Photographs.Add((photograph.Sha256, id));
                break;
            case Numbered numbered:
                Numbers.Add((numbered.Number.ToString(), entry.Sample.ToString()));
                break;
            case PersonErased erased:
                Erased.Add(erased.Person);
                break;
            default:
                break;
        }
    }

    /// <summary>The heads that are not here, with an entry whose author had seen them.</summary>
    public IEnumerable<(EntryId Head, EntryId Entry)> Missing() =>
        unseen.Where(head => !sampleOf.TryGetValue(head.Head, out var sample) || sample != head.Sample).Select(head => (head.Head, head.Entry));
}
