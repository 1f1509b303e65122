using Abaxial.Knowledge;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>A look that could be made, and what it would be worth.</summary>
internal sealed record NaiveNextLook(string Character, string How, double Worth, Dictionary<string, (double Chance, double LateBlight)> Outcomes);

/// <summary>The worth of every look not yet made, by writing out what each would show under every hypothesis that holds something.</summary>
internal sealed class NaiveNextLooks
{
    private const string Subject = "late-blight";

    private readonly NaiveCase naive;
    private readonly NaiveTables tables;
    private readonly BruteForce model;
    private readonly LossDocument losses;
    private readonly (NaiveHypothesis Hypothesis, double Mass)[] active;
    private readonly HashSet<string> heldBack;
    private readonly string today;
    private readonly string leading;

    public NaiveNextLooks(NaiveCase naive, NaiveTables tables, List<(NaiveHypothesis Hypothesis, double Probability)> posterior, string purpose, bool mayAdvise)
    {
        this.naive = naive;
        this.tables = tables;
        model = new BruteForce(naive, tables);
        losses = tables.Document.Losses[purpose];
        active = NaiveActive.Of(posterior);

        double Without(string id) => posterior.Where(entry => entry.Hypothesis.Holds(id) && !entry.Hypothesis.Holds(Subject)).Sum(entry => entry.Probability);
        double Of(string id) => posterior.Where(entry => entry.Hypothesis.Holds(id)).Sum(entry => entry.Probability);
        leading = tables.Causes.Select(cause => cause.Id).MaxBy(Without)!;
        today = new[] { "act", "send-on", "advise" }.Where(act => act != "advise" || mayAdvise).MinBy(act => Loss(act, 1, Of(Subject), Without(leading)))!;
        bool isHeld = tables.Causes.Any(cause => cause.Regulated && Of(cause.Id) >= tables.Document.Regulated.Chance);
        heldBack = isHeld ? [.. tables.Document.Regulated.HeldBack] : [];
    }

    public List<NaiveNextLook> All() =>
        [.. tables.Document.Characters.Where(CanBeMade).SelectMany(character => character.How.Where(how => !IsMade(character, how)).Select(how => Weigh(character, how))).OrderByDescending(look => look.Worth)];

    private double Loss(string act, double all, double subject, double right) => act switch
    {
        "act" => (subject * losses.Act.LateBlight) + ((all - subject) * losses.Act.Other),
        "send-on" => (subject * losses.SendOn.LateBlight) + ((all - subject) * losses.SendOn.Other),
        _ => (subject * losses.Advise.LateBlight) + (right * losses.Advise.Right) + ((all - subject - right) * losses.Advise.Other),
    };

    private bool CanBeMade(CharacterDocument character)
    {
        if (character.Measure is not null || heldBack.Contains(character.Id) || (character.Hosts.Length > 0 && !character.Hosts.Contains(tables.Host))) return false;
        if (character.Id == "organs-affected" && model.OnlyOrgan is not null) return false;
        if (character.When.Any(need => !naive.Counted.Any(look => look.Character.Id == need.Key && look.States.Intersect(need.Value).Any()))) return false;
        if (character.Organ is not { } organ) return true;
        if (!tables.States(tables.Characters["organs-affected"]).Contains(organ)) return false;
        if (model.IsAffected(organ)) return true;
        bool isNotYet = tables.Document.NotYet.Any(stage => stage.Key == naive.Weighed.Stage && stage.Value.Contains(organ));
        return character.Empty is not null && !isNotYet && (model.OnlyOrgan is null || model.OnlyOrgan == organ);
    }

    private bool IsMade(CharacterDocument character, string how) =>
        naive.Counted.Any(look => look.Character.Id == character.Id && look.How == how && (how == "asked" || look.By is "diagnostician" or "specialist"));

    private NaiveNextLook Weigh(CharacterDocument character, string how)
    {
        string? facet = null;
        if (character.From.Length > 0) facet = model.IsAffected("stem") ? "stem-vascular" : model.IsAffected("leaf") ? "leaf-spot" : tables.Host == "potato" && model.IsAffected("tuber") ? "tuber-ring" : null;
        string? surface = character.Surface.Length == 0 ? null : how == "moist-chamber" ? how : "dry-day";
        var look = new NaiveLook(-1, character, facet, how, how == "asked" ? "grower" : "diagnostician", null, [], [], surface, null);
        var outcomes = new NaiveOutcomes(look, naive, tables, model);
        var told = active.Select(entry => (entry.Hypothesis, entry.Mass, Chances: outcomes.Of(entry.Hypothesis))).ToArray();

        double worth = 0;
        var list = new Dictionary<string, (double Chance, double LateBlight)>();
        foreach (string state in outcomes.States)
        {
            double Sum(Func<NaiveHypothesis, bool> which) => told.Where(entry => which(entry.Hypothesis)).Sum(entry => entry.Mass * entry.Chances[state]);
            double all = Sum(_ => true), subject = Sum(hypothesis => hypothesis.Holds(Subject));
            if (all <= 0) continue;
            double Right(string id) => Sum(hypothesis => hypothesis.Holds(id) && !hypothesis.Holds(Subject));
            double least = new[] { Loss("act", all, subject, 0), Loss("send-on", all, subject, 0), Loss("advise", all, subject, tables.Causes.Max(cause => Right(cause.Id))) }.Min();
            worth += Math.Max(0, Loss(today, all, subject, Right(leading)) - least);
            list.Add(state, (all, subject / all));
        }

        return new NaiveNextLook(character.Id, how, worth - Cost(character, how), list);
    }

    private double Cost(CharacterDocument character, string how)
    {
        var costs = tables.Document.Costs;
        double wait = how == "moist-chamber" ? Math.Max(24, character.WaitHours) : character.WaitHours;
        return (character.Minutes * costs.Minute) + (wait * costs.WaitHour) + costs.Ways.GetValueOrDefault(how, 0) + costs.Characters.GetValueOrDefault(character.Id, 0);
    }
}
