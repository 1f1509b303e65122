using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>Folds rows anew, a few samples in one transaction, so that nobody who writes waits for long.</summary>
internal static class SampleRefresh
{
    private const int Batch = 16;

    /// <summary>Writes the rows that were made with other knowledge.</summary>
    /// <returns>How many there were.</returns>
    public static async Task<long> StaleAsync(Ledger ledger, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        string hash = ledger.Reader.Knowledge.Hash;
        long total;
        await using (var context = ledger.Ask()) total = await context.Samples.LongCountAsync(row => row.Knowledge != hash, cancel);
        long done = 0, last = -1;
        while (done < total)
        {
            int count = await ledger.WriteContextAsync(NextAsync, count => count > 0, cancel);
            if (count == 0) break; // others wrote them meanwhile
            progress?.Report(new StoreProgress("samples", done += count, total));
        }

        return done;

        async Task<int> NextAsync(LedgerContext context)
        {
            var stale = await context.Samples.AsNoTracking().Where(row => row.Key > last && row.Knowledge != hash).OrderBy(row => row.Key).Take(Batch).Select(row => new { row.Key, row.Sample }).ToListAsync(cancel);
            await new SampleRows(context, ledger.Reader).WriteAsync(stale.Select(row => row.Sample), cancel);
            if (stale.Count > 0) last = stale[^1].Key;
            return stale.Count;
        }
    }

    /// <summary>Writes the row of every sample, whatever stands there, and takes away rows of samples that no entry knows.</summary>
    /// <returns>How many samples there are.</returns>
    public static async Task<long> AllAsync(Ledger ledger, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        long total;
        await using (var context = ledger.Ask()) total = await context.Entries.Select(row => row.Sample).Distinct().LongCountAsync(cancel);
        long done = 0;
        string last = "";
        while (await ledger.WriteContextAsync(NextAsync, count => count > 0, cancel) is > 0 and var count) progress?.Report(new StoreProgress("samples", done += count, Math.Max(done, total)));
        await ledger.WriteContextAsync(StrangersAsync, _ => true, cancel);
        return done;

        async Task<int> NextAsync(LedgerContext context)
        {
            var next = await context.Entries.Where(row => row.Sample.CompareTo(last) > 0).Select(row => row.Sample).Distinct().Order().Take(Batch).ToListAsync(cancel);
            await new SampleRows(context, ledger.Reader).WriteAsync(next, cancel);
            if (next.Count > 0) last = next[^1];
            return next.Count;
        }

        async Task<int> StrangersAsync(LedgerContext context)
        {
            var strangers = await context.Samples.AsNoTracking().Where(row => !context.Entries.Any(entry => entry.Sample == row.Sample)).Select(row => row.Key).ToListAsync(cancel);
            foreach (long key in strangers) await WordIndex.RemoveAsync(context, key, cancel);
            return await context.Samples.Where(row => strangers.Contains(row.Key)).ExecuteDeleteAsync(cancel);
        }
    }
}
