using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Somebody as the administrator sees them.</summary>
public sealed record PersonRowAnswer(string Id, string Name, string DisplayName, string Role, IReadOnlyList<string> Areas, bool HasAccess, bool IsClosed, bool HasApp, int Passkeys, int Sessions);

/// <summary>People, for the administrator: inviting, changing, keeping out, erasing.</summary>
internal static class PeopleApi
{
    private static readonly TimeSpan InvitationHolds = TimeSpan.FromDays(7);

    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/people").WithTags("People").RequireRight(Right.ManagePeople);
        api.MapGet("/", async (LedgerContext store, CancellationToken cancel) => TypedResults.Ok(await AllAsync(store, cancel))).WithSummary("Everybody who has an account.").WithAnswerExample("""[{ "id": "d-01", "name": "hesper", "displayName": "Hesper Dunnick", "role": "diagnostician", "areas": [], "hasAccess": true, "isClosed": false, "hasApp": false, "passkeys": 1, "sessions": 2 }]""");
        api.MapPost("/", InviteAsync).Answers(201, """{ "id": "d-02", "code": "7KQW-M4TX-92PB-HHV3-CZ8D", "page": "/invitation" }""").RequireProof().TakesText("""{ "name": "hesper", "displayName": "Hesper Dunnick", "role": "diagnostician" }""").WithSummary("Makes an account, and a code with which its person chooses a password or passkey.");
        api.MapPost("/{id}", ChangeAsync).AnswersNothing().RequireProof().TakesText("""{ "name": "hesper", "displayName": "Hesper Dunnick", "role": "lead" }""").WithSummary("Changes what a person is called, their role and areas.");
        api.MapPost("/{id}/invitation", InviteAgainAsync).Answers(201, """{ "id": "d-02", "code": "7KQW-M4TX-92PB-HHV3-CZ8D", "page": "/invitation" }""").RequireProof().WithSummary("Makes a new code for a person who lost theirs, or their password; what they signed in with is taken away once it is used.");
        api.MapPost("/{id}/close", (string id, Asked asked, CurrentPerson by, PersonEnds ends, CancellationToken cancel) => ends.CloseAsync(id, asked, by, cancel)).AnswersNothing().RequireProof().WithSummary("Keeps a person out; their sessions and devices end.");
        api.MapPost("/{id}/open", (string id, Asked asked, CurrentPerson by, PersonEnds ends, CancellationToken cancel) => ends.OpenAsync(id, asked, by, cancel)).AnswersNothing().RequireProof().WithSummary("Lets a person in again.");
        api.MapPost("/{id}/sessions/end", EndSessionsAsync).AnswersNothing().RequireProof().WithSummary("Signs a person out everywhere.");
        api.MapPost("/{id}/erase", (string id, Asked asked, CurrentPerson by, PersonEnds ends, CancellationToken cancel) => ends.EraseAsync(id, asked, by, cancel)).Answers(200, """{ "samples": 3, "texts": 7, "isWrittenOver": true }""").RequireProof().WithSummary("Erases a person: the account, and every text about them.");
        app.MapPost("/api/invitations", TakeAsync).Answers(201, """{ "id": "d-02" }""").AllowAnonymous().WithTags("People").TakesText("""{ "code": "7KQW-M4TX-92PB-HHV3-CZ8D", "password": "seven wet leaves in a tray" }""").WithSummary("Takes an invitation: chooses a password, and signs in.");
    }

    /// <summary>Everybody, by id.</summary>
    public static async Task<List<PersonRowAnswer>> AllAsync(LedgerContext store, CancellationToken cancel)
    {
        var people = await store.People.AsNoTracking().OrderBy(row => row.Id).ToListAsync(cancel);
        var sessions = await store.Sessions.GroupBy(row => row.Person).Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Key, group => group.Count, cancel);
        var passkeys = await store.Passkeys.GroupBy(row => row.UserId).Select(group => new { group.Key, Count = group.Count() }).ToDictionaryAsync(group => group.Key, group => group.Count, cancel);
        return [.. people.Select(person => new PersonRowAnswer(
            person.Id,
            person.UserName ?? "",
            person.DisplayName,
            PersonAnswer.Word(person.Role),
            person.Areas,
            person.PasswordHash is not null || passkeys.ContainsKey(person.Id),
            person.IsClosed,
            person.IsTotpOn,
            passkeys.GetValueOrDefault(person.Id),
            sessions.GetValueOrDefault(person.Id)))];
    }

    private static async Task<IResult> InviteAsync(Asked asked, CurrentPerson by, LedgerContext store, PersonChanges changes, OneTime told, TimeProvider clock, CancellationToken cancel)
    {
        var wanted = new PersonWanted(asked["id"], asked["name"], asked["displayName"], asked["role"], asked.Lines("areas"));
        var (fault, role) = await changes.FaultOfAsync(wanted, null, cancel);
        if (fault is not null) return asked.Refuse(fault, "/people");
        var person = await changes.AddAsync(wanted, role, null, new AuditNote(AuditKind.Invited, by.Id, by.From), cancel);
        string code = await NewCodeAsync(store, person, clock, cancel);
        return Told(asked, by, told, person.Id, code);
    }

    private static async Task<IResult> InviteAgainAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, OneTime told, TimeProvider clock, CancellationToken cancel)
    {
        if (await store.People.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } person) return TypedResults.NotFound();
        await audit.SaveAsync(store, new AuditNote(AuditKind.Invited, by.Id, by.From) { Subject = id }, () => store.OneTimeCodes.Where(row => row.Person == id && row.Purpose == OneTimeCodes.Invitation).ExecuteDeleteAsync(cancel), cancel);
        return Told(asked, by, told, id, await NewCodeAsync(store, person, clock, cancel));
    }

    private static IResult Told(Asked asked, CurrentPerson by, OneTime told, string id, string code) =>
        asked.IsForm ? asked.Done($"/once/{told.Put($"invitation {code}", by.Id)}") : asked.Done(new { Id = id, Code = code, Page = "/invitation" }, "/people", StatusCodes.Status201Created);

    private static Task<string> NewCodeAsync(LedgerContext store, Person person, TimeProvider clock, CancellationToken cancel) =>
        OneTimeCodes.NewAsync(store, person.Id, OneTimeCodes.Invitation, person.Role, groups: 5, clock.GetUtcNow() + InvitationHolds, cancel);

    private static async Task<IResult> ChangeAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, PersonChanges changes, PersonEnds ends, CancellationToken cancel)
    {
        if (await store.People.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } person) return TypedResults.NotFound();
        var wanted = new PersonWanted(id, asked["name"], asked["displayName"], asked["role"], asked.Lines("areas"));
        var (fault, role) = await changes.FaultOfAsync(wanted, id, cancel);
        if (fault is null && role != Role.Administrator && await ends.IsLastAdministratorAsync(id, cancel)) fault = Faults.LastAdministrator;
        if (fault is not null) return asked.Refuse(fault, "/people");
        await changes.ChangeAsync(person, wanted, role, by, cancel);
        return asked.Done("/people");
    }

    private static async Task<IResult> EndSessionsAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, Sessions sessions, CancellationToken cancel)
    {
        if (!await store.People.AnyAsync(row => row.Id == id, cancel)) return TypedResults.NotFound();
        await sessions.EndAllAsync(by, id, null, cancel);
        return asked.Done("/people");
    }

    private static async Task<IResult> TakeAsync(Asked asked, HttpContext http, LedgerContext store, AddressTries tries, PersonChanges changes, Sessions sessions, TimeProvider clock, CancellationToken cancel)
    {
        const string page = "/invitation";
        var row = tries.IsShut(http) ? null : await OneTimeCodes.FindAsync(store, asked["code"], OneTimeCodes.Invitation, clock.GetUtcNow(), cancel);
        var person = row is null ? null : await store.People.SingleOrDefaultAsync(found => found.Id == row.Person && !found.IsClosed, cancel);
        if (row is null || person is null)
        {
            tries.Fail(http);
            return asked.Refuse(Faults.CodeUsed, page);
        }

        if (PasswordRules.FaultOf(asked["password"], person.UserName ?? "", person.DisplayName) is { } weak) return asked.Refuse(weak, page);
        if (!await OneTimeCodes.TakeAsync(store, row, cancel)) return asked.Refuse(Faults.CodeUsed, page);
        await changes.StartAnewAsync(person, asked["password"], cancel);
        await sessions.BeginAsync(http, person, Means.Password, cancel: cancel);
        return asked.Done(new { person.Id }, "/account", StatusCodes.Status201Created);
    }
}
