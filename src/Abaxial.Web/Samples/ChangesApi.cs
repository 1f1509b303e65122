using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Abaxial.Data;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;

namespace Abaxial.Web.Samples;

/// <summary>An entry was received: its place in the store, its sample, and of what kind it is.</summary>
internal sealed record ChangeJson(long Row, string Sample, string Entry, string Kind);

/// <summary>Tells pages that stay open what others write: server-sent events, one an entry. A stream ends after some minutes; browsers begin a new one where it ended, and are let in anew.</summary>
internal static class ChangesApi
{
    private const int MostAtOnce = 200;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1), Longest = TimeSpan.FromMinutes(5);

    public static async Task<Results<ServerSentEventsResult<ChangeJson>, ProblemHttpResult>> Changes(string? sample, string? after, HttpRequest request, Visitor visitor, Ledger ledger, TimeProvider clock, IHostApplicationLifetime lifetime, CancellationToken cancel)
    {
        string? last = after ?? request.Headers["Last-Event-ID"].FirstOrDefault();
        long row = -1;
        if (last is not null && (!long.TryParse(last, out row) || row < 0)) return Problem.Of(StatusCodes.Status400BadRequest, "/after", last, "the place of an entry");
        await using (var context = ledger.Ask())
        {
            if (sample is not null && await context.RowAsync(visitor, sample, cancel) is null) return Problem.NotFound();
            if (row < 0) row = await context.Entries.MaxAsync(entry => (long?)entry.Row, cancel) ?? 0;
        }

        return TypedResults.ServerSentEvents(EventsAsync(sample is null ? null : EntryId.Parse(sample).ToString(), row, visitor, ledger, clock, lifetime.ApplicationStopping, cancel));
    }

    private static async IAsyncEnumerable<SseItem<ChangeJson>> EventsAsync(string? sample, long row, Visitor visitor, Ledger ledger, TimeProvider clock, CancellationToken stopping, [EnumeratorCancellation] CancellationToken cancel)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stopping, cancel);
        long started = clock.GetTimestamp();
        yield return new SseItem<ChangeJson>(new ChangeJson(row, sample ?? "", "", ""), "begun") { EventId = Written(row) }; // so that who waits knows at once that it is let in
        while (clock.GetElapsedTime(started) < Longest && !either.IsCancellationRequested)
        {
            List<ChangeJson> news;
            await using (var context = ledger.Ask())
            {
                var rows = await context.Entries.AsNoTracking().Where(entry => entry.Row > row && (sample == null || entry.Sample == sample)).OrderBy(entry => entry.Row).Take(MostAtOnce)
                    .Join(context.Samples, entry => entry.Sample, one => one.Sample, (entry, one) => new { entry.Row, entry.Id, entry.Kind, Sample = one }).ToListAsync(cancel);
                if (rows.Count > 0) row = rows[^1].Row;
                news = [.. rows.Where(entry => visitor.Sees(entry.Sample)).Select(entry => new ChangeJson(entry.Row, entry.Sample.Sample, entry.Id, entry.Kind))];
            }

            foreach (var change in news) yield return new SseItem<ChangeJson>(change, "entry") { EventId = Written(change.Row) };
            if (news.Count < MostAtOnce) await Task.Delay(Pause, clock, either.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private static string Written(long row) => row.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
