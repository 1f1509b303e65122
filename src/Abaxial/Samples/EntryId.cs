using System.Buffers.Binary;

namespace Abaxial.Samples;

/// <summary>
/// The id of an entry: a ULID (48 bits of Unix milliseconds, then 80 random bits), so that ids sort by the moment they were made, as numbers and as text.
/// </summary>
public readonly record struct EntryId : IComparable<EntryId>
{
    private const string Digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"; // Crockford's base 32: no I, L, O, U
    private const int Length = 26;

    private readonly UInt128 value;

    private EntryId(UInt128 value) => this.value = value;

    /// <summary>Makes an id.</summary>
    /// <param name="moment">The moment it was made; not before 1970.</param>
    /// <param name="random">Ten random bytes.</param>
    /// <exception cref="ArgumentException">The moment is before 1970, or there are not ten bytes.</exception>
    public static EntryId From(DateTimeOffset moment, ReadOnlySpan<byte> random)
    {
        long milliseconds = moment.ToUnixTimeMilliseconds();
        if (milliseconds < 0) throw new ArgumentException($"{moment:O} is before 1970.", nameof(moment));
        if (random.Length != 10) throw new ArgumentException($"{random.Length} random bytes; accepted: 10.", nameof(random));
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt64BigEndian(bytes, milliseconds << 16);
        random.CopyTo(bytes[6..]);
        return new EntryId(BinaryPrimitives.ReadUInt128BigEndian(bytes));
    }

    /// <summary>The moment in the id, as milliseconds since 1970; an id can hold moments beyond those of the framework.</summary>
    public long UnixMilliseconds => (long)(value >> 80);

    /// <summary>The moment and the first 15 random bits, as one number that is not negative and sorts as ids do.</summary>
    public long LeadingBits => (long)(value >> 65);

    /// <summary>Reads 26 digits, upper and lower case alike; refuses what would not fit 128 bits.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out EntryId id)
    {
        id = default;
        if (text.Length != Length || DigitOf(text[0]) > 7) return false; // 26 digits hold two bits more than there are
        UInt128 value = 0;
        foreach (char letter in text)
        {
            int digit = DigitOf(letter);
            if (digit < 0) return false;
            value = (value << 5) | (uint)digit;
        }

        id = new EntryId(value);
        return true;
    }

    /// <inheritdoc cref="TryParse"/>
    /// <exception cref="FormatException">The text is no such id.</exception>
    public static EntryId Parse(string text) => TryParse(text, out var id) ? id : throw new FormatException($"'{text}' is no entry id; accepted: 26 digits of Crockford's base 32.");

    /// <summary>By the moment, then by the random part.</summary>
    public int CompareTo(EntryId other) => value.CompareTo(other.value);

    public static bool operator <(EntryId left, EntryId right) => left.CompareTo(right) < 0;

    public static bool operator >(EntryId left, EntryId right) => left.CompareTo(right) > 0;

    public static bool operator <=(EntryId left, EntryId right) => left.CompareTo(right) <= 0;

    public static bool operator >=(EntryId left, EntryId right) => left.CompareTo(right) >= 0;

    private static int DigitOf(char letter) => Digits.IndexOf(letter is >= 'a' and <= 'z' ? (char)(letter - 'a' + 'A') : letter, StringComparison.Ordinal);

    /// <summary>The 26 digits, upper case.</summary>
    public override string ToString() => string.Create(Length, value, static (text, rest) =>
    {
        for (int i = Length - 1; i >= 0; i--)
        {
            text[i] = Digits[(int)(rest & 31)];
            rest >>= 5;
        }
    });
}
