using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.Load.Filling;

/// <summary>Writes entries into the chains of their devices: the store's own, and a telephone of each scout.</summary>
internal sealed class Chains(string store, Random chance)
{
    private readonly Dictionary<string, (long Place, string Hash)> ends = new(StringComparer.Ordinal);

    public IEnumerable<ChainRow> Ends => ends.Select(end => new ChainRow { Device = end.Key, Place = end.Value.Place, Hash = end.Value.Hash });

    /// <summary>Writes what happened to one sample, as the ledger would have written it.</summary>
    /// <param name="story">What happened.</param>
    /// <param name="made">When it was taken in.</param>
    /// <param name="end">When it has to be over.</param>
    public IEnumerable<(EntryRow Row, Deed Deed, Payload Payload)> Write(IEnumerable<Deed> story, DateTimeOffset made, DateTimeOffset end)
    {
        var entries = new List<Entry>();
        EntryId[] heads = [], headsBefore = [];
        foreach (var deed in story)
        {
            var payload = deed.Payload(entries);
            var id = NewId(made);
            bool isApart = deed.IsApart && headsBefore.Length > 0;
            string device = isApart ? $"pocket-{deed.Author}" : store;
            var before = ends.GetValueOrDefault(device, (Place: 0, Hash: Entry.NothingBefore));
            var entry = new Entry
            {
                Id = id,
                Sample = entries.Count == 0 ? id : entries[0].Id,
                Author = deed.Author,
                Made = made,
                Device = device,
                Place = before.Place + 1,
                Previous = before.Hash,
                Kind = payload.Kind,
                Version = payload.Version,
                Payload = payload.ToJson(),
                Heads = [.. isApart ? headsBefore : heads],
            };
            string text = entry.Canonical(), hash = Entry.HashOf(text);
            ends[device] = (entry.Place, hash);
            entries.Add(entry);
            if (!isApart) headsBefore = heads;
            heads = [.. heads.Except(entry.Heads).Append(id).Order()];
            yield return (new EntryRow { Id = id.ToString(), Sample = entry.Sample.ToString(), Device = device, Place = entry.Place, Kind = entry.Kind, Text = text, Hash = hash, Received = made }, deed, payload);
            made += TimeSpan.FromSeconds(30 + chance.Next(20_000));
            if (made > end) made = end;
        }
    }

    private EntryId NewId(DateTimeOffset made)
    {
        Span<byte> random = stackalloc byte[10];
        chance.NextBytes(random);
        return EntryId.From(made, random);
    }
}
