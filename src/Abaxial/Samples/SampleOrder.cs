using System.Collections.Immutable;

namespace Abaxial.Samples;

/// <summary>
/// The one order of a sample's entries, whatever order they arrived in: an entry comes after all those that its author had seen and after those of its own device before it; of
/// entries that did not see each other the one made earlier comes first, then the smaller id. A device's clock may be wrong: it never puts an entry before what its author had
/// seen.
/// </summary>
public static class SampleOrder
{
    /// <summary>Orders a set of entries of one sample; the same entry given twice counts once.</summary>
    /// <remarks>An entry whose author saw one that has not arrived yet stands as if that one had not been named.</remarks>
    public static ImmutableArray<Entry> Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var waiting = new Dictionary<EntryId, Entry>();
        foreach (var entry in entries) waiting.TryAdd(entry.Id, entry);

        var (count, followers) = Graph(waiting);
        var ready = new PriorityQueue<Entry, (DateTimeOffset, EntryId)>();
        foreach (var entry in waiting.Values.Where(entry => count[entry.Id] == 0)) ready.Enqueue(entry, (entry.Made, entry.Id));

        var ordered = ImmutableArray.CreateBuilder<Entry>(waiting.Count);
        while (ready.TryDequeue(out var next, out _))
        {
            ordered.Add(next);
            waiting.Remove(next.Id);
            foreach (var follower in followers[next.Id])
            {
                if (--count[follower.Id] == 0) ready.Enqueue(follower, (follower.Made, follower.Id));
            }
        }

        // Entries that name each other in a circle cannot come from honest devices; they stand last, so that nothing is dropped.
        ordered.AddRange(waiting.Values.OrderBy(entry => entry.Made).ThenBy(entry => entry.Id));
        return ordered.ToImmutable();
    }

    /// <summary>The entries that no other has seen: what the next author has before them; ascending.</summary>
    public static ImmutableArray<EntryId> HeadsOf(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var all = entries.ToArray();
        var seen = all.SelectMany(entry => entry.Heads).ToHashSet();
        return [.. all.Select(entry => entry.Id).Where(id => !seen.Contains(id)).Distinct().Order()];
    }

    /// <summary>For each entry how many it comes after, and which come after it.</summary>
    private static (Dictionary<EntryId, int> Count, ILookup<EntryId, Entry> Followers) Graph(Dictionary<EntryId, Entry> entries)
    {
        var edges = new HashSet<(EntryId Before, EntryId After)>();
        foreach (var entry in entries.Values)
        {
            foreach (var head in entry.Heads.Where(entries.ContainsKey)) edges.Add((head, entry.Id));
        }

        foreach (var device in entries.Values.GroupBy(entry => entry.Device, StringComparer.Ordinal))
        {
            Entry? before = null;
            foreach (var entry in device.OrderBy(entry => entry.Place).ThenBy(entry => entry.Id))
            {
                if (before is not null) edges.Add((before.Id, entry.Id));
                before = entry;
            }
        }

        var count = entries.Keys.ToDictionary(id => id, _ => 0);
        foreach (var (_, after) in edges) count[after]++;
        return (count, edges.ToLookup(edge => edge.Before, edge => entries[edge.After]));
    }
}
