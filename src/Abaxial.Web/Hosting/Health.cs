using Abaxial.Data;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Hosting;

/// <summary>What a monitor is told: whether the clinic can work. No word of who or what is in it.</summary>
/// <param name="Status">ready or not-ready.</param>
/// <param name="Checks">Each part: ok, or failed, or low for the disk.</param>
internal sealed record Readiness(string Status, IReadOnlyDictionary<string, string> Checks);

/// <summary>Whether the program runs, and whether it can work.</summary>
internal static class Health
{
    private const string Ok = "ok";

    public static void MapHealth(this WebApplication app)
    {
        var health = app.MapGroup("/health").ExcludeFromDescription().AllowAnonymous();
        health.MapGet("/live", () => TypedResults.Ok(new { Status = "live" })).DisableRateLimiting();
        health.MapGet("/ready", AnswerAsync);
    }

    private static async Task<JsonHttpResult<Readiness>> AnswerAsync(Ledger ledger, ClinicOptions options, CancellationToken cancel)
    {
        var checks = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["disk"] = HasSpace(ledger.Folder, options.DiskFloorMebibytes) ? Ok : "low",
            ["photographs"] = await CanWriteAsync(ledger.Folder, cancel) ? Ok : "failed",
            ["store"] = await AnswersAsync(ledger, cancel) ? Ok : "failed",
        };
        bool isReady = checks.Values.All(state => state == Ok);
        return TypedResults.Json(new Readiness(isReady ? "ready" : "not-ready", checks), statusCode: isReady ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }

    private static bool HasSpace(string folder, long floorMebibytes)
    {
        try
        {
            return new DriveInfo(folder).AvailableFreeSpace >> 20 >= floorMebibytes;
        }
        catch (IOException)
        {
            return false;
        }
    }

    private static async Task<bool> CanWriteAsync(string folder, CancellationToken cancel)
    {
        string file = Path.Combine(folder, "photographs", $".ready-{Path.GetRandomFileName()}");
        try
        {
            await File.WriteAllTextAsync(file, "", cancel);
            File.Delete(file);
            return true;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static async Task<bool> AnswersAsync(Ledger ledger, CancellationToken cancel)
    {
        try
        {
            await using var context = ledger.Ask();
            return await context.Store.AnyAsync(cancel);
        }
        catch (Exception problem) when (problem is System.Data.Common.DbException or InvalidOperationException or TimeoutException)
        {
            return false;
        }
    }
}
