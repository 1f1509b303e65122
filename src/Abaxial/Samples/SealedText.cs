using System.Security.Cryptography;
using System.Text;

namespace Abaxial.Samples;

/// <summary>What an entry holds in place of a text about a person.</summary>
/// <param name="Person">The id of the person whom the text is about.</param>
/// <param name="Sha256">The seal of the text: 64 lower-case hexadecimal digits.</param>
public sealed record Seal(string Person, string Sha256)
{
    internal string ToJson() => CanonicalJson.OfObject(("person", CanonicalJson.Of(Person)), ("sha256", CanonicalJson.Of(Sha256)));
}

/// <summary>
/// A name, an address, an exact place or free text about a person. It is kept outside the chain; an entry holds only its seal, the SHA-256 of a random salt, the person and the
/// text. When the text and the salt are deleted the chain still holds, and the seal says nothing.
/// </summary>
/// <param name="Person">The id of the person whom the text is about.</param>
/// <param name="Salt">32 random bytes.</param>
/// <param name="Text">The text.</param>
public sealed record SealedText(string Person, ReadOnlyMemory<byte> Salt, string Text)
{
    /// <summary>Bytes of a salt: as many as the hash has, so that a text cannot be guessed from its seal.</summary>
    public const int SaltLength = 32;

    /// <summary>The seal that an entry holds.</summary>
    /// <exception cref="InvalidOperationException">The salt has another length.</exception>
    public Seal Seal()
    {
        if (Salt.Length != SaltLength) throw new InvalidOperationException($"A salt of {Salt.Length} bytes; accepted: {SaltLength}.");
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Salt.Span);
        hash.AppendData(Encoding.UTF8.GetBytes(Person));
        hash.AppendData([0]); // no id holds it: person and text cannot run into each other
        hash.AppendData(Encoding.UTF8.GetBytes(Text));
        return new Seal(Person, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>Characters of one text.</summary>
    public const int Longest = 20_000;

    /// <summary>What keeps it from being stored, with what would be accepted; null where nothing does.</summary>
    public (string Found, string Accepted)? Fault()
    {
        if (Salt.Length != SaltLength) return ($"a salt of {Salt.Length} bytes", $"{SaltLength} bytes");
        if (Text.Length is 0 or > Longest) return ($"{Text.Length} characters", $"1 to {Longest} characters");
        if (!IsKept(Text)) return ("a zero character or half a character", "characters that every database keeps");
        return PayloadMembers.IsId(Person) ? null : ("a person with another id", PayloadMembers.IdForm);
    }

    /// <summary>PostgreSQL keeps no zero character, and no encoding keeps one half of a surrogate pair.</summary>
    private static bool IsKept(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\0') return false;
            if (!char.IsSurrogate(text[i])) continue;
            if (i + 1 == text.Length || !char.IsSurrogatePair(text[i], text[i + 1])) return false;
            i++;
        }

        return true;
    }
}
