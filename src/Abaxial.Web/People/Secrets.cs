using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Abaxial.Web.People;

/// <summary>Secrets that are given out: the store keeps their hashes only.</summary>
internal static class Secrets
{
    /// <summary>Letters and digits that are not taken for one another when read aloud or typed.</summary>
    private const string Letters = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";

    /// <summary>256 random bits, for cookies and devices.</summary>
    public static string NewToken() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));

    /// <summary>A code to be typed, in groups of four: 4.95 bits a letter.</summary>
    public static string NewCode(int groups) => string.Join('-', Enumerable.Range(0, groups).Select(_ => RandomNumberGenerator.GetString(Letters, 4)));

    /// <summary>A code as it is compared: without what people put between, in capitals.</summary>
    public static string Plain(string code) => string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();

    /// <summary>SHA-256 in hexadecimal digits. What is hashed so is random, so that no slow hash is needed.</summary>
    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
