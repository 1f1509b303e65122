using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>A shared bench computer.</summary>
internal sealed record BenchAnswer(string Id, string Name, DateTimeOffset Made, bool IsThis);

/// <summary>Shared bench computers: marking one, and switching the person on it by PIN. A PIN is worth nothing anywhere else.</summary>
internal static class BenchApi
{
    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/benches").WithTags("Benches");
        api.MapGet("/", async (HttpContext http, LedgerContext store, CancellationToken cancel) => TypedResults.Ok(await AllAsync(http, store, cancel))).RequireRight(Right.ManageBenches).WithSummary("The shared bench computers.").WithAnswerExample("""[{ "id": "bench-7kqw-m4tx", "name": "Wet bench", "made": "2026-07-14T09:30:00Z", "isThis": true }]""");
        api.MapPost("/", MarkAsync).Answers(201, """{ "id": "01K0BENCH" }""").RequireRight(Right.ManageBenches).RequireProof().TakesText("""{ "name": "Wet bench" }""").WithSummary("Marks the computer that asks as a shared bench.");
        api.MapPost("/{id}/end", EndAsync).AnswersNothing().RequireRight(Right.ManageBenches).RequireProof().WithSummary("A computer is a shared bench no more.");
        api.MapPost("/sessions", SwitchAsync).Answers(201, """{ "id": "d-01" }""").AllowAnonymous().TakesSignIn().TakesText("""{ "person": "d-01", "pin": "2580" }""").WithSummary("Switches the person on a shared bench computer, by PIN.");
    }

    public static async Task<List<BenchAnswer>> AllAsync(HttpContext http, LedgerContext store, CancellationToken cancel)
    {
        string? here = SessionCookie.ReadBench(http) is { } secret ? Secrets.HashOf(secret) : null;
        return await store.Benches.AsNoTracking().OrderBy(row => row.Name).Select(row => new BenchAnswer(row.Id, row.Name, row.Made, row.SecretHash == here)).ToListAsync(cancel);
    }

    /// <summary>The bench that asks; null where it is none.</summary>
    public static async Task<BenchRow?> HereAsync(HttpContext http, LedgerContext store, CancellationToken cancel)
    {
        if (SessionCookie.ReadBench(http) is not { } secret) return null;
        string hash = Secrets.HashOf(secret);
        return await store.Benches.AsNoTracking().SingleOrDefaultAsync(row => row.SecretHash == hash, cancel);
    }

    /// <summary>Those who can switch to themselves by PIN, by name.</summary>
    public static async Task<List<Person>> PeopleAsync(LedgerContext store, CancellationToken cancel) =>
        [.. (await store.People.AsNoTracking().Where(row => row.PinHash != null && !row.IsClosed).OrderBy(row => row.DisplayName).ToListAsync(cancel)).Where(person => Rights.Of(person.Role).Contains(Right.UseBench))];

    private static async Task<IResult> MarkAsync(Asked asked, HttpContext http, CurrentPerson by, LedgerContext store, AuditTrail audit, TimeProvider clock, CancellationToken cancel)
    {
        string name = asked["name"].Trim();
        if (name.Length is 0 or > 80 || name.Any(char.IsControl)) return asked.Refuse(Faults.DisplayName, "/devices");
        string secret = Secrets.NewToken();
        var bench = new BenchRow { Id = $"bench-{Secrets.NewCode(2).ToLowerInvariant()}", Name = name, SecretHash = Secrets.HashOf(secret), Made = clock.GetUtcNow() };
        store.Benches.Add(bench);
        await audit.SaveAsync(store, new AuditNote(AuditKind.BenchMarked, by.Id, by.From) { Subject = bench.Id }, cancel: cancel);
        SessionCookie.WriteBench(http, secret);
        return asked.Done(new { bench.Id }, "/devices", StatusCodes.Status201Created);
    }

    private static async Task<IResult> EndAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, CancellationToken cancel)
    {
        if (!await store.Benches.AnyAsync(row => row.Id == id, cancel)) return TypedResults.NotFound();
        await audit.SaveAsync(store, new AuditNote(AuditKind.BenchEnded, by.Id, by.From) { Subject = id }, End, cancel);
        return asked.Done("/devices");

        async Task End()
        {
            await store.Benches.Where(row => row.Id == id).ExecuteDeleteAsync(cancel);
            if (!await store.Benches.AnyAsync(cancel)) await store.Sessions.Where(row => row.Means == "pin").ExecuteDeleteAsync(cancel);
        }
    }

    private static async Task<IResult> SwitchAsync(Asked asked, HttpContext http, LedgerContext store, AddressTries tries, AuditTrail audit, PasswordWork work, Sessions sessions, CancellationToken cancel)
    {
        string id = asked["person"], to = LocalAddress.OrHome(asked["returnUrl"]);
        if (await HereAsync(http, store, cancel) is null) return asked.Refuse(Faults.NoBench, "/sign-in", StatusCodes.Status403Forbidden);
        var person = await store.People.SingleOrDefaultAsync(row => row.Id == id && !row.IsClosed, cancel);
        bool mayTry = !tries.IsShut(http) && person is not null && person.PinFailures < PinRules.MostFailures && Rights.Of(person.Role).Contains(Right.UseBench);
        if (work.Fits(person?.PinHash, asked["pin"].Length <= PinRules.Longest ? asked["pin"] : "") && mayTry)
        {
            await store.People.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(found => found.PinFailures, 0), cancel);
            await sessions.BeginAsync(http, person!, Means.Pin, cancel: cancel);
            return asked.Done(new { person!.Id }, to, StatusCodes.Status201Created);
        }

        tries.Fail(http);
        bool locks = mayTry && person!.PinFailures + 1 == PinRules.MostFailures;
        await audit.SaveAsync(
            store,
            new AuditNote(locks ? AuditKind.LockedOut : AuditKind.SignInFailed, null) { Subject = person?.Id, Detail = "pin" },
            () => mayTry ? store.People.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(found => found.PinFailures, found => found.PinFailures + 1), cancel) : Task.CompletedTask,
            cancel);
        return asked.Refuse(Faults.Pin, "/sign-in", StatusCodes.Status401Unauthorized);
    }
}
