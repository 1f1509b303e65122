using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>What a look says was seen.</summary>
/// <param name="States">Indices of states, ascending.</param>
/// <param name="Values">Measured values.</param>
/// <param name="IsUnsure">Nothing can be said.</param>
internal sealed record Seen(ImmutableArray<int> States, ImmutableArray<double> Values, bool IsUnsure)
{
    public static Seen Unsure { get; } = new([], [], true);
}

/// <summary>Reads what a look says was seen: exactly one of <c>state</c>, <c>states</c> (where several can be there at once) and <c>values</c> (where it is measured).</summary>
/// <param name="look">The members of the look.</param>
/// <param name="character">What was looked at.</param>
/// <param name="host">The host; null where it is not known, so that no state is refused for it.</param>
internal readonly struct SeenReader(CaseMembers look, Character character, string? host)
{
    /// <summary>The answer that is allowed everywhere, alone, and moves nothing.</summary>
    public const string Unsure = "unsure";

    private const int UnsureState = -1;

    /// <summary>Reads it.</summary>
    /// <returns>Null where it was refused.</returns>
    public Seen? Read()
    {
        if (FindForm() is not { } form) return null;
        var value = look.Find(form)!.Value;
        return form switch
        {
            "values" => ReadValues(value),
            "states" => ReadStates(value),
            _ => Alone(ReadState(value, look.Below(form))),
        };
    }

    private static Seen? Alone(int? state) => state switch
    {
        null => null,
        UnsureState => Seen.Unsure,
        int seen => new Seen([seen], [], false),
    };

    /// <summary>The one member that says what was seen.</summary>
    private string? FindForm()
    {
        string[] forms = character.IsMeasured ? ["values", "state"] : character.IsMany ? ["state", "states"] : ["state"];
        string[] given = look.Present("state", "states", "values");
        if (given is [var form] && forms.Contains(form)) return form;
        if (given.Length == 0) look.Problems.AddMissing(look.Below(forms[0]), Accepted());
        else if (given.Length == 1) look.Problems.Add(look.Below(given[0]), given[0], forms);
        else look.Problems.Add(look.At, string.Join(" and ", given), [.. forms.Select(name => $"{name} alone")]);
        return null;
    }

    /// <summary>What may stand in <c>state</c>, <c>states</c> or <c>values</c>. That a look may be unsure goes without saying, except where nothing else may stand.</summary>
    private string[] Accepted() => character.IsMeasured ? ["numbers over 0", Unsure] : StatesOnHost();

    private string[] StatesOnHost()
    {
        var states = new List<string>(character.States.Length);
        for (int state = 0; state < character.States.Length; state++)
        {
            if (host is null || character.HasState(state, host)) states.Add(character.States[state]);
        }

        return [.. states];
    }

    private int? ReadState(JsonElement value, string at)
    {
        if (value.ValueKind == JsonValueKind.String && value.ValueEquals(Unsure)) return UnsureState;
        return CaseMembers.Word(value, at, character.IsMeasured ? [Unsure] : StatesOnHost(), look.Problems) is { } word ? character.StateIndex(word) : null;
    }

    private Seen? ReadStates(JsonElement list)
    {
        string at = look.Below("states");
        if (!IsFilledArray(list, at, ["an array of one state or more", .. StatesOnHost()])) return null;
        int before = look.Problems.Count, length = list.GetArrayLength(), index = 0;
        var states = new SortedSet<int>();
        foreach (var item in list.EnumerateArray())
        {
            string place = CaseProblems.Below(at, index++);
            if (ReadState(item, place) is not { } state) continue;
            if (length > 1 && (state == UnsureState || state == character.EmptyState)) look.Problems.Add(place, item, $"{item.GetString()} alone", "the others without it");
            else if (!states.Add(state)) look.Problems.Add(place, item, "each state once");
            if (look.Problems.IsFull) return null;
        }

        if (look.Problems.Count > before) return null;
        return states.Contains(UnsureState) ? Seen.Unsure : new Seen([.. states], [], false);
    }

    private Seen? ReadValues(JsonElement list)
    {
        string at = look.Below("values");
        if (!IsFilledArray(list, at, ["an array of one number over 0 or more"])) return null;
        int before = look.Problems.Count, index = 0;
        var values = ImmutableArray.CreateBuilder<double>(list.GetArrayLength());
        foreach (var item in list.EnumerateArray())
        {
            if (CaseRange.Positive.Reads(item) is { } value) values.Add(value);
            else look.Problems.AddWrongKind(CaseProblems.Below(at, index), item, CaseRange.Positive.ToString());
            if (look.Problems.IsFull) return null;
            index++;
        }

        return look.Problems.Count > before ? null : new Seen([], values.MoveToImmutable(), false);
    }

    private bool IsFilledArray(JsonElement list, string at, string[] accepted)
    {
        if (list.ValueKind == JsonValueKind.Array && list.GetArrayLength() > 0) return true;
        look.Problems.AddWrongKind(at, list, accepted);
        return false;
    }
}
