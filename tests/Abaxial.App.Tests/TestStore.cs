using System.Text;
using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>A store in a folder of its own, which goes when the test ends.</summary>
public sealed class TestStore : IAsyncDisposable
{
    private readonly List<Ledger> opened = [];

    public string Root { get; } = Directory.CreateTempSubdirectory("abaxial-").FullName;

    public string Folder => Path.Combine(Root, "store");

    public async Task<Ledger> OpenAsync(string name = "store")
    {
        var ledger = await Ledger.OpenAsync(Path.Combine(Root, name), TimeProvider.System, TestContext.Current.CancellationToken);
        opened.Add(ledger);
        return ledger;
    }

    public ValueTask DisposeAsync()
    {
        foreach (var ledger in opened) ledger.Dispose();
        Directory.Delete(Root, recursive: true);
        return ValueTask.CompletedTask;
    }

    public static async Task<EntryId> TakeInAsync(Ledger ledger, string author = "d-01")
    {
        var taken = await ledger.TakeInAsync(new EntryDraft { Author = author, Payload = new TakenIn { Host = "tomato" } }, [], TestContext.Current.CancellationToken);
        Assert.Empty(taken.Problems);
        return taken.Entry!.Id;
    }

    public static async Task<Entry> AppendAsync(Ledger ledger, EntryId sample, Payload payload, params SealedText[] texts)
    {
        var appended = await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "d-01", Payload = payload, Texts = [.. texts] }, TestContext.Current.CancellationToken);
        Assert.Empty(appended.Problems);
        return appended.Entry!;
    }

    /// <summary>Every entry's text, sorted: what two stores are compared by.</summary>
    public static async Task<List<string>> TextsAsync(Ledger ledger)
    {
        await using var context = ledger.Ask();
        return [.. (await context.Entries.Select(row => row.Text).ToListAsync(TestContext.Current.CancellationToken)).Order(StringComparer.Ordinal)];
    }

    public static async Task<Merged> MergeAsync(Ledger into, IEnumerable<string> texts, params SealedText[] sealedTexts) =>
        await into.MergeAsync([.. texts.Select(text => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(text))], sealedTexts, TestContext.Current.CancellationToken);

    public static async Task<CheckReport> CheckAsync(Ledger ledger) => await LedgerCheck.RunAsync(ledger, null, TestContext.Current.CancellationToken);

    public static SealedText Seal(string person, string text) => new(person, Enumerable.Range(0, SealedText.SaltLength).Select(i => (byte)(i + text.Length)).ToArray(), text);
}
