using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests.Clinics.Photographs;

/// <summary>Which samples name a photograph.</summary>
public sealed class PhotographUseTests : IAsyncLifetime
{
    private readonly TestStore store = new();
    private Ledger ledger = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task Each_sample_that_names_it_is_noted_once_also_by_a_correction()
    {
        var photograph = await StoreAsync();
        var (first, second) = (await TestStore.TakeInAsync(ledger), await TestStore.TakeInAsync(ledger));
        await TestStore.AppendAsync(ledger, first, photograph);
        await TestStore.AppendAsync(ledger, first, photograph);
        var wrong = await TestStore.AppendAsync(ledger, second, await StoreAsync());
        await TestStore.AppendAsync(ledger, second, Correction.With(wrong.Id, "the wrong sample", photograph));
        Assert.Equal(new[] { first.ToString(), second.ToString() }.Order(StringComparer.Ordinal), await UsesAsync(photograph.Sha256));
    }

    [Fact]
    public async Task A_store_that_has_no_such_notes_yet_gets_them_from_its_entries()
    {
        var photograph = await StoreAsync();
        var sample = await TestStore.TakeInAsync(ledger);
        await TestStore.AppendAsync(ledger, sample, photograph);
        await using var context = ledger.Ask();
        await context.PhotographUses.ExecuteDeleteAsync(Cancel);
        Assert.Empty(await UsesAsync(photograph.Sha256));
        await PhotographUse.FillAsync(context, Cancel);
        Assert.Equal([sample.ToString()], await UsesAsync(photograph.Sha256));
    }

    [Fact]
    public async Task An_entry_that_says_another_length_or_kind_than_was_decoded_is_refused()
    {
        byte[] bytes = RandomNumberGenerator.GetBytes(10);
        var stored = await ledger.AddPhotographAsync(new MemoryStream(bytes), (_, _, _) => Task.FromResult(new PhotographJudgement { MediaType = "image/png", Width = 1, Height = 1 }), Cancel);
        var sample = await TestStore.TakeInAsync(ledger);
        Assert.Equal(("/payload/bytes", "10"), await RefusedAsync(sample, new PhotographAdded(stored.Sha256!, "image/png", 11)));
        Assert.Equal(("/payload/mediaType", "image/png"), await RefusedAsync(sample, new PhotographAdded(stored.Sha256!, "image/jpeg", 10)));
        await TestStore.AppendAsync(ledger, sample, new PhotographAdded(stored.Sha256!, "image/png", 10));
    }

    private async Task<(string At, string Accepted)> RefusedAsync(EntryId sample, PhotographAdded photograph)
    {
        var appended = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = photograph }, Cancel);
        var problem = Assert.Single(appended.Problems);
        return (problem.At, Assert.Single(problem.Accepted));
    }

    private async Task<PhotographAdded> StoreAsync()
    {
        var stored = await ledger.AddPhotographAsync(new MemoryStream(RandomNumberGenerator.GetBytes(100)), Cancel);
        return new PhotographAdded(stored.Sha256!, "image/jpeg", stored.Bytes);
    }

    private async Task<List<string>> UsesAsync(string sha256)
    {
        await using var context = ledger.Ask();
        return await context.PhotographUses.Where(row => row.Sha256 == sha256).Select(row => row.Sample).Order().ToListAsync(Cancel);
    }
}
