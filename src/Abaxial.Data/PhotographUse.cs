using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data;

/// <summary>Which samples name a photograph: noted in the transaction that writes the entry, and made anew from the entries where a store has none.</summary>
internal static class PhotographUse
{
    public static void Configure(ModelBuilder modelBuilder) => modelBuilder.Entity<PhotographUseRow>().ToTable("photograph_uses").HasKey(row => new { row.Sha256, row.Sample });

    /// <summary>Notes the photograph that an entry adds, also by a correction. What is struck later stays noted, as it stays to be read.</summary>
    public static async Task NoteAsync(LedgerContext context, Entry entry, Payload? payload, CancellationToken cancel)
    {
        if ((payload is Correction { Replacement: { } replacement } ? replacement : payload) is not PhotographAdded { Sha256: var sha256 }) return;
        string sample = entry.Sample.ToString();
        if (await context.PhotographUses.FindAsync([sha256, sample], cancel) is null) context.PhotographUses.Add(new PhotographUseRow { Sha256 = sha256, Sample = sample });
    }

    /// <summary>Fills the table of a store that was written before there was one.</summary>
    public static async Task FillAsync(LedgerContext context, CancellationToken cancel)
    {
        if (await context.PhotographUses.AnyAsync(cancel)) return;
        var texts = context.Entries.AsNoTracking().Where(row => row.Kind == EntryKind.Photograph || row.Kind == EntryKind.Correction).Select(row => row.Text).AsAsyncEnumerable();
        await foreach (string text in texts.WithCancellation(cancel))
        {
            if (EntryReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Entry is { } entry) await NoteAsync(context, entry, PayloadReader.Read(entry).Payload, cancel);
        }

        await context.SaveChangesAsync(cancel);
    }
}
