using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>A page of the audit, the newest first.</summary>
/// <param name="Rows">What was done.</param>
/// <param name="Before">Where the next page begins; null on the last one.</param>
/// <param name="FirstFault">The place of the first row that was changed, taken away or put in; null where all fit.</param>
internal sealed record AuditPageAnswer(IReadOnlyList<AuditRow> Rows, long? Before, long? FirstFault);

/// <summary>Reading what was done about people.</summary>
internal static class AuditApi
{
    public const int Most = 200;

    public static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/api/audit", async (long? before, int? limit, LedgerContext store, CancellationToken cancel) => TypedResults.Ok(await PageAsync(store, before, limit ?? 50, cancel)))
            .WithTags("Audit").RequireRight(Right.SeeAudit).WithSummary("What was done about people, the newest first.").WithAnswerExample("""{ "rows": [{ "place": 1, "moment": "2026-07-14T09:30:00Z", "kind": "set-up", "person": null, "subject": "a-01", "from": null, "detail": "administrator", "hash": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08" }], "before": null, "firstFault": null }""");

    public static async Task<AuditPageAnswer> PageAsync(LedgerContext store, long? before, int limit, CancellationToken cancel)
    {
        int most = Math.Clamp(limit, 1, Most);
        var rows = await store.Audit.AsNoTracking().Where(row => before == null || row.Place < before).OrderByDescending(row => row.Place).Take(most).ToListAsync(cancel);
        long? next = rows is [.., { Place: > 1 } last] ? last.Place : null;
        return new AuditPageAnswer(rows, next, before is null ? await AuditTrail.FirstFaultAsync(store, cancel) : null);
    }
}
