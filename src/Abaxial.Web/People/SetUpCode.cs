using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>The code with which the first administrator is made: there is one while there is no administrator. It holds until it is used or the program ends.</summary>
public sealed class SetUpCode
{
    private string? code;

    /// <summary>The code, to be shown on the console to whoever started the program; null where it is not wanted.</summary>
    public string? Current => Volatile.Read(ref code);

    /// <summary>Makes a code where there is no administrator who could sign in.</summary>
    internal async Task PrepareAsync(Ledger ledger, CancellationToken cancel)
    {
        await using var store = ledger.Ask();
        if (!await store.People.AnyAsync(person => person.Role == Role.Administrator && !person.IsClosed, cancel)) Volatile.Write(ref code, Secrets.NewCode(5));
    }

    /// <summary>Whether a code is the one that is shown.</summary>
    internal bool IsRight(string typed) =>
        Current is { } shown && System.Security.Cryptography.CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(Secrets.Plain(shown)), System.Text.Encoding.UTF8.GetBytes(Secrets.Plain(typed)));

    /// <summary>Uses the code up; of two who use it at once one is told false.</summary>
    internal bool Take() => Interlocked.Exchange(ref code, null) is not null;
}
