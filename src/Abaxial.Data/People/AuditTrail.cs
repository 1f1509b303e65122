using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.People;

/// <summary>What is written into the audit.</summary>
public static class AuditKind
{
    public const string SetUp = "set-up";
    public const string SignedIn = "signed-in";
    public const string SignInFailed = "sign-in-failed";
    public const string LockedOut = "locked-out";
    public const string SignedOut = "signed-out";
    public const string Proven = "proven";
    public const string SessionsEnded = "sessions-ended";
    public const string Invited = "invited";
    public const string InvitationTaken = "invitation-taken";
    public const string PersonChanged = "person-changed";
    public const string PersonClosed = "person-closed";
    public const string PersonOpened = "person-opened";
    public const string PersonErased = "person-erased";
    public const string PasswordChanged = "password-changed";
    public const string PasskeyAdded = "passkey-added";
    public const string PasskeyRemoved = "passkey-removed";
    public const string AppAdded = "app-added";
    public const string AppRemoved = "app-removed";
    public const string PinSet = "pin-set";
    public const string PinRemoved = "pin-removed";
    public const string DevicePaired = "device-paired";
    public const string DeviceEnded = "device-ended";
    public const string BenchMarked = "bench-marked";
    public const string BenchEnded = "bench-ended";
    public const string Exported = "exported";
}

/// <summary>One thing to be noted.</summary>
/// <param name="Kind">A word of <see cref="AuditKind"/>.</param>
/// <param name="Person">Who did it.</param>
/// <param name="From">The first digits of the session or device.</param>
public sealed record AuditNote(string Kind, string? Person, string? From = null)
{
    /// <summary>To whom or what, where that is another.</summary>
    public string? Subject { get; init; }

    /// <summary>A word from the program.</summary>
    public string? Detail { get; init; }
}

/// <summary>The one way into the audit. A row is written in the transaction of what it tells of.</summary>
public sealed class AuditTrail(TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim oneWriter = new(1, 1);

    /// <summary>Saves what a context holds, and what a change does by itself, with a row that tells of it: all or nothing.</summary>
    public async Task SaveAsync(LedgerContext context, AuditNote note, Func<Task>? change = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(note);
        await oneWriter.WaitAsync(cancel);
        try
        {
            await using var transaction = await context.Database.BeginTransactionAsync(cancel);
            if (change is not null) await change();
            var last = await context.Audit.AsNoTracking().OrderByDescending(row => row.Place).FirstOrDefaultAsync(cancel);
            context.Audit.Add(RowAfter(last, note));
            await context.SaveChangesAsync(cancel);
            await transaction.CommitAsync(cancel);
        }
        finally
        {
            oneWriter.Release();
        }
    }

    /// <summary>The place of the first row that was changed, taken away or put in; null where all fit.</summary>
    public static async Task<long?> FirstFaultAsync(LedgerContext context, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(context);
        string previous = "";
        long place = 0;
        await foreach (var row in context.Audit.AsNoTracking().OrderBy(row => row.Place).AsAsyncEnumerable().WithCancellation(cancel))
        {
            if (row.Place != ++place || row.Hash != HashOf(previous, row)) return place;
            previous = row.Hash;
        }

        return null;
    }

    public void Dispose() => oneWriter.Dispose();

    private AuditRow RowAfter(AuditRow? last, AuditNote note)
    {
        var now = clock.GetUtcNow();
        var row = new AuditRow
        {
            Place = (last?.Place ?? 0) + 1,
            Moment = new DateTimeOffset(now.Ticks - (now.Ticks % TimeSpan.TicksPerMillisecond), TimeSpan.Zero), // as finely as every database keeps it
            Kind = note.Kind,
            Person = note.Person,
            Subject = note.Subject,
            From = note.From,
            Detail = note.Detail,
            Hash = "",
        };
        return new AuditRow { Place = row.Place, Moment = row.Moment, Kind = row.Kind, Person = row.Person, Subject = row.Subject, From = row.From, Detail = row.Detail, Hash = HashOf(last?.Hash ?? "", row) };
    }

    private static string HashOf(string previous, AuditRow row)
    {
        string?[] parts = [previous, row.Place.ToString(CultureInfo.InvariantCulture), row.Moment.UtcDateTime.ToString("O", CultureInfo.InvariantCulture), row.Kind, row.Person, row.Subject, row.From, row.Detail];
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', parts))));
    }
}
