using System.Globalization;
using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Abaxial.Weighing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Load.Measuring;

/// <summary>
/// Measures what one user asks of a store: lists, search, a sample, an entry more; through the library, and the same bare in SQL. The answers are counted, so that nothing is
/// measured that found nothing.
/// </summary>
internal sealed class StoreMeasure(Ledger ledger, int times)
{
    private readonly Random chance = new(7);

    /// <summary>Writes the table for a store that was filled by <c>fill</c>.</summary>
    public static async Task<int> RunAsync(string folder, string? postgres, int times)
    {
        using var ledger = await Ledger.OpenAsync(new StorePlace(folder, postgres), TimeProvider.System);
        await new StoreMeasure(ledger, times).WriteAsync();
        return 0;
    }

    private async Task WriteAsync()
    {
        await using (var context = ledger.Ask())
        {
            long rows = await context.Samples.LongCountAsync(), entries = await context.Entries.LongCountAsync();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rows:N0} samples in the lists, {entries:N0} entries, {(ledger.Place.Postgres is null ? "SQLite" : "PostgreSQL")}; {times} times each, milliseconds\n"));
        }

        Console.WriteLine("| what | p50 | p95 | p99 | processor | bare p50 | bare p95 | bare p99 | processor | found |\n|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|");
        var bare = new BareSql(ledger);
        string[] tickets = await TicketsAsync(), samples = await SamplesAsync(), prefixes = ["to", "se", "sa", "wa", "le", "fo"];
        await ListAsync("list, newest", bare, _ => new SampleQuery());
        await ListAsync("list, open, costliest to wait", bare, _ => new SampleQuery { ByWaiting = true });
        await ListAsync("search, rare word", bare, i => new SampleQuery { Text = tickets[i % tickets.Length] });
        await ListAsync("search, word of most samples", bare, _ => new SampleQuery { Text = "tomato" });
        await ListAsync("search, two words of most samples", bare, _ => new SampleQuery { Text = "tomato answered" });
        await ListAsync("search, first two letters", bare, i => new SampleQuery { Text = prefixes[i % prefixes.Length] });
        await ListAsync("search, common word of the open ones, costliest", bare, _ => new SampleQuery { Text = "ticket", ByWaiting = true });
        await ListAsync("search, common word of one grower", bare, i => new SampleQuery { Text = "ticket", Scope = new SampleScope($"g-{i % 5000:0000}", []) });
        await LineAsync("one sample, folded and weighed", i => FoldAsync(samples[i % samples.Length]), i => bare.EntriesAsync(samples[i % samples.Length]));
        await bare.PrepareAsync();
        await LineAsync("a look more", AppendAsync, bare.AppendAsync);
        await bare.ClearAsync();

        async Task<int> AppendAsync(int i)
        {
            var look = new LookMade(1, """{"by":"diagnostician","character":"pycnidia","how":"hand-lens","observer":"d-01","state":"absent"}""");
            var appended = await ledger.AppendAsync(new EntryDraft { Sample = EntryId.Parse(samples[chance.Next(samples.Length)]), Author = "d-01", Payload = look });
            return appended.IsRefused ? throw new InvalidOperationException(string.Join("; ", appended.Problems)) : 1;
        }
    }

    private Task ListAsync(string what, BareSql bare, Func<int, SampleQuery> ask) => LineAsync(what, async i =>
    {
        await using var context = ledger.Ask();
        return (await context.PageAsync(ask(i))).Rows.Length;
    }, i => bare.ListAsync(ask(i)));

    private async Task<int> FoldAsync(string sample)
    {
        var reader = SampleReader.BuiltIn;
        var id = EntryId.Parse(sample);
        var view = SampleFold.Of(id, await ledger.EntriesOfAsync(id), reader.Knowledge);
        return view.Cases.Count(one => one.Reading.Case is { } weighed && reader.Weigher.Weigh(weighed, new WeighOptions()).Causes.Length > 0);
    }

    private async Task LineAsync(string what, Func<int, Task<int>> ours, Func<int, Task<int>> bare)
    {
        var (our, found) = await Timing.OfAsync(ours, times);
        var (plain, _) = await Timing.OfAsync(bare, times);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {our} | {plain} | {found:0.0} |"));
    }

    /// <summary>Words of which each is in one message.</summary>
    private async Task<string[]> TicketsAsync()
    {
        await using var context = ledger.Ask();
        var texts = await context.SealedTexts.AsNoTracking().Where(row => row.Text.Contains("Ticket")).OrderBy(row => row.Sha256).Take(200).Select(row => row.Text).ToListAsync();
        return [.. texts.Select(text => text[(text.LastIndexOf(' ') + 1)..].TrimEnd('.'))];
    }

    private async Task<string[]> SamplesAsync()
    {
        await using var context = ledger.Ask();
        return [.. await context.Entries.AsNoTracking().Where(row => row.Kind == EntryKind.TakenIn && row.Row % 97 == 0).Take(500).Select(row => row.Sample).ToListAsync()];
    }
}
