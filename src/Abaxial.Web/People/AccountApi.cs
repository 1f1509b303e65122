using System.Text;
using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using QRCoder;

namespace Abaxial.Web.People;

/// <summary>What a person changes of their own account: password, app, PIN.</summary>
internal static class AccountApi
{
    private const string Page = "/account";
    private const int RecoveryCodes = 10;

    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/people/me").WithTags("Account").RequireAccount();
        api.MapPost("/password", ChangePasswordAsync).AnswersNothing().RequireProof().TakesText("""{ "password": "seven wet leaves in a tray" }""").WithSummary("Changes the password; every other session ends.");
        api.MapPost("/app", BeginAppAsync).Answers(200, """{ "secret": "JBSWY3DPEHPK3PXP", "address": "otpauth://totp/Abaxial:hesper?secret=JBSWY3DPEHPK3PXP" }""").RequireProof().WithSummary("Makes a secret for an authenticator app. It counts once a code of it was shown.");
        api.MapGet("/app.svg", DrawAppAsync).Produces<string>(StatusCodes.Status200OK, "image/svg+xml").RequireProof().WithSummary("The secret as a drawing for the app's camera, until a code was shown.");
        api.MapPost("/app/code", ConfirmAppAsync).Answers(200, """{ "recoveryCodes": ["7KQW-M4TX"] }""").RequireProof().TakesText("""{ "code": "492039" }""").WithSummary("Shows a code of the app; from then on it is asked for. Answers codes for the day the app is lost.");
        api.MapPost("/app/remove", RemoveAppAsync).AnswersNothing().RequireProof().WithSummary("Takes the app away.");
        api.MapPost("/pin", SetPinAsync).AnswersNothing().RequireRight(Right.UseBench).RequireProof().TakesText("""{ "pin": "2580" }""").WithSummary("Sets the PIN for shared bench computers.");
        api.MapPost("/pin/remove", RemovePinAsync).AnswersNothing().RequireProof().WithSummary("Takes the PIN away.");
    }

    private static async Task<IResult> ChangePasswordAsync(Asked asked, HttpContext http, CurrentPerson by, LedgerContext store, AuditTrail audit, PasswordWork work, Sessions sessions, CancellationToken cancel)
    {
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        if (PasswordRules.FaultOf(asked["password"], by.SignInName, by.DisplayName) is { } weak) return asked.Refuse(weak, Page);
        person.PasswordHash = work.HashOf(asked["password"]);
        await audit.SaveAsync(store, new AuditNote(AuditKind.PasswordChanged, by.Id, by.From), () => store.Sessions.Where(row => row.Person == by.Id).ExecuteDeleteAsync(cancel), cancel);
        await sessions.BeginAsync(http, person, Means.Password, cancel: cancel);
        return asked.Done(Page);
    }

    private static async Task<IResult> BeginAppAsync(Asked asked, CurrentPerson by, LedgerContext store, CancellationToken cancel)
    {
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        if (person.IsTotpOn) return asked.Refuse(Faults.TotpCode, Page, StatusCodes.Status409Conflict);
        person.TotpSecret = Totp.NewSecret();
        await store.SaveChangesAsync(cancel);
        return asked.Done(new { Secret = Totp.Text(person.TotpSecret), Address = Totp.Address(by.SignInName, person.TotpSecret) }, $"{Page}#app");
    }

    private static async Task<IResult> DrawAppAsync(CurrentPerson by, LedgerContext store, CancellationToken cancel)
    {
        var person = await store.People.AsNoTracking().SingleAsync(row => row.Id == by.Id, cancel);
        if (person.IsTotpOn || person.TotpSecret is null) return TypedResults.NotFound();
        using var drawing = new SvgQRCode(QRCodeGenerator.GenerateQrCode(Totp.Address(by.SignInName, person.TotpSecret), QRCodeGenerator.ECCLevel.M));
        return TypedResults.Text(drawing.GetGraphic(4), "image/svg+xml", Encoding.UTF8);
    }

    private static async Task<IResult> ConfirmAppAsync(Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, OneTime told, TimeProvider clock, CancellationToken cancel)
    {
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        if (person.IsTotpOn || person.TotpSecret is null || Totp.StepOf(person.TotpSecret, asked["code"], clock.GetUtcNow(), person.TotpLastStep) is not { } step) return asked.Refuse(Faults.TotpCode, $"{Page}#app");
        (person.IsTotpOn, person.TotpLastStep) = (true, step);
        string[] codes = [.. Enumerable.Range(0, RecoveryCodes).Select(_ => Secrets.NewCode(3))];
        foreach (string code in codes) store.RecoveryCodes.Add(new RecoveryCodeRow { Id = SigningIn.RecoveryHash(person.Id, code), Person = person.Id });
        await audit.SaveAsync(store, new AuditNote(AuditKind.AppAdded, by.Id, by.From), () => store.RecoveryCodes.Where(row => row.Person == by.Id).ExecuteDeleteAsync(cancel), cancel);
        return asked.IsForm ? asked.Done($"/once/{told.Put($"recovery {string.Join(' ', codes)}", by.Id)}") : asked.Done(new { RecoveryCodes = codes }, Page);
    }

    private static async Task<IResult> RemoveAppAsync(Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, CancellationToken cancel)
    {
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        (person.IsTotpOn, person.TotpSecret) = (false, null);
        await audit.SaveAsync(store, new AuditNote(AuditKind.AppRemoved, by.Id, by.From), () => store.RecoveryCodes.Where(row => row.Person == by.Id).ExecuteDeleteAsync(cancel), cancel);
        return asked.Done(Page);
    }

    private static async Task<IResult> SetPinAsync(Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, PasswordWork work, CancellationToken cancel)
    {
        if (!PinRules.IsOne(asked["pin"])) return asked.Refuse(Faults.PinForm, $"{Page}#pin");
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        (person.PinHash, person.PinFailures) = (work.HashOf(asked["pin"]), 0);
        await audit.SaveAsync(store, new AuditNote(AuditKind.PinSet, by.Id, by.From), cancel: cancel);
        return asked.Done(Page);
    }

    private static async Task<IResult> RemovePinAsync(Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, CancellationToken cancel)
    {
        var person = await store.People.SingleAsync(row => row.Id == by.Id, cancel);
        person.PinHash = null;
        await audit.SaveAsync(store, new AuditNote(AuditKind.PinRemoved, by.Id, by.From), cancel: cancel);
        return asked.Done(Page);
    }
}
