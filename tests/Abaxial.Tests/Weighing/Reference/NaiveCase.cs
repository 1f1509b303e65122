using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>A look in words, with its place in the case.</summary>
internal sealed record NaiveLook(int Place, CharacterDocument Character, string? Facet, string How, string By, string? Person, string[] States, double[] Values, string? Surface, double? Hours)
{
    public bool SaysNothingThere => Character.Empty is not null && States.Contains(Character.Empty);

    /// <summary>What makes two looks the same look.</summary>
    public string Key => string.Join('|', Character.Id, Facet, How, Surface, Person is null ? $"by {By}" : $"person {Person}", string.Join(',', States), string.Join(',', Values.Select(value => value.ToString("R", null))));

    public static NaiveLook Of(Look look, int place, NaiveTables tables) => new(
        place,
        tables.Characters[look.Character.Id],
        look.Facet,
        look.How.Word(),
        look.By.Word(),
        look.Person,
        [.. look.States.Select(state => look.Character.States[state])],
        [.. look.Values],
        look.Surface?.Word(),
        look.Hours);
}

/// <summary>The looks of a case that count, and those that are set aside because their parent was answered otherwise.</summary>
internal sealed class NaiveCase
{
    private static readonly string[] Observers = ["grower", "scout", "diagnostician", "specialist"];

    public NaiveCase(Case weighed, NaiveTables tables, Func<NaiveLook, bool>? without = null)
    {
        Weighed = weighed;
        var carrying = weighed.Looks.Select((look, place) => (look, place)).Where(entry => !entry.look.IsUnsure)
            .Select(entry => NaiveLook.Of(entry.look, entry.place, tables)).Where(look => !look.States.Any(look.Character.Voids.Contains));
        Counted = [.. carrying
            .Where(look => without is null || !without(look))
            .GroupBy(look => look.Key)
            .Select(same => same.OrderByDescending(look => Array.IndexOf(Observers, look.By)).ThenByDescending(look => look.Hours ?? -1).First())];
        Read = [.. Counted.Where(look => !IsSetAside(look))];
    }

    public Case Weighed { get; }

    /// <summary>Everything that carries evidence or would.</summary>
    public NaiveLook[] Counted { get; }

    /// <summary>Without those set aside.</summary>
    public NaiveLook[] Read { get; }

    public IEnumerable<NaiveLook> At(string character) => Read.Where(look => look.Character.Id == character);

    /// <summary>The parent of a look and the states of it under which the look means something.</summary>
    public static (string Parent, string[] States)? Needs(NaiveLook look)
    {
        foreach (var (parent, states) in look.Character.When) return (parent, states);
        return look.Character is { Measure: not null, OfCharacter: { } kinds } ? (kinds, [look.Facet ?? look.Character.OfOnly!]) : null;
    }

    private bool IsSetAside(NaiveLook look)
    {
        if (Needs(look) is not { } need) return false;
        var answers = Counted.Where(other => other.Character.Id == need.Parent).ToArray();
        return answers.Length > 0 && !answers.Any(answer => answer.States.Intersect(need.States).Any());
    }
}
