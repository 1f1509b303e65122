using Abaxial.Samples;

namespace Abaxial.Data;

/// <summary>What the entries of a store say of other things in it, gathered while it is walked.</summary>
internal sealed class EntryFacts
{
    private readonly Dictionary<EntryId, EntryId> sampleOf = [];
    private readonly HashSet<EntryId> samples = [];
    private readonly Dictionary<string, int> counts = new(StringComparer.Ordinal);
    private readonly List<(EntryId Head, EntryId Sample, EntryId Entry)> unseen = [];

    public long Count { get; private set; }

    public long Samples => samples.Count;

    /// <summary>The samples, as they are stored, whose count nobody has taken.</summary>
    public IEnumerable<string> Uncounted => counts.Keys;

    public List<(Seal Seal, string Entry)> Seals { get; } = [];

    public List<(string Sha256, string Entry)> Photographs { get; } = [];

    public HashSet<(string Number, string Sample)> Numbers { get; } = [];

    public HashSet<string> Erased { get; } = new(StringComparer.Ordinal);

    /// <summary>Adds an entry as it is stored; null where it could not be read.</summary>
    public void Add(string id, string sample, Entry? entry)
    {
        Count++;
        counts[sample] = counts.GetValueOrDefault(sample) + 1;
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

    /// <summary>How many entries a sample has; once.</summary>
    public int TakeCountOf(string sample) => counts.Remove(sample, out int count) ? count : 0;

    /// <summary>The heads that are not here, with an entry whose author had seen them.</summary>
    public IEnumerable<(EntryId Head, EntryId Entry)> Missing() =>
        unseen.Where(head => !sampleOf.TryGetValue(head.Head, out var sample) || sample != head.Sample).Select(head => (head.Head, head.Entry));
}
