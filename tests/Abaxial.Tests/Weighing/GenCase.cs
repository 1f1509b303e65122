using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>Generates cases that a reader accepts: any host, any looks that can be made there, contradicting each other or not.</summary>
internal static class GenCase
{
    private static readonly KnowledgeDocument Rules = CaseText.Knowledge.Document;

    private static readonly Gen<string> Text = Gen.OneOf(
        Gen.OneOf("s-07", "Ł. Żuk", "🍅 row 3", "a\"b\\c/d~e", "tab\there", "<&>'+", "line\nbreak", "\u0007\u200e"),
        Gen.String[Gen.Char.AlphaNumeric, 1, 12]);

    private static readonly Gen<string> Time = Gen.OneOf("2026-07-14", "2026-07-14T09:30Z", "2026-07-14T09:30:15.5+02:00");

    private static readonly Gen<double> Measure = Gen.OneOf(Gen.Double[0.1, 200], Gen.OneOf(28.1, 31, 1e-300, double.Epsilon, double.MaxValue));

    public static Gen<Case> Any { get; } = Of(12);

    /// <summary>Cases with at most so many looks.</summary>
    public static Gen<Case> Of(int mostLooks) => Gen.OneOf(Rules.Hosts).SelectMany(host => Gen.Select(
        Frame(host),
        Factors(host),
        Looks(host).Array[0, mostLooks],
        (frame, factors, looks) => frame with { PriorFactors = factors, Looks = [.. looks] }));

    private static Gen<Case> Frame(string host) => Gen.Select(
        Perhaps(Gen.OneOf(Rules.Systems)),
        Perhaps(Gen.OneOf(Rules.Stages)),
        Perhaps(Gen.OneOf(Rules.Purposes)),
        Gen.Date,
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[0, 1e6]),
        Gen.Int[0, 7],
        (system, stage, purpose, noticed, place, known) => new Case
        {
            Knowledge = CaseText.Knowledge,
            Host = host,
            System = system,
            Stage = stage,
            Purpose = purpose,
            Noticed = (known & 1) != 0 ? DateOnly.FromDateTime(noticed) : null,
            Place = (known & 2) != 0 ? new Place(place.Item1, place.Item2, (known & 4) != 0 ? place.Item3 : null) : null,
        });

    private static Gen<ImmutableArray<PriorFactor>> Factors(string host)
    {
        var causes = CaseText.Knowledge.Causes.Where(cause => cause.Hosts.Contains(host)).ToArray();
        return Gen.Select(Gen.OneOf(causes), Gen.Double[0.2, 10], Text).Array[0, 3]
            .Select(factors => factors.DistinctBy(factor => factor.Item1).Select(factor => new PriorFactor(factor.Item1, factor.Item2, factor.Item3)).ToImmutableArray());
    }

    private static Gen<Look> Looks(string host) =>
        Gen.OneOf(CaseText.Knowledge.Characters.Where(character => character.AppliesTo(host)).ToArray()).SelectMany(character => Gen.Select(
            Gen.OneOf(Enum.GetValues<Way>().Where(character.Accepts).ToArray()),
            Seen(character, host),
            Facet(character, host),
            character.Surfaces.IsEmpty ? Gen.Const(() => (Surface?)null) : Gen.OneOf(character.Surfaces.ToArray()).Select(surface => (Surface?)surface),
            Gen.Double[0.1, 1000],
            Gen.Select(Gen.OneOf(Enum.GetValues<Observer>()), Perhaps(Text), Perhaps(Time), Perhaps(Text), Gen.Bool),
            (way, seen, facet, surface, hours, who) => Fit(seen with { How = way, Facet = facet, Surface = surface, By = who.Item1, Person = who.Item2, At = who.Item3, Note = who.Item4 }, who.Item5 ? hours : null)));

    private static Look Fit(Look look, double? hours)
    {
        if (look.How == Way.MoistChamber && look.Surface is not null) look = look with { Surface = Surface.MoistChamber };
        return look.How == Way.MoistChamber || look.Surface == Surface.MoistChamber ? look with { Hours = hours } : look;
    }

    private static Gen<Look> Seen(Character character, string host)
    {
        var unsure = Gen.Const(new Look { Character = character, How = default, IsUnsure = true });
        if (character.IsMeasured) return Gen.Frequency((9, Measure.Array[1, 8].Select(values => new Look { Character = character, How = default, Values = [.. values] })), (1, unsure));

        int[] states = [.. Enumerable.Range(0, character.States.Length).Where(state => character.HasState(state, host))];
        var one = Gen.OneOf(states).Select(state => new Look { Character = character, How = default, States = [state] });
        int[] together = [.. states.Where(state => state != character.EmptyState)];
        var several = Gen.OneOf(together).Array[1, 4].Select(seen => new Look { Character = character, How = default, States = [.. seen.Distinct().Order()] });
        return Gen.Frequency((6, one), (character.IsMany ? 6 : 0, several), (1, unsure));
    }

    private static Gen<string?> Facet(Character character, string host)
    {
        if (character is { OfOnly: null, OfCharacter: { } kinds }) return Gen.OneOf(LookReader.Kinds(kinds, host)).Select(kind => (string?)kind);
        return character.Facets.IsEmpty ? Gen.Const(() => (string?)null) : Perhaps(Gen.OneOf(character.Facets.ToArray()));
    }

    private static Gen<string?> Perhaps(Gen<string> gen) => Gen.Select(Gen.Bool, gen, (known, value) => known ? value : null);
}
