using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Samples;

namespace Abaxial.App.Tests.Search;

/// <summary>What the tests of lists and search do with a store.</summary>
internal static class SearchStore
{
    public static async Task<EntryId> TakeInAsync(Ledger ledger, TakenIn takenIn, params SealedText[] texts)
    {
        var taken = await ledger.TakeInAsync(new EntryDraft { Author = "d-01", Payload = takenIn, Texts = [.. texts] }, [], TestContext.Current.CancellationToken);
        Assert.Empty(taken.Problems);
        return taken.Entry!.Id;
    }

    public static async Task<IReadOnlyList<SampleRow>> RowsAsync(Ledger ledger, SampleQuery query)
    {
        await using var context = ledger.Ask();
        return (await context.PageAsync(query, TestContext.Current.CancellationToken)).Rows;
    }
}
