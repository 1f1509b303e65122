using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>The problems of one case in the order in which they were found, as many as a refusal names.</summary>
internal sealed class CaseProblems
{
    private const int LongestFound = 100;
    private const int LongestPointer = 1_000;

    private readonly List<CaseProblem> problems = [];

    public int Count => problems.Count;

    public bool IsFull => problems.Count >= CaseLimits.Problems;

    public ImmutableArray<CaseProblem> ToImmutable() => [.. problems];

    /// <summary>Notes a problem, unless there are enough.</summary>
    public void Add(string at, string found, params ReadOnlySpan<string> accepted)
    {
        if (!IsFull) problems.Add(new CaseProblem(at, Show(found), [.. accepted]));
    }

    /// <summary>Notes a value that will not do: a text as it reads, anything else as it is written.</summary>
    public void Add(string at, JsonElement found, params ReadOnlySpan<string> accepted) => Add(at, found.ValueKind == JsonValueKind.String ? found.GetString()! : Written(found), accepted);

    /// <summary>Notes a value of the wrong kind, as it is written, so that "12" and 12 can be told apart.</summary>
    public void AddWrongKind(string at, JsonElement found, params ReadOnlySpan<string> accepted) => Add(at, Written(found), accepted);

    /// <summary>Notes a member that is not there.</summary>
    public void AddMissing(string at, params ReadOnlySpan<string> accepted) => Add(at, "(missing)", accepted);

    /// <summary>The pointer of a member or entry; of the parent where it would be too long.</summary>
    public static string Below(string at, string name)
    {
        if (at.Length + name.Length >= LongestPointer) return at;
        string below = $"{at}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
        return below.Length <= LongestPointer ? below : at;
    }

    /// <inheritdoc cref="Below(string, string)"/>
    public static string Below(string at, int index) => Below(at, index.ToString(CultureInfo.InvariantCulture));

    /// <summary>Text that can be shown and printed anywhere: one line, nothing invisible, at most 100 characters and at least one.</summary>
    private static string Show(string text)
    {
        if (text.Length == 0) return "\"\"";
        var shown = new StringBuilder(Math.Min(text.Length, LongestFound));
        foreach (var rune in text.EnumerateRunes())
        {
            string next = Show(rune);
            if (shown.Length + next.Length > LongestFound)
            {
                while (shown.Length >= LongestFound) shown.Length -= char.IsLowSurrogate(shown[^1]) ? 2 : 1;
                return shown.Append('…').ToString();
            }

            shown.Append(next);
        }

        return shown.ToString();
    }

    private static string Show(Rune rune)
    {
        if (rune.Value is '\t' or '\n' or '\r') return " ";
        return Rune.GetUnicodeCategory(rune) switch
        {
            UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse
                or UnicodeCategory.OtherNotAssigned => $"\\u{rune.Value:x4}",
            _ => rune.ToString(),
        };
    }

    private static string Written(JsonElement element)
    {
        var bytes = JsonMarshal.GetRawUtf8Value(element);
        return Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, (LongestFound + 1) * 4)]);
    }
}
