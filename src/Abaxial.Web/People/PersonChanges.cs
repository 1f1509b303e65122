using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Data.Search;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.People;

/// <summary>What a person is to be.</summary>
internal sealed record PersonWanted(string Id, string Name, string DisplayName, string Role, ImmutableArray<string> Areas);

/// <summary>Makes and changes accounts.</summary>
internal sealed class PersonChanges(LedgerContext store, AuditTrail audit, PasswordWork work, TimeProvider clock)
{
    private const int LongestName = 40;
    private const int LongestDisplayName = 80;
    private const int MostAreas = 50;
    private const int LongestId = 20;

    /// <summary>What is wrong with a wish, and the role that it names.</summary>
    /// <param name="wanted">The wish; an empty id lets the clinic choose.</param>
    /// <param name="person">The id of who is changed; null for somebody new.</param>
    /// <param name="cancel">Stops the asking.</param>
    public async Task<(Fault? Fault, Role Role)> FaultOfAsync(PersonWanted wanted, string? person, CancellationToken cancel)
    {
        if (!Enum.TryParse<Role>(wanted.Role, ignoreCase: true, out var role) || !Enum.IsDefined(role) || wanted.Role.Any(char.IsAsciiDigit)) return (Faults.RoleWord, default);
        if (wanted.DisplayName.Trim().Length is 0 or > LongestDisplayName || wanted.DisplayName.Any(char.IsControl)) return (Faults.DisplayName, role);
        if (wanted.Areas.Length > MostAreas || wanted.Areas.Any(area => area.Length > LongestDisplayName)) return (Faults.Areas, role);
        string normal = SigningIn.Normal(wanted.Name);
        if (normal.Length is < 2 or > LongestName || !normal.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-' or '@' or '_')) return (Faults.Name, role);
        if (await store.People.AnyAsync(row => row.NormalizedUserName == normal && row.Id != person, cancel)) return (Faults.Name, role);
        if (person is null && wanted.Id.Length > 0 && (!IsId(wanted.Id) || await WasThereAsync(wanted.Id, cancel))) return (Faults.PersonId, role);
        return (null, role);
    }

    /// <summary>Makes an account; without a password it waits for its invitation to be taken. From now on the person's samples are found by what they are called.</summary>
    public async Task<Person> AddAsync(PersonWanted wanted, Role role, string? password, AuditNote note, CancellationToken cancel)
    {
        string id = wanted.Id.Length > 0 ? wanted.Id : await NextIdAsync(role, cancel);
        var person = new Person
        {
            Id = id,
            UserName = wanted.Name.Trim(),
            NormalizedUserName = SigningIn.Normal(wanted.Name),
            DisplayName = wanted.DisplayName.Trim(),
            Role = role,
            Areas = [.. wanted.Areas],
            PasswordHash = password is null ? null : work.HashOf(password),
            SecurityStamp = Secrets.NewToken(),
            Made = clock.GetUtcNow(),
        };
        store.People.Add(person);
        await audit.SaveAsync(store, note with { Subject = id, Detail = PersonAnswer.Word(role) }, () => PersonWords.WriteAsync(store, id, person.DisplayName, cancel), cancel);
        return person;
    }

    /// <summary>Changes an account. Another role ends the person's sessions: each begins with one role and keeps it.</summary>
    public async Task ChangeAsync(Person person, PersonWanted wanted, Role role, CurrentPerson by, CancellationToken cancel)
    {
        bool isOther = person.Role != role;
        (person.UserName, person.NormalizedUserName) = (wanted.Name.Trim(), SigningIn.Normal(wanted.Name));
        (person.DisplayName, person.Role, person.Areas) = (wanted.DisplayName.Trim(), role, [.. wanted.Areas]);
        await audit.SaveAsync(
            store,
            new AuditNote(AuditKind.PersonChanged, by.Id, by.From) { Subject = person.Id, Detail = PersonAnswer.Word(role) },
            Follow,
            cancel);

        async Task Follow()
        {
            await PersonWords.WriteAsync(store, person.Id, person.DisplayName, cancel);
            if (isOther) await store.Sessions.Where(row => row.Person == person.Id).ExecuteDeleteAsync(cancel);
        }
    }

    /// <summary>The person of an invitation chooses a password; whatever was signed in with before is taken away.</summary>
    public async Task StartAnewAsync(Person person, string password, CancellationToken cancel)
    {
        person.PasswordHash = work.HashOf(password);
        (person.IsTotpOn, person.TotpSecret, person.PinHash, person.LockoutEnd, person.AccessFailedCount) = (false, null, null, null, 0);
        await audit.SaveAsync(store, new AuditNote(AuditKind.InvitationTaken, person.Id), TakeAway, cancel);

        async Task TakeAway()
        {
            await store.Sessions.Where(row => row.Person == person.Id).ExecuteDeleteAsync(cancel);
            await store.Devices.Where(row => row.Person == person.Id).ExecuteDeleteAsync(cancel);
            await store.Passkeys.Where(row => row.UserId == person.Id).ExecuteDeleteAsync(cancel);
            await store.RecoveryCodes.Where(row => row.Person == person.Id).ExecuteDeleteAsync(cancel);
        }
    }

    /// <summary>The next id of a role that nobody had.</summary>
    private async Task<string> NextIdAsync(Role role, CancellationToken cancel)
    {
        char letter = role switch { Role.Submitter => 'm', Role.Scout => 's', Role.Diagnostician => 'd', Role.Lead => 'l', _ => 'a' };
        for (int number = 1; ; number++)
        {
            string id = string.Create(CultureInfo.InvariantCulture, $"{letter}-{number:D2}");
            if (!await WasThereAsync(id, cancel)) return id;
        }
    }

    /// <summary>An id stays its person's, also after they were erased.</summary>
    private async Task<bool> WasThereAsync(string id, CancellationToken cancel) =>
        await store.People.AnyAsync(row => row.Id == id, cancel) || await store.Erasures.AnyAsync(row => row.Person == id, cancel);

    private static bool IsId(string id) => id.Length is > 1 and <= LongestId && id.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-') && char.IsAsciiLetterLower(id[0]);
}
