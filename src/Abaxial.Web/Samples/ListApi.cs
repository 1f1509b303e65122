using Abaxial.Data;
using Abaxial.Data.Search;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>What a list of samples is narrowed by.</summary>
internal sealed record ListQuery
{
    /// <summary>Words all of which are in the sample.</summary>
    [FromQuery(Name = "q")]
    public string? Text { get; init; }

    /// <summary>true for open samples, false for closed ones.</summary>
    [FromQuery(Name = "open")]
    public string? Open { get; init; }

    /// <summary>Where late blight stands: confirmed, likely, open, unlikely or ruled-out.</summary>
    [FromQuery(Name = "standing")]
    public string? Standing { get; init; }

    /// <summary>Id of the person who has to act on it.</summary>
    [FromQuery(Name = "with")]
    public string? With { get; init; }

    [FromQuery(Name = "host")]
    public string? Host { get; init; }

    /// <summary>newest or waiting: what it costs most to leave first.</summary>
    [FromQuery(Name = "order")]
    public string? Order { get; init; }

    /// <summary>Where the page before ended, as it said.</summary>
    [FromQuery(Name = "after")]
    public string? After { get; init; }

    /// <summary>Samples of a page, 1 to 200.</summary>
    [FromQuery(Name = "limit")]
    public string? Limit { get; init; }

    /// <summary>The question to the store; null where problems were noted.</summary>
    public SampleQuery? Read(Visitor visitor, CaseProblems problems)
    {
        int standing = Standing is null ? -1 : AnswerWords.Standings.IndexOf(Standing);
        if (Standing is not null && standing < 0) problems.Add("/standing", Standing, AnswerWords.Standings.AsSpan());
        if (Open is not (null or "true" or "false")) problems.Add("/open", Open, "true", "false");
        if (Order is not (null or "newest" or "waiting")) problems.Add("/order", Order, "newest", "waiting");
        SampleCursor? after = null;
        if (After is not null && (!SampleCursor.TryParse(After, out after) || after.Waiting is null == (Order == "waiting"))) problems.Add("/after", After, "where the page before ended, as it said");
        int limit = 50;
        if (Limit is not null && (!int.TryParse(Limit, out limit) || limit is < 1 or > SampleQuery.MostPerPage)) problems.Add("/limit", Limit, $"1 to {SampleQuery.MostPerPage}");
        if (problems.Count > 0) return null;
        return new SampleQuery
        {
            Text = Text,
            Open = Open is null ? null : Open == "true",
            Standing = standing < 0 ? null : (Standing)standing,
            With = With,
            Host = Host,
            ByWaiting = Order == "waiting",
            After = after,
            Limit = limit,
            Scope = visitor.Scope,
        };
    }
}

/// <summary>A page of a list.</summary>
/// <param name="Samples">The samples, in the order asked for.</param>
/// <param name="Next">What to send as <c>after</c> for the next page; null where there is none.</param>
internal sealed record ListJson(IReadOnlyList<SampleLine> Samples, string? Next);

/// <summary>A sample in one line.</summary>
internal sealed record SampleLine(
    string Sample,
    string? Number,
    string? Host,
    string? System,
    string? Area,
    string? With,
    DateTimeOffset Taken,
    DateTimeOffset? Promised,
    DateTimeOffset? SnoozedUntil,
    bool IsOpen,
    string? Standing,
    double? LateBlight,
    string? Leader,
    int? LeaderPercent,
    string[] Diagnosed,
    int Photographs,
    int Looks)
{
    public static SampleLine Of(SampleRow row) => new(
        row.Sample, row.Number, row.Host, row.System, row.Area, row.With, row.Taken, row.Promised, row.SnoozedUntil, row.IsOpen, row.Standing, row.LateBlight, row.Leader, row.LeaderPercent,
        row.Diagnosed.Split(' ', StringSplitOptions.RemoveEmptyEntries), row.Photographs, row.Looks);
}

/// <summary>Lists of samples, and samples by the number that people call them by.</summary>
internal static class ListApi
{
    public static async Task<Results<Ok<ListJson>, ProblemHttpResult>> List([AsParameters] ListQuery asked, Visitor visitor, Ledger ledger, CancellationToken cancel)
    {
        var problems = new CaseProblems();
        if (asked.Read(visitor, problems) is not { } query) return Problem.Of(StatusCodes.Status400BadRequest, problems);
        await using var context = ledger.Ask();
        var page = await context.PageAsync(query, cancel);
        return TypedResults.Ok(new ListJson([.. page.Rows.Select(SampleLine.Of)], page.Next?.ToString()));
    }

    /// <summary>Stores that were apart may have given one number to two samples: both are told.</summary>
    public static async Task<Results<Ok<ListJson>, ProblemHttpResult>> ByNumber(string number, Visitor visitor, Ledger ledger, CancellationToken cancel)
    {
        if (!SampleNumber.TryParse(number, out var read)) return Problem.Of(StatusCodes.Status400BadRequest, "/number", number, $"a sample number as {SampleNumber.From(26, 142)}; here a digit or the letter is wrong, or two changed places");
        string written = read.ToString();
        await using var context = ledger.Ask();
        var rows = await context.Numbers.Where(row => row.Number == written).Join(context.Samples, row => row.Sample, row => row.Sample, (_, row) => row).AsNoTracking().OrderBy(row => row.Key).ToListAsync(cancel);
        var seen = rows.Where(visitor.Sees).Select(SampleLine.Of).ToList();
        return seen.Count == 0 ? Problem.NotFound() : TypedResults.Ok(new ListJson(seen, null));
    }
}
