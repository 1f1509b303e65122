using Abaxial.Data;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>Keeps people out, lets them in again, and erases them. An administrator who can sign in stays, whatever is asked.</summary>
internal sealed class PersonEnds(Ledger ledger, LedgerContext store, AuditTrail audit)
{
    private const string Page = "/people";

    public async Task<bool> IsLastAdministratorAsync(string id, CancellationToken cancel) =>
        await store.People.AnyAsync(row => row.Id == id && row.Role == Role.Administrator && !row.IsClosed, cancel)
        && !await store.People.AnyAsync(row => row.Id != id && row.Role == Role.Administrator && !row.IsClosed && (row.PasswordHash != null || store.Passkeys.Any(passkey => passkey.UserId == row.Id)), cancel);

    public async Task<IResult> CloseAsync(string id, Asked asked, CurrentPerson by, CancellationToken cancel)
    {
        if (!await IsThereAsync(id, cancel)) return TypedResults.NotFound();
        if (await IsLastAdministratorAsync(id, cancel)) return asked.Refuse(Faults.LastAdministrator, Page, StatusCodes.Status409Conflict);
        await audit.SaveAsync(store, new AuditNote(AuditKind.PersonClosed, by.Id, by.From) { Subject = id }, Close, cancel);
        return asked.Done(Page);

        async Task Close()
        {
            await store.People.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(person => person.IsClosed, true), cancel);
            await store.Sessions.Where(row => row.Person == id).ExecuteDeleteAsync(cancel);
            await store.Devices.Where(row => row.Person == id).ExecuteDeleteAsync(cancel);
            await store.OneTimeCodes.Where(row => row.Person == id).ExecuteDeleteAsync(cancel);
        }
    }

    public async Task<IResult> OpenAsync(string id, Asked asked, CurrentPerson by, CancellationToken cancel)
    {
        if (!await IsThereAsync(id, cancel)) return TypedResults.NotFound();
        DateTimeOffset? never = null;
        await audit.SaveAsync(
            store,
            new AuditNote(AuditKind.PersonOpened, by.Id, by.From) { Subject = id },
            () => store.People.Where(row => row.Id == id).ExecuteUpdateAsync(row => row.SetProperty(person => person.IsClosed, false).SetProperty(person => person.LockoutEnd, never).SetProperty(person => person.AccessFailedCount, 0), cancel),
            cancel);
        return asked.Done(Page);
    }

    /// <summary>The account first, so that nobody signs in meanwhile; then what the ledger holds. Asked again after a failure it goes on where it was.</summary>
    public async Task<IResult> EraseAsync(string id, Asked asked, CurrentPerson by, CancellationToken cancel)
    {
        if (!await IsThereAsync(id, cancel) && !await store.Erasures.AnyAsync(row => row.Person == id, cancel)) return TypedResults.NotFound();
        if (await IsLastAdministratorAsync(id, cancel)) return asked.Refuse(Faults.LastAdministrator, Page, StatusCodes.Status409Conflict);
        await audit.SaveAsync(store, new AuditNote(AuditKind.PersonErased, by.Id, by.From) { Subject = id }, Forget, cancel); // by the database's own cascade: sessions, devices, passkeys, codes
        var erased = await ledger.EraseAsync(id, by.Id, cancel);
        return asked.Done(new { Samples = erased.Samples.Length, erased.Texts, erased.IsWrittenOver }, Page);

        async Task Forget()
        {
            if (!await store.Erasures.AnyAsync(row => row.Person == id, cancel)) store.Erasures.Add(new ErasureRow { Person = id }); // the id is nobody else's from now on
            await store.PersonWords.Where(row => row.Person == id).ExecuteDeleteAsync(cancel);
            await store.People.Where(row => row.Id == id).ExecuteDeleteAsync(cancel);
        }
    }

    private Task<bool> IsThereAsync(string id, CancellationToken cancel) => store.People.AnyAsync(row => row.Id == id, cancel);
}
