using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.App.Tests;

/// <summary>Writes that wait for one another share a commit, and nothing else.</summary>
public abstract class SharedCommitTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;

    public async ValueTask InitializeAsync() => ledger = await store.OpenAsync();

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task What_is_refused_or_fails_touches_no_other_write()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var unknown = EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV");
        var gate = new TaskCompletionSource();
        var holding = ledger.Writers.RunAsync(Hold, _ => false, TestContext.Current.CancellationToken);
        var (good, bad, failing) = (new List<Task<Appended>>(), new List<Task<Appended>>(), new List<Task<bool>>());
        for (int i = 0; i < 30; i++)
        {
            good.Add(AppendAsync(sample, new HandedOver($"d-{i}")));
            bad.Add(AppendAsync(unknown, new HandedOver("d-02")));
            bad.Add(ledger.TakeInAsync(new EntryDraft { Author = "d-01", Payload = new TakenIn { Host = "tomato" } }, [new HandedOver("no id")], TestContext.Current.CancellationToken));
            failing.Add(ledger.Writers.RunAsync(FailAsync, _ => true, TestContext.Current.CancellationToken));
        }

        gate.SetResult();
        Assert.True(await holding);
        Assert.All(await Task.WhenAll(good), appended => Assert.False(appended.IsRefused));
        Assert.All(await Task.WhenAll(bad), appended => Assert.True(appended.IsRefused));
        foreach (var one in failing) Assert.Equal("its own", (await Assert.ThrowsAsync<InvalidOperationException>(() => one)).Message);
        var entries = await ledger.EntriesOfAsync(sample, TestContext.Current.CancellationToken);
        Assert.Equal(Enumerable.Range(0, 30).Select(i => $"d-{i}"), entries.Skip(2).Select(entry => ((HandedOver)PayloadReader.Read(entry).Payload!).To));
        Assert.Equal(32, (await TestStore.TextsAsync(ledger)).Count);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);

        async Task<bool> Hold(LedgerContext context)
        {
            await gate.Task;
            return true;
        }
    }

    [Fact]
    public async Task A_write_that_nobody_waits_for_any_more_is_not_made()
    {
        var sample = await TestStore.TakeInAsync(ledger);
        var gate = new TaskCompletionSource();
        using var gone = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var holding = ledger.Writers.RunAsync(async _ => { await gate.Task; return true; }, _ => false, TestContext.Current.CancellationToken);
        var left = ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = new HandedOver("d-02") }, gone.Token);
        var stays = AppendAsync(sample, new HandedOver("d-03"));
        await gone.CancelAsync();
        gate.SetResult();
        await holding;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);
        Assert.False((await stays).IsRefused);
        Assert.Equal(3, (await TestStore.TextsAsync(ledger)).Count);
    }

    private Task<Appended> AppendAsync(EntryId sample, Payload payload) => ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = payload }, TestContext.Current.CancellationToken);

    /// <summary>Writes something, then fails: that must not stay.</summary>
    private static async Task<bool> FailAsync(LedgerContext context)
    {
        context.Erasures.Add(new ErasureRow { Person = "g-77" });
        await context.SaveChangesAsync();
        throw new InvalidOperationException("its own");
    }
}

public sealed class SharedCommitTests_on_SQLite() : SharedCommitTests(StoreKind.Sqlite);

public sealed class SharedCommitTests_on_PostgreSQL() : SharedCommitTests(StoreKind.Postgres);
