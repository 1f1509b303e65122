using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>An entry that was read, or the problems that kept it from being read.</summary>
public sealed record EntryReading
{
    /// <summary>The entry; null where it was refused.</summary>
    public Entry? Entry { get; init; }

    /// <summary>At least one where the entry was refused; empty otherwise.</summary>
    public ImmutableArray<CaseProblem> Problems { get; init; } = [];

    [MemberNotNullWhen(false, nameof(Entry))]
    public bool IsRefused => Entry is null;
}

/// <summary>
/// Reads entries from their canonical JSON. Whatever is not understood refuses the entry with the place, what was found and what would be accepted. The payload of a kind or
/// version that is not known here is kept as it is: what it says is a matter of <see cref="PayloadReader"/>.
/// </summary>
public static class EntryReader
{
    /// <summary>Bytes of one entry: 256 KiB.</summary>
    public const int Bytes = 256 << 10;

    private const string Digits64 = "64 lower-case hexadecimal digits";

    private static readonly ImmutableArray<string> Known =
        ["author", "device", "enteredLater", "heads", "id", "kind", "made", "payload", "place", "previous", "sample", "version"];

    /// <summary>Reads one entry.</summary>
    /// <param name="utf8">The canonical JSON in UTF-8, of any content whatever: nothing in it makes this method throw.</param>
    public static EntryReading Read(ReadOnlySpan<byte> utf8)
    {
        var problems = new CaseProblems();
        if (utf8.Length > Bytes) problems.Add("", $"{utf8.Length} bytes", $"at most {Bytes} bytes");
        else if (CaseForm.Check(utf8, problems) && problems.Count == 0) return Read(utf8, problems);
        return Refuse(problems);
    }

    private static EntryReading Read(ReadOnlySpan<byte> utf8, CaseProblems problems)
    {
        var reader = new Utf8JsonReader(utf8, CaseForm.Options);
        using var document = JsonDocument.ParseValue(ref reader);
        var entry = ReadEntry(document.RootElement, problems);
        if (problems.Count > 0) return Refuse(problems);
        if (!Encoding.UTF8.GetBytes(entry!.Canonical()).AsSpan().SequenceEqual(utf8)) problems.Add("", "another form of JSON", "canonical JSON (RFC 8785)");
        return problems.Count > 0 ? Refuse(problems) : new EntryReading { Entry = entry };
    }

    private static EntryReading Refuse(CaseProblems problems) => new() { Problems = problems.ToImmutable() };

    private static Entry? ReadEntry(JsonElement root, CaseProblems problems)
    {
        if (CaseMembers.Of(root, "", Known, problems) is not { } members) return null;
        var entry = new Entry
        {
            Author = members.Id("author", isRequired: true) ?? "",
            Device = members.Id("device", isRequired: true) ?? "",
            EnteredLater = members.Moment("enteredLater"),
            Heads = ReadHeads(members),
            Id = members.EntryId("id", isRequired: true) ?? default,
            Kind = ReadKind(members),
            Made = members.Moment("made", isRequired: true) ?? default,
            Payload = ReadPayload(members),
            Place = members.Whole("place", 1, (1L << 53) - 1, isRequired: true) ?? 0,
            Previous = members.Sha256("previous", isRequired: true) ?? "",
            Sample = members.EntryId("sample", isRequired: true) ?? default,
            Version = (int)(members.Whole("version", 1, int.MaxValue, isRequired: true) ?? 0),
        };
        if (problems.Count > 0) return entry;
        if (entry.Place == 1 != (entry.Previous == Entry.NothingBefore)) problems.Add("/previous", entry.Previous, entry.Place == 1 ? "64 zeros for the first entry of a device" : $"{Digits64}, not all zero");
        bool takesIn = entry.Kind == EntryKind.TakenIn;
        if (takesIn != (entry.Sample == entry.Id)) problems.Add("/sample", entry.Sample.ToString(), takesIn ? "the entry's own id, as it takes the sample in" : "the id of the entry that took the sample in");
        return entry;
    }

    private static ImmutableArray<EntryId> ReadHeads(CaseMembers members)
    {
        if (members.List("heads", isRequired: true) is not { } list) return [];
        var heads = ImmutableArray.CreateBuilder<EntryId>(list.GetArrayLength());
        foreach (var item in list.EnumerateArray())
        {
            string at = CaseProblems.Below(members.Below("heads"), heads.Count);
            if (item.ValueKind != JsonValueKind.String || !EntryId.TryParse(item.GetString(), out var head)) members.Problems.AddWrongKind(at, item, "the id of an entry");
            else if (heads.Count > 0 && head <= heads[^1]) members.Problems.Add(at, item, "ids in ascending order, each once");
            heads.Add(item.ValueKind == JsonValueKind.String && EntryId.TryParse(item.GetString(), out var next) ? next : default);
            if (members.Problems.IsFull) break;
        }

        return heads.ToImmutable();
    }

    private static string ReadKind(CaseMembers members)
    {
        string? kind = members.Id("kind", isRequired: true);
        if (kind is not null && !kind.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-')) members.Problems.Add("/kind", kind, "lower-case letters, digits and hyphens");
        return kind ?? "";
    }

    private static string ReadPayload(CaseMembers members)
    {
        if (members.Find("payload") is not { } value)
        {
            members.Problems.AddMissing("/payload", "an object");
            return "{}";
        }

        if (value.ValueKind == JsonValueKind.Object && PayloadMembers.IsWritable(value)) return CanonicalJson.Of(value);
        members.Problems.AddWrongKind("/payload", value, "an object whose numbers fit a double");
        return "{}";
    }
}
