namespace Abaxial.Samples;

/// <summary>Whether the entries of one device follow each other.</summary>
public static class EntryChain
{
    /// <summary>What keeps an entry from standing where it stands; null where it fits.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="place">The place in the chain of the entry before it; 0 where there is none.</param>
    /// <param name="hash">The hash of the entry before it; <see cref="Entry.NothingBefore"/> where there is none.</param>
    public static string? Misfit(Entry entry, long place, string hash)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (entry.Place != place + 1)
        {
            return entry.Place == place + 2 ? $"Entry {place + 1} of device '{entry.Device}' is missing before it." : $"Entries {place + 1} to {entry.Place - 1} of device '{entry.Device}' are missing before it.";
        }

        return entry.Previous == hash ? null : "It does not follow the entry before it: that one was changed, taken out or put in.";
    }
}
