using System.Collections.Immutable;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>The members of one JSON object of a case file, read by name. Whatever will not do is noted and read as null.</summary>
/// <param name="element">The object.</param>
/// <param name="at">Its pointer.</param>
/// <param name="problems">Where problems are noted.</param>
internal readonly struct CaseMembers(JsonElement element, string at, CaseProblems problems)
{
    public string At => at;

    public CaseProblems Problems => problems;

    /// <summary>Takes a value as an object with known members.</summary>
    /// <returns>Null where it is no object.</returns>
    public static CaseMembers? Of(JsonElement value, string at, ImmutableArray<string> known, CaseProblems problems)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            problems.AddWrongKind(at, value, "an object");
            return null;
        }

        foreach (var member in value.EnumerateObject())
        {
            if (!known.Contains(member.Name, StringComparer.Ordinal)) problems.Add(CaseProblems.Below(at, member.Name), member.Name, known.AsSpan());
        }

        return new CaseMembers(value, at, problems);
    }

    public JsonElement? Find(string name) => element.TryGetProperty(name, out var value) ? value : null;

    /// <summary>Those of the names that are there, in the order asked.</summary>
    public string[] Present(params ReadOnlySpan<string> names)
    {
        var present = new List<string>(names.Length);
        foreach (string name in names)
        {
            if (Find(name) is not null) present.Add(name);
        }

        return [.. present];
    }

    public string Below(string name) => CaseProblems.Below(at, name);

    /// <summary>Notes a member that has no place here, if it is there.</summary>
    public void RefuseMember(string name, params ReadOnlySpan<string> accepted)
    {
        if (Find(name) is { } value) problems.Add(Below(name), value, accepted);
    }

    /// <summary>An array.</summary>
    public JsonElement? List(string name, bool isRequired = false)
    {
        if (Find(name) is not { } value)
        {
            if (isRequired) problems.AddMissing(Below(name), "an array");
            return null;
        }

        if (value.ValueKind == JsonValueKind.Array) return value;
        problems.AddWrongKind(Below(name), value, "an array");
        return null;
    }

    /// <summary>Text that is not blank.</summary>
    public string? Text(string name, bool isRequired = false)
    {
        if (Find(name) is not { } value)
        {
            if (isRequired) problems.AddMissing(Below(name), "text that is not blank");
            return null;
        }

        if (value.ValueKind == JsonValueKind.String && value.GetString() is { } text && !string.IsNullOrWhiteSpace(text)) return text;
        problems.AddWrongKind(Below(name), value, "text that is not blank");
        return null;
    }

    /// <summary>One of the words that are accepted there.</summary>
    public string? Word(string name, ReadOnlySpan<string> accepted, bool isRequired = false)
    {
        if (Find(name) is not { } value)
        {
            if (isRequired) problems.AddMissing(Below(name), accepted);
            return null;
        }

        return Word(value, Below(name), accepted, problems);
    }

    /// <inheritdoc cref="Word(string, ReadOnlySpan{string}, bool)"/>
    public static string? Word(JsonElement value, string at, ReadOnlySpan<string> accepted, CaseProblems problems)
    {
        if (value.ValueKind != JsonValueKind.String)
        {
            problems.Add(at, value, accepted);
            return null;
        }

        string word = value.GetString()!;
        foreach (string known in accepted)
        {
            if (known == word) return known;
        }

        problems.Add(at, word, accepted);
        return null;
    }

    /// <summary>A finite number in a range.</summary>
    public double? Number(string name, CaseRange range, bool isRequired = false)
    {
        if (Find(name) is not { } value)
        {
            if (isRequired) problems.AddMissing(Below(name), range.ToString());
            return null;
        }

        if (range.Reads(value) is { } number) return number;
        problems.AddWrongKind(Below(name), value, range.ToString());
        return null;
    }
}
