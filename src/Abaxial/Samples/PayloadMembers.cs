using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>What the members of entries and payloads are read as, beside what those of case files are.</summary>
internal static class PayloadMembers
{
    private const int LongestId = 64;
    public const string IdForm = "1 to 64 letters, digits and . _ : -";

    private static readonly ImmutableArray<string> InSeal = ["person", "sha256"];

    /// <summary>Every number fits a double, so that the canonical form says what was said.</summary>
    public static bool IsWritable(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => value.EnumerateObject().All(member => IsWritable(member.Value)),
        JsonValueKind.Array => value.EnumerateArray().All(IsWritable),
        JsonValueKind.Number => value.TryGetDouble(out double number) && double.IsFinite(number),
        _ => true,
    };

    /// <summary>The id of a person, device, cause or kind.</summary>
    public static string? Id(this CaseMembers members, string name, bool isRequired = false)
    {
        if (members.Find(name, isRequired, IdForm) is not { } value) return null;
        if (IsId(value)) return value.GetString();
        members.Problems.AddWrongKind(members.Below(name), value, IdForm);
        return null;
    }

    /// <summary>A list of such ids, each once; empty where it is left out.</summary>
    public static ImmutableArray<string> Ids(this CaseMembers members, string name)
    {
        if (members.List(name) is not { } list) return [];
        var ids = ImmutableArray.CreateBuilder<string>();
        foreach (var item in list.EnumerateArray())
        {
            if (IsId(item) && !ids.Contains(item.GetString()!)) ids.Add(item.GetString()!);
            else members.Problems.AddWrongKind(CaseProblems.Below(members.Below(name), ids.Count), item, IdForm, "each id once");
            if (members.Problems.IsFull) break;
        }

        return ids.ToImmutable();
    }

    public static EntryId? EntryId(this CaseMembers members, string name, bool isRequired = false)
    {
        const string form = "the id of an entry: 26 digits of Crockford's base 32";
        if (members.Find(name, isRequired, form) is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && Samples.EntryId.TryParse(value.GetString(), out var id)) return id;
        members.Problems.AddWrongKind(members.Below(name), value, form);
        return null;
    }

    public static DateTimeOffset? Moment(this CaseMembers members, string name, bool isRequired = false)
    {
        const string form = "a moment as 2026-07-14T09:30:00.0000000Z";
        if (members.Find(name, isRequired, form) is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && Entry.TryMoment(value.GetString()!, out var moment)) return moment;
        members.Problems.AddWrongKind(members.Below(name), value, form);
        return null;
    }

    public static string? Sha256(this CaseMembers members, string name, bool isRequired = false)
    {
        const string form = "64 lower-case hexadecimal digits";
        if (members.Find(name, isRequired, form) is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { Length: 64 } text && text.All(char.IsAsciiHexDigitLower)) return text;
        members.Problems.AddWrongKind(members.Below(name), value, form);
        return null;
    }

    /// <summary>A whole number in a range.</summary>
    public static long? Whole(this CaseMembers members, string name, long from, long to, bool isRequired = false)
    {
        string form = $"a whole number from {from} to {to}";
        if (members.Find(name, isRequired, form) is not { } value) return null;
        if (value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out long number) && number >= from && number <= to) return number;
        members.Problems.AddWrongKind(members.Below(name), value, form);
        return null;
    }

    public static Seal? Seal(this CaseMembers members, string name, bool isRequired = false)
    {
        if (members.Find(name, isRequired, "a seal: person and sha256") is not { } value) return null;
        if (CaseMembers.Of(value, members.Below(name), InSeal, members.Problems) is not { } seal) return null;
        return seal.Id("person", isRequired: true) is { } person && seal.Sha256("sha256", isRequired: true) is { } sha256 ? new Seal(person, sha256) : null;
    }

    /// <summary>An object that is kept as it is, as canonical JSON.</summary>
    public static string? Raw(this CaseMembers members, string name, bool isRequired = false)
    {
        if (members.Find(name, isRequired, "an object") is not { } value) return null;
        if (value.ValueKind == JsonValueKind.Object) return CanonicalJson.Of(value);
        members.Problems.AddWrongKind(members.Below(name), value, "an object");
        return null;
    }

    /// <summary>Whether a value is an id: nothing in it could be taken for something else in a message, a file name or a seal.</summary>
    public static bool IsId(string text) => text.Length is > 0 and <= LongestId && text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '_' or ':' or '-');

    private static bool IsId(JsonElement value) => value.ValueKind == JsonValueKind.String && IsId(value.GetString()!);

    private static JsonElement? Find(this CaseMembers members, string name, bool isRequired, string form)
    {
        var found = members.Find(name);
        if (found is null && isRequired) members.Problems.AddMissing(members.Below(name), form);
        return found;
    }
}
