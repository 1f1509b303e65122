using Abaxial.Data;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Finds out who asks: by the token of a device, by the cookie of a session, and in a demo by neither.</summary>
internal static class Recognizing
{
    private const string Bearer = "Bearer ";

    /// <summary>A row says when it was last used only so finely, to be written seldom.</summary>
    private static readonly TimeSpan Coarse = TimeSpan.FromMinutes(5);

    public static async Task<CurrentPerson?> PersonAsync(HttpContext context, LedgerContext store, ClinicOptions options, TimeProvider clock)
    {
        var now = clock.GetUtcNow();
        var cancel = context.RequestAborted;
        if (context.Request.Headers.Authorization.ToString() is { Length: > 0 } shown)
        {
            return shown.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) ? await OfDeviceAsync(store, Secrets.HashOf(shown[Bearer.Length..].Trim()), now, cancel) : null;
        }

        if (SessionCookie.Read(context) is { } secret && await OfSessionAsync(store, Secrets.HashOf(secret), now, cancel) is { } person) return person;
        return options.IsDemo ? DemoPeople.Visitor : null;
    }

    private static async Task<CurrentPerson?> OfSessionAsync(LedgerContext store, string id, DateTimeOffset now, CancellationToken cancel)
    {
        var found = await (from session in store.Sessions.AsNoTracking()
                           join person in store.People.AsNoTracking() on session.Person equals person.Id
                           where session.Id == id && !person.IsClosed
                           select new { session, person }).SingleOrDefaultAsync(cancel);
        if (found is null || !SessionTimes.IsOpen(found.session, now)) return null;
        if (now - found.session.LastSeen > Coarse) await store.Sessions.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(session => session.LastSeen, now), cancel);
        return new CurrentPerson(found.person.Id, found.person.DisplayName, found.person.Role, [.. found.person.Areas], MeansOf(found.session.Means))
        {
            Key = id,
            SignInName = found.person.UserName ?? "",
            Proven = found.session.Proven,
        };
    }

    private static async Task<CurrentPerson?> OfDeviceAsync(LedgerContext store, string hash, DateTimeOffset now, CancellationToken cancel)
    {
        var found = await (from device in store.Devices.AsNoTracking()
                           join person in store.People.AsNoTracking() on device.Person equals person.Id
                           where device.TokenHash == hash && !person.IsClosed
                           select new { device, person }).SingleOrDefaultAsync(cancel);
        if (found is null || !Rights.DeviceRolesOf(found.person.Role).Contains(found.device.Role)) return null;
        if (found.device.LastUsed is not { } last || now - last > Coarse)
        {
            await store.Devices.Where(row => row.Id == found.device.Id).ExecuteUpdateAsync(row => row.SetProperty(device => device.LastUsed, now), cancel);
        }

        return new CurrentPerson(found.person.Id, found.person.DisplayName, found.device.Role, [.. found.person.Areas], Means.Device) { Key = found.device.Id };
    }

    private static Means MeansOf(string written) => Enum.TryParse<Means>(written, ignoreCase: true, out var means) ? means : Means.Pin;
}
