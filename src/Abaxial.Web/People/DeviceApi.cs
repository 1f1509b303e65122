using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Description;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>A paired device.</summary>
internal sealed record DeviceAnswer(string Id, string Person, string Name, string Role, DateTimeOffset Made, DateTimeOffset? LastUsed);

/// <summary>Devices with tokens of their own: pairing by a code that holds for minutes, ending at once.</summary>
internal static class DeviceApi
{
    private static readonly TimeSpan CodeHolds = TimeSpan.FromMinutes(10);

    public static void Map(IEndpointRouteBuilder app)
    {
        var api = app.MapGroup("/api/devices").WithTags("Devices");
        api.MapGet("/", async (CurrentPerson person, LedgerContext store, CancellationToken cancel) => TypedResults.Ok(await OfAsync(store, person, cancel))).RequireAccount().WithSummary("The person's devices; for the administrator everybody's.").WithAnswerExample("""[{ "id": "device-7kqw-m4tx-92pb", "person": "s-01", "name": "Telephone", "role": "scout", "made": "2026-07-14T09:30:00Z", "lastUsed": null }]""");
        api.MapPost("/codes", NewCodeAsync).Answers(201, """{ "code": "7KQW-M4TX", "ends": "2026-07-28T08:10:00Z" }""").RequireRight(Right.PairDevices).RequireProof().TakesText("""{ "role": "scout" }""").WithSummary("Makes a code with which one device is paired within ten minutes.");
        api.MapPost("/", PairAsync).Answers(201, """{ "id": "device-7kqw", "person": "s-02", "role": "scout", "token": "shown this once" }""").AllowAnonymous().TakesSignIn().TakesText("""{ "code": "7KQW-M4TX", "name": "Telephone" }""").WithSummary("Pairs the device that asks, with a code. The token is told this once.");
        api.MapPost("/{id}/end", EndAsync).AnswersNothing().RequireAccount().WithSummary("Ends a device: its token is worth nothing from then on.");
    }

    public static async Task<List<DeviceAnswer>> OfAsync(LedgerContext store, CurrentPerson person, CancellationToken cancel)
    {
        bool all = person.Has(Right.ManagePeople);
        var rows = await store.Devices.AsNoTracking().Where(row => all || row.Person == person.Id).OrderBy(row => row.Person).ThenBy(row => row.Made).ToListAsync(cancel);
        return [.. rows.Select(row => new DeviceAnswer(row.Id, row.Person, row.Name, PersonAnswer.Word(row.Role), row.Made, row.LastUsed))];
    }

    private static async Task<IResult> NewCodeAsync(Asked asked, CurrentPerson by, LedgerContext store, OneTime told, TimeProvider clock, CancellationToken cancel)
    {
        if (!Enum.TryParse<Role>(asked["role"], ignoreCase: true, out var role) || !Rights.DeviceRolesOf(by.Role).Contains(role)) return asked.Refuse(Faults.DeviceRole, "/devices");
        await store.OneTimeCodes.Where(row => row.Person == by.Id && row.Purpose == OneTimeCodes.Pairing).ExecuteDeleteAsync(cancel);
        var ends = clock.GetUtcNow() + CodeHolds;
        string code = await OneTimeCodes.NewAsync(store, by.Id, OneTimeCodes.Pairing, role, groups: 2, ends, cancel);
        return asked.IsForm ? asked.Done($"/once/{told.Put($"pairing {code}", by.Id)}") : asked.Done(new { Code = code, Ends = ends }, "/devices", StatusCodes.Status201Created);
    }

    private static async Task<IResult> PairAsync(Asked asked, HttpContext http, LedgerContext store, AddressTries tries, AuditTrail audit, TimeProvider clock, CancellationToken cancel)
    {
        string name = asked["name"].Trim();
        if (name.Length is 0 or > 80 || name.Any(char.IsControl)) return asked.Refuse(Faults.DisplayName, "/sign-in");
        var now = clock.GetUtcNow();
        var code = tries.IsShut(http) ? null : await OneTimeCodes.FindAsync(store, asked["code"], OneTimeCodes.Pairing, now, cancel);
        if (code is null || !await OneTimeCodes.TakeAsync(store, code, cancel))
        {
            tries.Fail(http);
            return asked.Refuse(Faults.CodeUsed, "/sign-in");
        }

        string token = Secrets.NewToken();
        var device = new DeviceRow { Id = $"device-{Secrets.NewCode(3).ToLowerInvariant()}", Person = code.Person, Name = name, Role = code.Role, TokenHash = Secrets.HashOf(token), Made = now };
        store.Devices.Add(device);
        await audit.SaveAsync(store, new AuditNote(AuditKind.DevicePaired, code.Person, device.Id) { Subject = device.Id }, cancel: cancel);
        return asked.Done(new { device.Id, device.Person, Role = PersonAnswer.Word(device.Role), Token = token }, "/devices", StatusCodes.Status201Created);
    }

    private static async Task<IResult> EndAsync(string id, Asked asked, CurrentPerson by, LedgerContext store, AuditTrail audit, CancellationToken cancel)
    {
        bool all = by.Has(Right.ManagePeople);
        if (!await store.Devices.AnyAsync(row => row.Id == id && (all || row.Person == by.Id), cancel)) return TypedResults.NotFound();
        await audit.SaveAsync(store, new AuditNote(AuditKind.DeviceEnded, by.Id, by.From) { Subject = id }, () => store.Devices.Where(row => row.Id == id).ExecuteDeleteAsync(cancel), cancel);
        return asked.Done("/devices");
    }
}
