using System.Security.Cryptography;
using Abaxial.Data.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Abaxial.Web.People;

/// <summary>
/// Hashes passwords and PINs slowly, and does the same work where there is nobody to compare with. It counts what it computed, so that this can be shown.
/// </summary>
internal sealed class PasswordWork
{
    /// <summary>Rounds of PBKDF2 with HMAC-SHA-512; the OWASP cheat sheet on password storage asks for at least 210,000 (from memory).</summary>
    private const int Rounds = 220_000;

    private static readonly PasswordHasher<Person> Hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = Rounds }));
    private static readonly string Nobody = Hasher.HashPassword(null!, Convert.ToHexString(RandomNumberGenerator.GetBytes(32)));

    private long computed;

    /// <summary>How many hashes were computed.</summary>
    public long Computed => Interlocked.Read(ref computed);

    public string HashOf(string secret)
    {
        Interlocked.Increment(ref computed);
        return Hasher.HashPassword(null!, secret);
    }

    /// <summary>Whether a secret is the one that was hashed; never where there is no hash.</summary>
    public bool Fits(string? hash, string secret)
    {
        Interlocked.Increment(ref computed);
        return Hasher.VerifyHashedPassword(null!, hash ?? Nobody, secret) != PasswordVerificationResult.Failed && hash is not null;
    }
}
