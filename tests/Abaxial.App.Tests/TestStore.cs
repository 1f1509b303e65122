using System.Text;
using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>A kind of database that a store can have.</summary>
public enum StoreKind
{
    Sqlite,
    Postgres,
}

/// <summary>Stores in a folder of their own, on SQLite unless told otherwise, which go when the test ends.</summary>
public sealed class TestStore(StoreKind kind = StoreKind.Sqlite) : IAsyncDisposable
{
    private readonly List<Ledger> opened = [];
    private readonly Dictionary<string, string> databases = [];

    public string Root { get; } = Directory.CreateTempSubdirectory("abaxial-").FullName;

    public string Folder => Path.Combine(Root, "store");

    /// <summary>Where a store of the test lies; on PostgreSQL each gets a database of its own, with tables or empty.</summary>
    public async Task<StorePlace> PlaceAsync(string name = "store", bool withTables = true)
    {
        string folder = Path.Combine(Root, name);
        if (kind == StoreKind.Sqlite) return new StorePlace(folder);
        if (!databases.TryGetValue(name, out string? connection)) databases[name] = connection = await PostgresServer.NewDatabaseAsync(withTables);
        return new StorePlace(folder, connection);
    }

    public async Task<Ledger> OpenAsync(string name = "store")
    {
        var ledger = await Ledger.OpenAsync(await PlaceAsync(name), TimeProvider.System, TestContext.Current.CancellationToken);
        opened.Add(ledger);
        return ledger;
    }

    /// <summary>Changes a store behind the ledger's back.</summary>
    public static async Task ExecuteAsync(Ledger ledger, string sql, params (string Name, object Value)[] values)
    {
        await using var context = ledger.Ask();
        await context.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (name, value);
            command.Parameters.Add(parameter);
        }

        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var ledger in opened) ledger.Dispose();
        foreach (string connection in databases.Values) await PostgresServer.DropAsync(connection);
        Directory.Delete(Root, recursive: true);
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
