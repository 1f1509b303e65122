using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Holds a name, a password and a code against the accounts. Every try costs the same work and fails with the same words.</summary>
internal sealed class SigningIn(LedgerContext store, AuditTrail audit, PasswordWork work, AddressTries tries, TimeProvider clock)
{
    /// <summary>So many failed tries one after the other lock an account …</summary>
    public const int MostFailures = 10;

    /// <summary>… for so long.</summary>
    public static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(15);

    /// <summary>The name by which an account is found.</summary>
    public static string Normal(string name) => name.Trim().ToUpperInvariant();

    /// <summary>Who it is; null where anything is wrong.</summary>
    public async Task<Person?> TryAsync(HttpContext http, string name, string password, string code, CancellationToken cancel)
    {
        string normal = Normal(name);
        var person = normal.Length is 0 or > 100 ? null : await store.People.SingleOrDefaultAsync(row => row.NormalizedUserName == normal, cancel);
        return await TryAsync(http, person, password, code, cancel);
    }

    /// <inheritdoc cref="TryAsync(HttpContext, string, string, string, CancellationToken)"/>
    public async Task<Person?> TryAsync(HttpContext http, Person? person, string password, string code, CancellationToken cancel)
    {
        bool isRight = work.Fits(person?.PasswordHash, password.Length <= 4 * PasswordRules.Longest ? password : "");
        var now = clock.GetUtcNow();
        bool isShut = tries.IsShut(http) || person is null || person.IsClosed || person.LockoutEnd > now;
        if (isRight && !isShut && await TakesCodeAsync(person!, code, now, cancel))
        {
            await store.People.Where(row => row.Id == person!.Id).ExecuteUpdateAsync(row => row.SetProperty(found => found.AccessFailedCount, 0).SetProperty(found => found.PinFailures, 0), cancel);
            return person;
        }

        tries.Fail(http);
        await NoteFailureAsync(isShut ? null : person, person?.Id, now, cancel);
        return null;
    }

    /// <summary>Counts a failure of an account that is not locked; the last that is allowed locks it.</summary>
    private async Task NoteFailureAsync(Person? counted, string? id, DateTimeOffset now, CancellationToken cancel)
    {
        bool locks = counted is not null && counted.AccessFailedCount + 1 >= MostFailures;
        await audit.SaveAsync(store, new AuditNote(locks ? AuditKind.LockedOut : AuditKind.SignInFailed, null) { Subject = id }, Count, cancel);

        async Task Count()
        {
            if (counted is null) return;
            await store.People.Where(row => row.Id == counted.Id).ExecuteUpdateAsync(row => row.SetProperty(found => found.AccessFailedCount, found => found.AccessFailedCount + 1), cancel);
            if (!locks) return;
            DateTimeOffset? until = now + LockedFor;
            await store.People.Where(row => row.Id == counted.Id).ExecuteUpdateAsync(row => row.SetProperty(found => found.LockoutEnd, until).SetProperty(found => found.AccessFailedCount, 0), cancel);
        }
    }

    /// <summary>Whether the second proof is there, where the account asks for one: a code of the app, each once, or a recovery code, which is then used up.</summary>
    private async Task<bool> TakesCodeAsync(Person person, string code, DateTimeOffset now, CancellationToken cancel)
    {
        if (!person.IsTotpOn || person.TotpSecret is null) return true;
        if (Totp.StepOf(person.TotpSecret, code, now, person.TotpLastStep) is { } step)
        {
            return await store.People.Where(row => row.Id == person.Id && row.TotpLastStep < step).ExecuteUpdateAsync(row => row.SetProperty(found => found.TotpLastStep, step), cancel) == 1;
        }

        string hash = RecoveryHash(person.Id, code);
        return await store.RecoveryCodes.Where(row => row.Id == hash && row.Person == person.Id).ExecuteDeleteAsync(cancel) == 1;
    }

    public static string RecoveryHash(string person, string code) => Secrets.HashOf($"{person} {Secrets.Plain(code)}");
}
