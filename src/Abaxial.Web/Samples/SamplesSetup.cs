using Abaxial.Data;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>Samples: their API and pages.</summary>
internal static class SamplesSetup
{
    public static void MapSamples(this WebApplication app)
    {
        var api = app.MapGroup("/api/samples");
        api.MapGet("/", async (Ledger ledger, CancellationToken cancel) =>
        {
            await using var context = ledger.Ask();
            return TypedResults.Ok(await context.Numbers.OrderByDescending(row => row.Sample).Take(50).Select(row => new { row.Number, row.Sample }).ToListAsync(cancel));
        });
    }
}
