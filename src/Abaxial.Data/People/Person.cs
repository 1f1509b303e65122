using Microsoft.AspNetCore.Identity;

namespace Abaxial.Data.People;

/// <summary>
/// Somebody with an account. The key is the id that entries name as their author; everything else can be erased. The name to sign in with is
/// <see cref="IdentityUser{TKey}.UserName"/>.
/// </summary>
public sealed class Person : IdentityUser<string>
{
    public required string DisplayName { get; set; }

    public required Role Role { get; set; }

    /// <summary>Names of the areas whose samples a scout sees.</summary>
    public List<string> Areas { get; set; } = [];

    /// <summary>The hash of the PIN for a shared bench computer; null where there is none.</summary>
    public string? PinHash { get; set; }

    /// <summary>Wrong PINs since the last right one, or since the person signed in otherwise.</summary>
    public int PinFailures { get; set; }

    /// <summary>The secret shared with an authenticator app (RFC 6238); null where there is none.</summary>
    public byte[]? TotpSecret { get; set; }

    /// <summary>Whether a code of the app was shown once, so that it is asked for from then on.</summary>
    public bool IsTotpOn { get; set; }

    /// <summary>The time step of the last code that was taken: none is taken twice.</summary>
    public long TotpLastStep { get; set; }

    /// <summary>An administrator keeps the person out.</summary>
    public bool IsClosed { get; set; }

    /// <summary>When the account was made.</summary>
    public DateTimeOffset Made { get; init; }
}
