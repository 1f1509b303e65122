using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Begins and ends sessions. Whoever signs in gets a new one, and the one that the browser had is ended: nobody can hand another a session that both then hold.</summary>
internal sealed class Sessions(LedgerContext store, AuditTrail audit, TimeProvider clock)
{
    /// <summary>Signs somebody in, in the browser that asks.</summary>
    public async Task BeginAsync(HttpContext http, Person person, Means means, string kind = AuditKind.SignedIn, CancellationToken cancel = default)
    {
        var now = clock.GetUtcNow();
        string secret = Secrets.NewToken(), id = Secrets.HashOf(secret), word = means.ToString().ToLowerInvariant();
        string? before = SessionCookie.Read(http) is { } had ? Secrets.HashOf(had) : null;
        var lasts = means == Means.Pin ? SessionTimes.LongestByPin : SessionTimes.Longest;
        store.Sessions.Add(new SessionRow
        {
            Id = id,
            Person = person.Id,
            Means = word,
            Made = now,
            LastSeen = now,
            Ends = now + lasts,
            Proven = means is Means.Password or Means.Passkey ? now : null,
            Browser = BrowserFamily.Of(http.Request.Headers.UserAgent.ToString()),
        });
        await audit.SaveAsync(store, new AuditNote(kind, person.Id, id[..12]) { Detail = word }, Change, cancel);
        SessionCookie.Write(http, secret, lasts);

        async Task Change()
        {
            var over = now - SessionTimes.Idle;
            await store.Sessions.Where(row => row.Id == before || row.Ends <= now || row.LastSeen <= over).ExecuteDeleteAsync(cancel);
        }
    }

    /// <summary>Ends one session of a person.</summary>
    /// <returns>False where the person has no such session.</returns>
    public async Task<bool> EndAsync(CurrentPerson by, string person, string id, CancellationToken cancel = default)
    {
        if (!await store.Sessions.AnyAsync(row => row.Id == id && row.Person == person, cancel)) return false;
        await audit.SaveAsync(store, new AuditNote(AuditKind.SignedOut, by.Id, by.From) { Subject = id[..12] }, () => store.Sessions.Where(row => row.Id == id).ExecuteDeleteAsync(cancel), cancel);
        return true;
    }

    /// <summary>Ends all sessions of a person but one; null ends all.</summary>
    public Task EndAllAsync(CurrentPerson by, string person, string? but, CancellationToken cancel = default) =>
        audit.SaveAsync(store, new AuditNote(AuditKind.SessionsEnded, by.Id, by.From) { Subject = person }, () => store.Sessions.Where(row => row.Person == person && row.Id != but).ExecuteDeleteAsync(cancel), cancel);
}
