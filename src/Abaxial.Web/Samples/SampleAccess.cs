using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>Finds samples for somebody. What is not theirs to see is not there.</summary>
internal static class SampleAccess
{
    /// <summary>Whether somebody may see a sample, by its row.</summary>
    public static bool Sees(this Visitor visitor, SampleRow row) =>
        visitor.MayRead
        && (visitor.Scope is not { } scope || row.Submitter == scope.Person || row.TakenBy == scope.Person || (row.Area is { } area && scope.Areas.Contains(area)));

    /// <summary>The row of a sample; null where it is not there for them.</summary>
    public static async Task<SampleRow?> RowAsync(this LedgerContext context, Visitor visitor, string sample, CancellationToken cancel)
    {
        if (!EntryId.TryParse(sample, out var id)) return null;
        string written = id.ToString();
        return await context.Samples.AsNoTracking().SingleOrDefaultAsync(row => row.Sample == written, cancel) is { } row && visitor.Sees(row) ? row : null;
    }

    /// <summary>A sample as its entries make it; null where it is not there for them.</summary>
    public static async Task<SampleView?> ViewAsync(this Ledger ledger, Visitor visitor, string sample, KnowledgeBase knowledge, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        if (await context.RowAsync(visitor, sample, cancel) is not { } row) return null;
        var id = EntryId.Parse(row.Sample);
        return SampleFold.Of(id, await ledger.EntriesOfAsync(id, cancel), knowledge);
    }
}
