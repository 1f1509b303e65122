using System.Diagnostics.Metrics;

namespace Abaxial.Data;

/// <summary>What the ledger counts of its own work; whoever listens to the meter hears it.</summary>
public static class LedgerFigures
{
    /// <summary>The name of the meter.</summary>
    public const string Name = "Abaxial.Data";

    private static readonly Meter Meter = new(Name);
    private static readonly Counter<long> Entries = Meter.CreateCounter<long>("abaxial.entries.appended", "{entry}", "Entries that are on the disk, by kind.");
    private static readonly Counter<long> Photographs = Meter.CreateCounter<long>("abaxial.photographs.stored", "{photograph}", "Photographs that are on the disk.");

    internal static void CountEntries(IEnumerable<string> kinds)
    {
        foreach (string kind in kinds) Entries.Add(1, new KeyValuePair<string, object?>("kind", kind));
    }

    internal static void CountPhotograph() => Photographs.Add(1);
}
