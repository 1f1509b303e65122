using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Abaxial.Samples;

/// <summary>
/// One thing that happened to a sample: taken in, looked at, photographed, diagnosed, handed over, corrected. Entries are only added. What came before it from the same
/// device is part of it by hash, so that no entry can be changed, taken out or put in unseen.
/// </summary>
public sealed record Entry
{
    /// <summary>The hash that the first entry of a device names as what came before.</summary>
    public static readonly string NothingBefore = new('0', 64);

    public required EntryId Id { get; init; }

    /// <summary>The sample it belongs to: the id of the entry that took it in.</summary>
    public required EntryId Sample { get; init; }

    /// <summary>The id of the person who says it.</summary>
    public required string Author { get; init; }

    /// <summary>The moment it happened, by the device's clock, to a ten-millionth of a second; order does not depend on it alone.</summary>
    public required DateTimeOffset Made { get; init; }

    /// <summary>The moment it was written down, where that was later than it happened.</summary>
    public DateTimeOffset? EnteredLater { get; init; }

    /// <summary>The id of the device that it was written down on.</summary>
    public required string Device { get; init; }

    /// <summary>Which entry of its device it is, from 1, over all samples.</summary>
    public required long Place { get; init; }

    /// <summary>The hash of the device's entry before this one, 64 lower-case hexadecimal digits; <see cref="NothingBefore"/> for the first.</summary>
    public required string Previous { get; init; }

    /// <summary>What happened: one of <see cref="EntryKind"/>'s words, or a word of a newer version.</summary>
    public required string Kind { get; init; }

    /// <summary>The version of the payload's form, from 1.</summary>
    public required int Version { get; init; }

    /// <summary>What is said: an object as canonical JSON (RFC 8785).</summary>
    public required string Payload { get; init; }

    /// <summary>The newest entries of the sample that the author had before them, ascending, each once.</summary>
    public ImmutableArray<EntryId> Heads { get; init; } = [];

    /// <summary>The whole entry as canonical JSON: what its hash is taken over, and how it is stored and sent.</summary>
    public string Canonical()
    {
        var text = new StringBuilder("{\"author\":", 256 + Payload.Length).Append(CanonicalJson.Of(Author));
        text.Append(",\"device\":").Append(CanonicalJson.Of(Device));
        if (EnteredLater is { } later) text.Append(",\"enteredLater\":\"").Append(Moment(later)).Append('"');
        text.Append(",\"heads\":[").AppendJoin(',', Heads.Select(head => $"\"{head}\"")).Append(']');
        text.Append(",\"id\":\"").Append(Id.ToString());
        text.Append("\",\"kind\":").Append(CanonicalJson.Of(Kind));
        text.Append(",\"made\":\"").Append(Moment(Made));
        text.Append("\",\"payload\":").Append(Payload);
        text.Append(",\"place\":").Append(CanonicalJson.Of(Place));
        text.Append(",\"previous\":").Append(CanonicalJson.Of(Previous));
        text.Append(",\"sample\":\"").Append(Sample.ToString());
        text.Append("\",\"version\":").Append(CanonicalJson.Of(Version));
        return text.Append('}').ToString();
    }

    /// <summary>The SHA-256 of a canonical text: 64 lower-case hexadecimal digits.</summary>
    public static string HashOf(string canonical) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(canonical)));

    /// <summary>The SHA-256 of <see cref="Canonical"/>. It is worked out anew each time.</summary>
    public string ComputeHash() => HashOf(Canonical());

    public bool Equals(Entry? other) => other is not null && Id == other.Id && Canonical() == other.Canonical();

    public override int GetHashCode() => Id.GetHashCode();

    /// <summary>A moment as entries write it: UTC, seven digits of a second.</summary>
    internal static string Moment(DateTimeOffset moment) => moment.UtcDateTime.ToString(MomentForm, CultureInfo.InvariantCulture);

    /// <summary>Reads a moment as entries write it, and no other way.</summary>
    internal static bool TryMoment(string text, out DateTimeOffset moment) =>
        DateTimeOffset.TryParseExact(text, MomentForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out moment);

    private const string MomentForm = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";
}
