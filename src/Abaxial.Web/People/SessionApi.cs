using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>A session as its person sees it.</summary>
internal sealed record SessionAnswer(string Id, string Means, string Browser, DateTimeOffset Made, DateTimeOffset LastSeen, DateTimeOffset Ends, bool IsThis);

/// <summary>Who is signed in.</summary>
internal sealed record PersonAnswer(string Id, string DisplayName, string Role, IReadOnlyList<string> Areas, string Means)
{
    public static PersonAnswer Of(CurrentPerson person) => new(person.Id, person.DisplayName, Word(person.Role), person.Areas, person.Means.ToString().ToLowerInvariant());

    public static string Word(Role role) => role.ToString().ToLowerInvariant();
}

/// <summary>Signing in and out, and where one is signed in.</summary>
internal static class SessionApi
{
    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/sessions").WithTags("Sessions");
        api.MapPost("/", SignInAsync).Answers(201, """{ "id": "d-01", "displayName": "Hesper Dunnick", "role": "diagnostician", "areas": [], "means": "password" }""").AllowAnonymous().TakesSignIn().TakesText("""{ "name": "hesper", "password": "seven wet leaves in a tray", "code": "492039" }""").WithSummary("Signs somebody in by name and password, and the code of their app where they have one.");
        api.MapGet("/", ListAsync).RequireAccount().WithAnswerExample("""[{ "id": "01k0", "means": "password", "browser": "Firefox", "made": "2026-07-28T06:10:00Z", "lastSeen": "2026-07-28T08:10:00Z", "ends": "2026-08-04T06:10:00Z", "isThis": true }]""").WithSummary("Where the person is signed in.");
        api.MapPost("/end", EndThisAsync).AnswersNothing().RequireAccount().WithSummary("Signs the person out in this browser.");
        api.MapPost("/end-others", EndOthersAsync).AnswersNothing().RequireAccount().WithSummary("Signs the person out in every other browser.");
        api.MapPost("/{id}/end", EndAsync).AnswersNothing().RequireAccount().WithSummary("Ends one session of the person.");
        api.MapPost("/proof", ProveAsync).AnswersNothing().RequireAccount().TakesSignIn().TakesText("""{ "password": "seven wet leaves in a tray" }""").WithSummary("Shows the password again before something sensitive.");
        app.MapGet("/api/people/me", (CurrentPerson person) => TypedResults.Ok(PersonAnswer.Of(person))).WithTags("People").WithSummary("Who is signed in.").WithAnswerExample("""{ "id": "d-01", "displayName": "Hesper Dunnick", "role": "diagnostician", "areas": [], "means": "password" }""");
    }

    private static async Task<IResult> SignInAsync(Asked asked, HttpContext http, SigningIn signing, Sessions sessions, CancellationToken cancel)
    {
        string to = LocalAddress.OrHome(asked["returnUrl"]), page = $"/sign-in?returnUrl={Uri.EscapeDataString(to)}";
        if (await signing.TryAsync(http, asked["name"], asked["password"], asked["code"], cancel) is not { } person) return asked.Refuse(Faults.SignIn, page, StatusCodes.Status401Unauthorized);
        await sessions.BeginAsync(http, person, Means.Password, cancel: cancel);
        return asked.Done(new PersonAnswer(person.Id, person.DisplayName, PersonAnswer.Word(person.Role), person.Areas, "password"), to, StatusCodes.Status201Created);
    }

    private static async Task<Ok<List<SessionAnswer>>> ListAsync(CurrentPerson person, LedgerContext store, CancellationToken cancel) => TypedResults.Ok(await OfAsync(store, person, cancel));

    /// <summary>The sessions of a person, the one that was used last first.</summary>
    public static async Task<List<SessionAnswer>> OfAsync(LedgerContext store, CurrentPerson person, CancellationToken cancel) =>
        await store.Sessions.AsNoTracking().Where(row => row.Person == person.Id).OrderByDescending(row => row.LastSeen)
            .Select(row => new SessionAnswer(row.Id, row.Means, row.Browser, row.Made, row.LastSeen, row.Ends, row.Id == person.Key)).ToListAsync(cancel);

    private static async Task<IResult> EndThisAsync(Asked asked, HttpContext http, CurrentPerson person, Sessions sessions, CancellationToken cancel)
    {
        if (person.Key is { } id) await sessions.EndAsync(person, person.Id, id, cancel);
        SessionCookie.Delete(http);
        return asked.Done("/sign-in");
    }

    private static async Task<IResult> EndOthersAsync(Asked asked, CurrentPerson person, Sessions sessions, CancellationToken cancel)
    {
        await sessions.EndAllAsync(person, person.Id, person.Key, cancel);
        return asked.Done("/account#sessions");
    }

    private static async Task<IResult> EndAsync(string id, Asked asked, CurrentPerson person, Sessions sessions, CancellationToken cancel) =>
        await sessions.EndAsync(person, person.Id, id, cancel) ? asked.Done("/account#sessions") : TypedResults.NotFound();

    private static async Task<IResult> ProveAsync(Asked asked, HttpContext http, CurrentPerson person, LedgerContext store, SigningIn signing, AuditTrail audit, TimeProvider clock, CancellationToken cancel)
    {
        string to = LocalAddress.OrHome(asked["returnUrl"]), page = $"/prove?returnUrl={Uri.EscapeDataString(to)}";
        var account = await store.People.SingleAsync(row => row.Id == person.Id, cancel);
        if (await signing.TryAsync(http, account, asked["password"], asked["code"], cancel) is null) return asked.Refuse(Faults.SignIn, page, StatusCodes.Status401Unauthorized);
        DateTimeOffset? now = clock.GetUtcNow();
        await audit.SaveAsync(store, new AuditNote(AuditKind.Proven, person.Id, person.From), () => store.Sessions.Where(row => row.Id == person.Key).ExecuteUpdateAsync(row => row.SetProperty(session => session.Proven, now), cancel), cancel);
        return asked.Done(to);
    }
}
