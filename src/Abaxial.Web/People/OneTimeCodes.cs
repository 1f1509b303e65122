using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Codes that work once and end by themselves.</summary>
internal static class OneTimeCodes
{
    public const string Invitation = "invitation";
    public const string Pairing = "pairing";

    /// <summary>Makes a code; the store keeps its hash.</summary>
    public static async Task<string> NewAsync(LedgerContext store, string person, string purpose, Role role, int groups, DateTimeOffset ends, CancellationToken cancel)
    {
        string code = Secrets.NewCode(groups);
        store.OneTimeCodes.Add(new OneTimeCodeRow { Id = IdOf(code), Person = person, Purpose = purpose, Role = role, Ends = ends });
        await store.SaveChangesAsync(cancel);
        return code;
    }

    /// <summary>A code that is valid; null for any other.</summary>
    public static async Task<OneTimeCodeRow?> FindAsync(LedgerContext store, string typed, string purpose, DateTimeOffset now, CancellationToken cancel)
    {
        string id = IdOf(typed);
        return typed.Length > 100 ? null : await store.OneTimeCodes.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id && row.Purpose == purpose && row.Ends > now, cancel);
    }

    /// <summary>Uses a code up; of two who do so at once one is told false.</summary>
    public static async Task<bool> TakeAsync(LedgerContext store, OneTimeCodeRow code, CancellationToken cancel) =>
        await store.OneTimeCodes.Where(row => row.Id == code.Id).ExecuteDeleteAsync(cancel) == 1;

    private static string IdOf(string code) => Secrets.HashOf(Secrets.Plain(code));
}
