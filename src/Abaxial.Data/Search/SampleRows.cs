using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>Writes the rows of samples, within the transaction that writes their entries.</summary>
internal sealed class SampleRows(LedgerContext context, SampleReader reader)
{
    /// <summary>Folds samples anew and writes their rows and words.</summary>
    public async Task WriteAsync(IEnumerable<string> samples, CancellationToken cancel)
    {
        foreach (string sample in samples)
        {
            await WriteAsync(sample, cancel);
            context.ChangeTracker.Clear(); // a long merge must not grow with what it has written
        }
    }

    private async Task WriteAsync(string sample, CancellationToken cancel)
    {
        var texts = await context.Entries.AsNoTracking().Where(row => row.Sample == sample).Select(row => row.Text).ToListAsync(cancel);
        var view = SampleFold.Of(EntryId.Parse(sample), texts.Select(LedgerWriting.Parsed), reader.Knowledge);
        var answers = SampleSummary.AnswersOf(view, reader.Weigher);
        var summary = SampleSummary.Of(view, answers);

        var row = await context.Samples.SingleOrDefaultAsync(one => one.Sample == sample, cancel);
        bool isNew = row is null;
        row ??= new SampleRow { Key = await FreeKeyAsync(view.Sample, cancel), Sample = sample };
        Fill(row, summary);
        (row.Entries, row.Knowledge) = (texts.Count, reader.Knowledge.Hash);
        if (isNew) context.Samples.Add(row);
        string words = WordsOf(SampleWords.Of(view, answers, reader.Knowledge).Concat(await SealedAsync(view, cancel)), summary);
        await context.SaveChangesAsync(cancel);
        await WordIndex.WriteAsync(context, row.Key, words, cancel);
    }

    /// <summary>The texts about people that are there and hold; notes on the way which seals the sample holds. The numbers of an exact place are no words.</summary>
    private async Task<List<string>> SealedAsync(SampleView view, CancellationToken cancel)
    {
        string sample = view.Sample.ToString();
        var all = view.Timeline.SelectMany(item => (item.Said?.Seals ?? []).Concat(item.Holds?.Seals ?? [])).DistinctBy(seal => seal.Sha256).ToList();
        if (all.Count == 0) return [];
        var noted = await context.SampleSeals.Where(row => row.Sample == sample).Select(row => row.Sha256).ToListAsync(cancel);
        context.SampleSeals.AddRange(all.Where(seal => !noted.Contains(seal.Sha256)).Select(seal => new SampleSealRow { Sha256 = seal.Sha256, Sample = sample, Person = seal.Person }));
        var holding = view.Timeline.SelectMany(item => item.Holds?.Seals ?? []).Select(seal => seal.Sha256).Distinct().ToList();
        var texts = await context.SealedTexts.AsNoTracking().Where(row => holding.Contains(row.Sha256)).Select(row => row.Text).ToListAsync(cancel);
        return [.. texts.Where(text => !text.StartsWith("{\"latitude\":", StringComparison.Ordinal))];
    }

    /// <summary>Words of one sample: so many that only a mass of text goes beyond them, and few enough for every database.</summary>
    public const int MostWords = 8_000;

    private static string WordsOf(IEnumerable<string> texts, SampleSummary summary) =>
        string.Join(' ', Facets.Of(summary).Concat(texts.SelectMany(SearchWords.OfText)).Distinct(StringComparer.Ordinal).Take(MostWords).Order(StringComparer.Ordinal));

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
}
