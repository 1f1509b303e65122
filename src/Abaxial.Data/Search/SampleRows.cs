using System.Text;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>Writes the rows of samples, within the transaction that writes their entries.</summary>
internal sealed class SampleRows(LedgerContext context, SampleReader reader)
{
    /// <summary>Words of one sample: so many that only a mass of text goes beyond them, and few enough for every database.</summary>
    public const int MostWords = 8_000;

    /// <summary>Folds samples anew and writes their rows and words.</summary>
    public async Task WriteAsync(IEnumerable<string> samples, CancellationToken cancel)
    {
        foreach (string[] some in samples.Chunk(64))
        {
            var texts = (await context.Entries.AsNoTracking().Where(row => some.Contains(row.Sample)).Select(row => new { row.Sample, row.Text }).ToListAsync(cancel)).ToLookup(row => row.Sample, row => row.Text);
            var folded = new Folded[some.Length];
            if (some.Length == 1) folded[0] = Fold(some[0], texts[some[0]]);
            else Parallel.For(0, some.Length, i => folded[i] = Fold(some[i], texts[some[i]]));
            foreach (var one in folded) await WriteAsync(one, cancel);
            context.ChangeTracker.Clear(); // a long merge must not grow with what it has written
        }
    }

    /// <summary>Folds what can be read; what cannot is for the check to name, and must not keep a store from being opened.</summary>
    private Folded Fold(string sample, IEnumerable<string> texts)
    {
        var entries = texts.Select(text => EntryReader.Read(Encoding.UTF8.GetBytes(text)).Entry).ToList();
        var id = EntryId.Parse(sample);
        var view = SampleFold.Of(id, entries.OfType<Entry>().Where(entry => entry.Sample == id), reader.Knowledge);
        var answers = SampleSummary.AnswersOf(view, reader.Weigher);
        return new Folded(sample, entries.Count, view, SampleSummary.Of(view, answers), [.. SampleWords.Of(view, answers, reader.Knowledge)]);
    }

    private async Task WriteAsync(Folded folded, CancellationToken cancel)
    {
        var row = await context.Samples.SingleOrDefaultAsync(one => one.Sample == folded.Sample, cancel);
        if (row is null) context.Samples.Add(row = new SampleRow { Key = await FreeKeyAsync(folded.View.Sample, cancel), Sample = folded.Sample });
        Fill(row, folded.Summary);
        (row.Entries, row.Knowledge) = (folded.Entries, reader.Knowledge.Hash);
        var texts = folded.Texts.Concat(await SealedAsync(folded.View, cancel));
        await context.SaveChangesAsync(cancel);
        await WordIndex.WriteAsync(context, row.Key, WordsOf(texts, folded.Summary), cancel);
    }

    private static string WordsOf(IEnumerable<string> texts, SampleSummary summary) =>
        string.Join(' ', Facets.Of(summary).Concat(texts.SelectMany(SearchWords.OfText)).Distinct(StringComparer.Ordinal).Take(MostWords).Order(StringComparer.Ordinal));

    /// <summary>The texts about people that are there and hold; notes on the way which seals the sample holds. The numbers of an exact place are no words.</summary>
    private async Task<List<string>> SealedAsync(SampleView view, CancellationToken cancel)
    {
        string sample = view.Sample.ToString();
        var all = view.Timeline.SelectMany(item => (item.Said?.Seals ?? []).Concat(item.Holds?.Seals ?? [])).DistinctBy(seal => seal.Sha256).ToList();
        if (all.Count == 0) return [];
        var noted = await context.SampleSeals.AsNoTracking().Where(row => row.Sample == sample).Select(row => row.Sha256).ToListAsync(cancel);
        context.SampleSeals.AddRange(all.Where(seal => !noted.Contains(seal.Sha256)).Select(seal => new SampleSealRow { Sha256 = seal.Sha256, Sample = sample, Person = seal.Person }));
        var holding = view.Timeline.SelectMany(item => item.Holds?.Seals ?? []).Select(seal => seal.Sha256).Distinct().ToList();
        var texts = await context.SealedTexts.AsNoTracking().Where(row => holding.Contains(row.Sha256)).Select(row => row.Text).ToListAsync(cancel);
        return [.. texts.Where(text => !text.StartsWith("{\"latitude\":", StringComparison.Ordinal))];
    }

    private async Task<long> FreeKeyAsync(EntryId sample, CancellationToken cancel)
    {
        long key = sample.LeadingBits;
        while (await context.Samples.AnyAsync(row => row.Key == key, cancel)) key = key < long.MaxValue ? key + 1 : 0;
        return key;
    }

    private static void Fill(SampleRow row, SampleSummary summary)
    {
        row.Number = summary.Number?.ToString();
        row.Host = summary.Host;
        row.System = summary.System;
        row.Purpose = summary.Purpose;
        row.Area = summary.Area;
        row.Submitter = summary.Submitter;
        row.TakenBy = summary.TakenBy;
        row.With = summary.With;
        row.Taken = Millisecond(summary.Taken);
        row.Promised = summary.Promised is { } promised ? Millisecond(promised) : null;
        row.SnoozedUntil = summary.SnoozedUntil is { } until ? Millisecond(until) : null;
        row.IsOpen = summary.IsOpen;
        row.Standing = summary.Standing is { } standing ? Weighing.AnswerWords.Word(standing) : null;
        row.LateBlight = summary.LateBlight;
        row.Leader = summary.Leader;
        row.LeaderPercent = summary.LeaderPercent;
        row.Diagnosed = string.Join(' ', summary.Diagnosed);
        row.Photographs = summary.Photographs;
        row.FirstPhotograph = summary.FirstPhotograph;
        row.Looks = summary.Looks;
        row.Waiting = summary.Waiting;
    }

    /// <summary>Databases keep different parts of a second; all keep this.</summary>
    private static DateTimeOffset Millisecond(DateTimeOffset moment) => new(moment.UtcTicks - (moment.UtcTicks % TimeSpan.TicksPerMillisecond), TimeSpan.Zero);

    /// <summary>A sample as its entries and the knowledge make it, without what lies outside the entries.</summary>
    private sealed record Folded(string Sample, int Entries, SampleView View, SampleSummary Summary, List<string> Texts);
}
