using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Reads one look of a case file.</summary>
/// <param name="knowledge">The knowledge that its ids are looked up in.</param>
/// <param name="host">The host of the case; null where that was refused, so that no look is refused for it.</param>
/// <param name="problems">Where problems are noted.</param>
internal sealed class LookReader(KnowledgeBase knowledge, string? host, CaseProblems problems)
{
    private const string LeaveOut = "leave it out";

    private static readonly CaseRange ChamberHours = new(0, CaseLimits.ChamberHours, IsFromIncluded: false, What: "a number of hours");

    private static readonly ImmutableArray<string> Known =
        ["character", "state", "states", "values", "of", "from", "how", "surface", "hours", "by", "observer", "at", "note"];

    private readonly string[] characters = [.. knowledge.Characters.Where(character => host is null || character.AppliesTo(host)).Select(character => character.Id)];

    /// <summary>Reads a look.</summary>
    /// <returns>Null where it was refused.</returns>
    public Look? Read(JsonElement item, string at)
    {
        int before = problems.Count;
        if (CaseMembers.Of(item, at, Known, problems) is not { } members) return null;
        var character = members.Word("character", characters, isRequired: true) is { } id ? knowledge.FindCharacter(id) : null;
        var way = ReadWay(members, character);
        string? by = members.Word("by", Vocabulary.Observers.AsSpan());
        string? person = members.Text("observer");
        string? time = ReadTime(members);
        string? note = ReadNote(members);
        if (character is null) return null;

        var seen = new SeenReader(members, character, host).Read();
        var surface = ReadSurface(members, character, way);
        double? hours = ReadHours(members, way is null or Way.MoistChamber || surface == Surface.MoistChamber);
        string? of = ReadOf(members, character, host), from = ReadFrom(members, character);
        if (problems.Count > before || way is null || seen is null) return null;
        return new Look
        {
            Character = character,
            How = way.Value,
            States = seen.States,
            Values = seen.Values,
            IsUnsure = seen.IsUnsure,
            Surface = surface,
            Hours = hours,
            Facet = of ?? from,
            By = by is not null && Vocabulary.TryObserver(by, out var observer) ? observer : Observer.Grower,
            Person = person,
            At = time,
            Note = note,
        };
    }

    /// <summary>The kinds of thing that may have been measured, of those that occur on the host.</summary>
    public static string[] Kinds(Character kinds, string? host) =>
        [.. kinds.States.Where((_, state) => state != kinds.EmptyState && !kinds.Voids[state] && (host is null || kinds.HasState(state, host)))];

    private static Way? ReadWay(CaseMembers members, Character? character)
    {
        string[] accepted = [.. Vocabulary.Ways.Where(word => Vocabulary.TryWay(word, out var way) && character?.Accepts(way) != false)];
        return members.Word("how", accepted, isRequired: true) is { } word && Vocabulary.TryWay(word, out var found) ? found : null;
    }

    /// <summary>A look made in a moist chamber has that surface whether or not it says so.</summary>
    private static Surface? ReadSurface(CaseMembers members, Character character, Way? way)
    {
        if (character.Surfaces.IsEmpty)
        {
            members.RefuseMember("surface", LeaveOut);
            return null;
        }

        string[] accepted = way == Way.MoistChamber ? [Surface.MoistChamber.Word()] : [.. character.Surfaces.Select(surface => surface.Word())];
        if (members.Word("surface", accepted) is { } word && Vocabulary.TrySurface(word, out var found)) return found;
        return way == Way.MoistChamber ? Surface.MoistChamber : Surface.DryDay;
    }

    private static double? ReadHours(CaseMembers members, bool inChamber)
    {
        if (inChamber) return members.Number("hours", ChamberHours);
        members.RefuseMember("hours", LeaveOut, "how or surface moist-chamber");
        return null;
    }

    private static string? ReadOf(CaseMembers members, Character character, string? host)
    {
        if (character is { OfOnly: { } only })
        {
            members.Word("of", [only]);
            return null;
        }

        if (character.OfCharacter is { } kinds) return members.Word("of", Kinds(kinds, host));
        members.RefuseMember("of", LeaveOut);
        return null;
    }

    private static string? ReadFrom(CaseMembers members, Character character)
    {
        if (!character.Facets.IsEmpty) return members.Word("from", character.Facets.AsSpan());
        members.RefuseMember("from", LeaveOut);
        return null;
    }

    private static string? ReadTime(CaseMembers members)
    {
        if (members.Find("at") is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && value.GetString() is { } text && IsoTime.IsDateOrTime(text)) return text;
        members.Problems.Add(members.Below("at"), value, "a date as 2026-07-14", "a date and time as 2026-07-14T09:30Z");
        return null;
    }

    private static string? ReadNote(CaseMembers members)
    {
        if (members.Find("note") is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String) return value.GetString();
        members.Problems.Add(members.Below("note"), value, "text");
        return null;
    }
}
