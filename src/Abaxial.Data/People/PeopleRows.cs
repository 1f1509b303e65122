namespace Abaxial.Data.People;

/// <summary>Somebody who is signed in, in one browser. The browser holds a secret; here lies its hash.</summary>
public sealed class SessionRow
{
    /// <summary>SHA-256 of the secret in the cookie, in hexadecimal digits.</summary>
    public required string Id { get; init; }

    public required string Person { get; init; }

    /// <summary>How they signed in: password, passkey, pin.</summary>
    public required string Means { get; init; }

    public required DateTimeOffset Made { get; init; }

    /// <summary>When it was last used, to a few minutes.</summary>
    public required DateTimeOffset LastSeen { get; set; }

    /// <summary>When it ends however much it is used.</summary>
    public required DateTimeOffset Ends { get; init; }

    /// <summary>When the person last proved to be themselves; null where only a PIN was shown.</summary>
    public DateTimeOffset? Proven { get; set; }

    /// <summary>The family of the browser and of the device, nothing finer.</summary>
    public required string Browser { get; init; }
}

/// <summary>A device with a token of its own, bound to a person.</summary>
public sealed class DeviceRow
{
    public required string Id { get; init; }

    public required string Person { get; init; }

    /// <summary>What the person calls it.</summary>
    public required string Name { get; init; }

    /// <summary>What the device may do at most.</summary>
    public required Role Role { get; init; }

    /// <summary>SHA-256 of the token, which was shown once.</summary>
    public required string TokenHash { get; init; }

    public required DateTimeOffset Made { get; init; }

    /// <summary>To a few minutes; null where it was never used.</summary>
    public DateTimeOffset? LastUsed { get; set; }
}

/// <summary>A bench computer that several people share and switch on by PIN.</summary>
public sealed class BenchRow
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>SHA-256 of the secret in the computer's cookie.</summary>
    public required string SecretHash { get; init; }

    public required DateTimeOffset Made { get; init; }
}

/// <summary>A code that works once: an invitation, or the pairing of a device.</summary>
public sealed class OneTimeCodeRow
{
    /// <summary>SHA-256 of the code.</summary>
    public required string Id { get; init; }

    public required string Person { get; init; }

    /// <summary>invitation or pairing.</summary>
    public required string Purpose { get; init; }

    /// <summary>What a paired device may do at most.</summary>
    public required Role Role { get; init; }

    public required DateTimeOffset Ends { get; init; }
}

/// <summary>A code that stands in once for the authenticator app.</summary>
public sealed class RecoveryCodeRow
{
    /// <summary>SHA-256 of the person's id and the code.</summary>
    public required string Id { get; init; }

    public required string Person { get; init; }
}

/// <summary>Something that was done about people. Rows are only added; each holds the hash of the one before it.</summary>
public sealed class AuditRow
{
    /// <summary>Place in the order, from 1.</summary>
    public required long Place { get; init; }

    public required DateTimeOffset Moment { get; init; }

    /// <summary>What was done: a word of <see cref="AuditKind"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>Who did it; null where nobody was signed in.</summary>
    public string? Person { get; init; }

    /// <summary>To whom or what: the id of a person, device or session; null for the one who did it.</summary>
    public string? Subject { get; init; }

    /// <summary>From which session or device: the first digits of its id.</summary>
    public string? From { get; init; }

    /// <summary>A word or two from the program, never what somebody typed.</summary>
    public string? Detail { get; init; }

    /// <summary>SHA-256 of the row before it and this one.</summary>
    public required string Hash { get; init; }
}
