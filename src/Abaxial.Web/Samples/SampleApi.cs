using System.Text.Json;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Hosting;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;

namespace Abaxial.Web.Samples;

/// <summary>One sample: folded, and as the entries that it is.</summary>
internal static class SampleApi
{
    private const int MostEntries = 500;

    /// <summary>The sample with all that was said of it. The entity tag is made of its heads, which change with every entry.</summary>
    public static async Task<Results<Ok<SampleJson>, StatusCodeHttpResult, ProblemHttpResult>> Get(string sample, Visitor visitor, Ledger ledger, KnowledgeBase knowledge, HttpContext http, CancellationToken cancel)
    {
        if (await ledger.ViewAsync(visitor, sample, knowledge, cancel) is not { } view) return Problem.NotFound();
        var tag = new EntityTagHeaderValue($"\"{Entry.HashOf($"{string.Join('.', view.Heads)} {knowledge.Hash}")[..32]}\"");
        http.Response.GetTypedHeaders().ETag = tag;
        http.Response.Headers.CacheControl = "private, no-cache";
        if (http.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Compare(tag, useStrongComparison: false))) return TypedResults.StatusCode(StatusCodes.Status304NotModified);
        await using var context = ledger.Ask();
        return TypedResults.Ok(SampleJson.Of(view, await SealedTexts.OfAsync(context, view, cancel)));
    }

    /// <summary>The entries of a sample in the order in which they were received, a page at a time; each as the canonical JSON that its hash is taken over.</summary>
    public static async Task<Results<Ok<EntriesJson>, ProblemHttpResult>> Entries(string sample, string? after, Visitor visitor, Ledger ledger, CancellationToken cancel)
    {
        long row = 0;
        if (after is not null && (!long.TryParse(after, out row) || row < 0)) return Problem.Of(StatusCodes.Status400BadRequest, "/after", after, "where the page before ended, as it said");
        await using var context = ledger.Ask();
        if (await context.RowAsync(visitor, sample, cancel) is not { } known) return Problem.NotFound();
        var rows = await context.Entries.AsNoTracking().Where(entry => entry.Sample == known.Sample && entry.Row > row).OrderBy(entry => entry.Row).Take(MostEntries + 1).Select(entry => new { entry.Row, entry.Text, entry.Hash }).ToListAsync(cancel);
        var page = rows.Take(MostEntries).ToList();
        return TypedResults.Ok(new EntriesJson([.. page.Select(entry => new EntryJson(entry.Hash, Json.Of(entry.Text)))], rows.Count > MostEntries ? page[^1].Row.ToString(System.Globalization.CultureInfo.InvariantCulture) : null));
    }

    /// <summary>What a plant or lot amounts to: the very bytes that <c>abaxial weigh --json</c> prints for its case.</summary>
    public static async Task<Results<FileContentHttpResult, ProblemHttpResult>> Answer(string sample, string number, Visitor visitor, Ledger ledger, KnowledgeBase knowledge, Weigher weigher, CancellationToken cancel)
    {
        if (await ledger.ViewAsync(visitor, sample, knowledge, cancel) is not { } view) return Problem.NotFound();
        if (!int.TryParse(number, out int read) || view.Cases.FirstOrDefault(one => one.Number == read) is not { } part) return Problem.NotFound();
        return Weighed(part.Reading, weigher);
    }

    /// <summary>Weighs a case file and stores nothing.</summary>
    public static async Task<Results<FileContentHttpResult, ProblemHttpResult>> Weigh(HttpRequest request, Visitor _, KnowledgeBase knowledge, Weigher weigher, CancellationToken cancel)
    {
        if (!request.HasJsonContentType()) return Problem.Of(StatusCodes.Status415UnsupportedMediaType, "", request.ContentType ?? "no media type", "application/json");
        if (await BodyBytes.ReadAsync(request, CaseLimits.Bytes, cancel) is not { } bytes) return Problem.Of(StatusCodes.Status413PayloadTooLarge, CaseLimits.TooLong.Problems);
        return Weighed(CaseReader.Read(bytes, knowledge), weigher);
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> Weighed(CaseReading reading, Weigher weigher)
    {
        if (reading.IsRefused) return Problem.Of(StatusCodes.Status422UnprocessableEntity, reading.Problems);
        ClinicFigures.CountAnswers(1);
        return TypedResults.File([.. AnswerWriter.ToUtf8(weigher.Weigh(reading.Case)), (byte)'\n'], "application/json");
    }
}

/// <summary>A page of entries.</summary>
/// <param name="Entries">The entries.</param>
/// <param name="Next">What to send as <c>after</c> for the next page; null where there is none.</param>
internal sealed record EntriesJson(IReadOnlyList<EntryJson> Entries, string? Next);

/// <summary>An entry and the hash of its canonical JSON.</summary>
internal sealed record EntryJson(string Hash, JsonElement Entry);
