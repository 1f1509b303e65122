using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>The stated rules of standing, advice and form, held against an answer from outside: nothing here asks the engine why.</summary>
internal sealed class ContractRules(Weigher weigher)
{
    private static readonly Dictionary<string, string> GrowthOf = new()
    {
        ["leaf"] = "leaf-underside-growth",
        ["petiole"] = "stem-growth",
        ["stem"] = "stem-growth",
        ["fruit"] = "fruit-growth",
        ["calyx"] = "fruit-growth",
        ["tuber"] = "tuber-growth",
    };

    private static readonly Dictionary<string, string[]> ProvenOtherwise = new()
    {
        ["leaf"] = ["spotted-wilt-strip", "clavibacter-strip", "tobamovirus-strip", "potato-virus-y-strip"],
        ["stem"] = ["spotted-wilt-strip", "clavibacter-strip", "ralstonia-strip"],
        ["fruit"] = ["spotted-wilt-strip", "clavibacter-strip", "tobamovirus-strip"],
        ["tuber"] = ["ring-rot-test", "ralstonia-strip", "potato-virus-y-strip"],
    };

    /// <summary>Every rule that the answer breaks.</summary>
    public IEnumerable<string> Broken(Case weighed, Answer answer)
    {
        var naive = new NaiveCase(weighed, BruteForceTests.TablesOf(weighed));
        return OfStanding(naive, answer).Concat(OfAdvice(weighed, answer)).Concat(OfForm(naive, answer));
    }

    private IEnumerable<string> OfStanding(NaiveCase naive, Answer answer)
    {
        var (p, standing, because) = (answer.LateBlight, answer.Standing, answer.StandingBecause);
        bool isOut = IsOut(p) && WouldHaveShown(naive) && IsOut(WithoutContext(naive.Weighed).LateBlight);
        var expected = IsProven(naive) ? IsContradicted(naive) ? (Standing.Likely, StandingReason.BenchContradiction) : (Standing.Confirmed, StandingReason.BenchProof)
            : isOut ? (Standing.RuledOut, StandingReason.ShowingLook)
            : p.Probability <= 0.05 ? (Standing.Unlikely, StandingReason.Probability)
            : p is { Probability: >= 0.8, Low: >= 0.5 } ? (Standing.Likely, StandingReason.Probability)
            : (Standing.Open, StandingReason.Probability);
        if ((standing, because) != expected) yield return $"{standing} because {because}, where the rules give {expected}";
    }

    private static bool IsOut(CauseChance p) => p is { Probability: <= 0.01, High: <= 0.03 };

    private Answer WithoutContext(Case weighed) => weigher.Weigh(
        weighed with { PriorFactors = [], Looks = [.. weighed.Looks.Where(look => look.Character.Id is not ("recent-weather" or "late-blight-nearby"))] },
        new WeighOptions { NextLooks = false });

    /// <summary>Bench proof, read by a diagnostician or specialist.</summary>
    public static bool IsProven(NaiveCase naive)
    {
        var bench = naive.Read.Where(IsExpert).ToArray();
        if (bench.Any(look => Says(look, "pcr-p-infestans", "positive") || Says(look, "culture", "p-infestans"))) return true;
        double[] lengths = [.. bench.Where(look => look is { Character.Id: "spore-length", Facet: "lemon-shaped-sporangia" }).SelectMany(look => look.Values)];
        return Affected(naive).Contains("leaf") && lengths.Length >= 5 && lengths.Average() is >= 20 and <= 40 && bench.Any(look => Says(look, "sporangiophore", "branched-with-swollen-nodes"));
    }

    public static bool IsContradicted(NaiveCase naive)
    {
        double[] stalks = [.. naive.At("sporangium-stalk-length").SelectMany(look => look.Values)];
        return (stalks.Length > 0 && stalks.Average() > 20)
            || naive.Read.Any(look => Says(look, "pcr-p-infestans", "negative") || Says(look, "culture", "other-phytophthora") || Says(look, "culture", "pythium") || Says(look, "sporangium-papilla", "strong"));
    }

    /// <summary>Whether on every affected organ that late blight attacks a look would have shown it and did not.</summary>
    public static bool WouldHaveShown(NaiveCase naive)
    {
        if (naive.At("sample-condition").Any(look => look.States.Intersect(["rotted", "heated-or-frozen"]).Any())) return false;
        bool isSeen = naive.Read.Any(look => look.By != "grower" && look.How is not ("photo" or "asked")
            && ((look.Character.Sign && look.States.Contains("white-down")) || Says(look, "spores-seen", "lemon-shaped-sporangia")));
        var organs = Affected(naive).Where(GrowthOf.ContainsKey).ToArray();
        return !isSeen && organs.Length > 0 && organs.All(organ => IsShown(naive, organ));
    }

    private static bool IsShown(NaiveCase naive, string organ)
    {
        if (naive.Read.Any(look => IsExpert(look) && Says(look, "pcr-p-infestans", "negative"))) return true;
        if (ProvenOtherwise.TryGetValue(organ, out string[]? tests) && naive.Read.Any(look => IsExpert(look) && tests.Contains(look.Character.Id) && look.States.Contains("positive"))) return true;
        bool isStale = naive.At("sample-condition").Any(look => look.States.Intersect(["dried", "sprayed", "wilted"]).Any()) || naive.At("fungicide-since").Any(look => look.States.Contains("oomycete-material-under-7-days"));
        double hours = organ switch { "leaf" => isStale ? 48 : 24, "petiole" or "stem" => 48, _ => 72 };
        return naive.At(GrowthOf[organ]).Where(look => !look.States.Contains("white-down") && look.How is not ("photo" or "asked")).Any(look =>
            (organ == "leaf" && look is { How: "hand-lens", Surface: "wet-morning" } && look.By != "grower")
            || (look.Surface == "moist-chamber" && look.Hours >= hours && IsExpert(look) && !IsOvergrown(look)));
    }

    private static bool IsOvergrown(NaiveLook look) => look.States.Intersect(["gray-brown-fuzz", "dark-velvet", "white-cotton", "pink-or-white-tufts", "pink-orange-slime"]).Any();

    private static IEnumerable<string> Affected(NaiveCase naive) => naive.At("organs-affected").SelectMany(look => look.States)
        .Concat(naive.Read.Where(look => look.Character.Organ is not null && !look.SaysNothingThere).Select(look => look.Character.Organ!)).Distinct();

    private static bool IsExpert(NaiveLook look) => look.By is "diagnostician" or "specialist";

    private static bool Says(NaiveLook look, string character, string state) => look.Character.Id == character && look.States.Contains(state);

    private IEnumerable<string> OfAdvice(Case weighed, Answer answer)
    {
        bool isWorthIt = !answer.NextLooks.IsEmpty && answer.NextLooks[0].Worth > 0;
        if (isWorthIt != (answer.Advice == Advice.Hold)) yield return $"{answer.Advice} where the best look is worth {(answer.NextLooks.IsEmpty ? "nothing" : answer.NextLooks[0].Worth)}";
        if (answer.Advice == Advice.Advise && answer.Standing >= Standing.Open) yield return $"Advise while {answer.Standing}";
        var losses = weighed.Knowledge.Document.Losses[weigher.PurposeOf(weighed)];
        double p = answer.LateBlight.Probability;
        double act = (p * losses.Act.LateBlight) + ((1 - p) * losses.Act.Other), sendOn = (p * losses.SendOn.LateBlight) + ((1 - p) * losses.SendOn.Other);
        if (answer.Advice == Advice.Act && act > sendOn + 1e-12) yield return "Act where sending on loses less";
        if (answer.Advice == Advice.SendOn && sendOn > act + 1e-12) yield return "SendOn where acting loses less";
    }

    private static IEnumerable<string> OfForm(NaiveCase naive, Answer answer)
    {
        if (answer.Causes.Any(cause => !(cause.Low >= 0 && cause.Low <= cause.Probability && cause.Probability <= cause.High && cause.High <= 1))) yield return "a probability outside its band, or a band outside 0 to 1";
        if (answer.NotListed is not (>= 0 and <= 1)) yield return "not listed outside 0 to 1";
        if (answer.Causes.Sum(cause => cause.Probability) + answer.NotListed < 1 - 1e-9) yield return "less than one in all";
        if (answer.Causes.Length != BruteForceTests.TablesOf(naive.Weighed).Causes.Length) yield return "causes missing";
        if (!answer.Causes.SequenceEqual(answer.Causes.OrderByDescending(cause => cause.Probability).ThenBy(cause => cause.Cause.Id, StringComparer.Ordinal))) yield return "causes out of order";
        if (answer.Causes.Single(cause => cause.Cause.Id == "late-blight") != answer.LateBlight) yield return "late blight is not its own entry";
        if (!answer.Evidence.Select(one => one.Character.Id).Order().SequenceEqual(naive.Read.Select(look => look.Character.Id).Distinct().Order())) yield return "evidence is not one entry a character that was looked at";
        if (answer.Evidence.Any(one => one.Looks.Any(place => naive.Weighed.Looks[place].Character != one.Character) || !double.IsFinite(one.Decibans))) yield return "evidence of another character, or without end";
        if (answer.NextLooks.Length > 10 || !answer.NextLooks.SequenceEqual(answer.NextLooks.OrderByDescending(look => look.Worth))) yield return "next looks out of order";
        if (answer.NextLooks.Any(look => Math.Abs(look.Outcomes.Sum(outcome => outcome.Chance) - 1) > 1e-9)) yield return "outcomes that do not sum to one";
        if (answer.NextLooks.Any(look => look.Character.WhenParent is { } parent && !naive.At(parent.Id).Any(answered => answered.States.Any(state => look.Character.WhenStates.Contains(parent.StateIndex(state)))))) yield return "a child offered without its parent";
        if (answer.Conflicts.Any(conflict => conflict.Looks.IsEmpty || (conflict.Why == ConflictReason.Unexpected) != (conflict.Chance is not null))) yield return "a conflict without looks or chance";
    }
}
