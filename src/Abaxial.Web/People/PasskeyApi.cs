using System.Buffers.Text;
using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Passkeys (WebAuthn): made by who is signed in, shown to sign in without a name, or to prove oneself. Each challenge is held here and works once.</summary>
internal static class PasskeyApi
{
    private const int Most = 20;

    public static void Configure(IdentityPasskeyOptions passkeys, ClinicOptions options)
    {
        passkeys.UserVerificationRequirement = "required";
        passkeys.ResidentKeyRequirement = "required";
        passkeys.ServerDomain = options.PublicUrl?.Host;
        passkeys.ValidateOrigin = shown =>
        {
            var request = shown.HttpContext.Request;
            return ValueTask.FromResult(!shown.CrossOrigin && (shown.Origin == $"{request.Scheme}://{request.Host}" || shown.Origin == options.PublicUrl?.GetLeftPart(UriPartial.Authority)));
        };
    }

    public static void Map(IEndpointRouteBuilder app)
    {
        var mine = app.MapGroup("/api/people/me/passkeys").WithTags("Passkeys").RequireAccount();
        mine.MapPost("/challenge", BeginMakingAsync).Answers(200, """{ "options": "{}", "key": "Zk3mB1yVxqf0" }""").RequireProof().WithSummary("What the browser needs to make a passkey.");
        mine.MapPost("/", MakeAsync).Answers(201, """{ "id": "Zk3mB1yVxqf0" }""").RequireProof().TakesText("""{ "key": "Zk3mB1yVxqf0", "credential": "{}" }""").WithSummary("Adds a passkey that the browser made.");
        mine.MapPost("/{id}/remove", RemoveAsync).AnswersNothing().RequireProof().WithSummary("Takes a passkey away.");
        app.MapPost("/api/sessions/passkey/challenge", BeginShowingAsync).Answers(200, """{ "options": "{}", "key": "Zk3mB1yVxqf0" }""").AllowAnonymous().WithTags("Passkeys").WithSummary("What the browser needs to show a passkey.");
        app.MapPost("/api/sessions/passkey", ShowAsync).Answers(201, """{ "id": "d-01" }""").AllowAnonymous().TakesSignIn().TakesText("""{ "key": "Zk3mB1yVxqf0", "credential": "{}" }""").WithTags("Passkeys").WithSummary("Signs somebody in by a passkey, or proves them where they are signed in.");
    }

    private static async Task<IResult> BeginMakingAsync(Asked asked, HttpContext http, CurrentPerson by, IPasskeyHandler<Person> passkeys, OneTime held)
    {
        var options = await passkeys.MakeCreationOptionsAsync(new PasskeyUserEntity { Id = by.Id, Name = by.SignInName, DisplayName = by.DisplayName }, http);
        return asked.Done(new { Options = options.CreationOptionsJson, Key = held.Put(options.AttestationState ?? "", by.Id) }, "/account");
    }

    private static async Task<IResult> MakeAsync(Asked asked, HttpContext http, CurrentPerson by, LedgerContext store, IPasskeyHandler<Person> passkeys, UserManager<Person> accounts, AuditTrail audit, OneTime held, CancellationToken cancel)
    {
        if (held.Take(asked["key"], by.Id) is not { } state || await store.Passkeys.CountAsync(row => row.UserId == by.Id, cancel) >= Most) return asked.Refuse(Faults.Passkey, "/account");
        var made = await passkeys.PerformAttestationAsync(new PasskeyAttestationContext { HttpContext = http, CredentialJson = asked["credential"], AttestationState = state });
        if (!made.Succeeded || made.UserEntity.Id != by.Id || await store.Passkeys.AnyAsync(row => row.CredentialId == made.Passkey.CredentialId, cancel)) return asked.Refuse(Faults.Passkey, "/account");
        string name = asked["name"].Trim();
        made.Passkey.Name = name.Length is 0 or > 80 ? "Passkey" : name;
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        var added = await accounts.AddOrUpdatePasskeyAsync(person, made.Passkey);
        if (!added.Succeeded) return asked.Refuse(Faults.Passkey, "/account");
        await audit.SaveAsync(store, new AuditNote(AuditKind.PasskeyAdded, by.Id, by.From), cancel: cancel);
        return asked.Done(new { Id = Base64Url.EncodeToString(made.Passkey.CredentialId) }, "/account", StatusCodes.Status201Created);
    }

    private static async Task<IResult> RemoveAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, CancellationToken cancel)
    {
        if (!Base64Url.IsValid(id)) return TypedResults.NotFound();
        byte[] credential = Base64Url.DecodeFromChars(id);
        if (!await store.Passkeys.AnyAsync(row => row.CredentialId == credential && row.UserId == by.Id, cancel)) return TypedResults.NotFound();
        await audit.SaveAsync(store, new AuditNote(AuditKind.PasskeyRemoved, by.Id, by.From), () => store.Passkeys.Where(row => row.CredentialId == credential).ExecuteDeleteAsync(cancel), cancel);
        return asked.Done("/account");
    }

    private static async Task<IResult> BeginShowingAsync(Asked asked, HttpContext http, IPasskeyHandler<Person> passkeys, OneTime held)
    {
        var options = await passkeys.MakeRequestOptionsAsync(null, http);
        return asked.Done(new { Options = options.RequestOptionsJson, Key = held.Put(options.AssertionState ?? "", null) }, "/sign-in");
    }

    private static async Task<IResult> ShowAsync(Asked asked, HttpContext http, LedgerContext store, IPasskeyHandler<Person> passkeys, UserManager<Person> accounts, AuditTrail audit, AddressTries tries, Sessions sessions, OneTime held, CancellationToken cancel)
    {
        var by = CurrentPerson.Of(http) is { Means: not (Means.Demo or Means.Device) } signedIn ? signedIn : null;
        if (!tries.IsShut(http) && held.Take(asked["key"], null) is { } state)
        {
            var shown = await passkeys.PerformAssertionAsync(new PasskeyAssertionContext { HttpContext = http, CredentialJson = asked["credential"], AssertionState = state });
            if (shown is { Succeeded: true, User: { IsClosed: false } person } && (by is null || by.Id == person.Id))
            {
                await accounts.AddOrUpdatePasskeyAsync(person, shown.Passkey); // its counter
                await store.People.Where(row => row.Id == person.Id).ExecuteUpdateAsync(row => row.SetProperty(found => found.PinFailures, 0), cancel);
                await sessions.BeginAsync(http, person, Means.Passkey, by is null ? AuditKind.SignedIn : AuditKind.Proven, cancel);
                return asked.Done(new { person.Id }, "/", StatusCodes.Status201Created);
            }
        }

        tries.Fail(http);
        await audit.SaveAsync(store, new AuditNote(AuditKind.SignInFailed, null) { Detail = "passkey" }, cancel: cancel);
        return asked.Refuse(Faults.Passkey, "/sign-in", StatusCodes.Status401Unauthorized);
    }
}
