using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>A hypothesis: one cause, two, or one that is not listed (a single null).</summary>
internal sealed record NaiveHypothesis(CauseDocument?[] Causes)
{
    public bool Holds(string id) => Causes.Any(cause => cause?.Id == id);

    public bool IsListed => Causes[0] is not null;
}

/// <summary>The hypotheses of a case and their weights before any look.</summary>
internal static class NaivePriors
{
    public static List<(NaiveHypothesis Hypothesis, double Prior)> Of(Case weighed, NaiveTables tables, bool withFactors = true, bool flat = false)
    {
        var document = tables.Document;
        double all = tables.Causes.Sum(cause => flat ? 1 : Seen(cause, weighed, document));
        var alone = tables.Causes.ToDictionary(cause => cause, cause => (flat ? 1 : Seen(cause, weighed, document)) / all * (withFactors ? Factor(cause, weighed, document) : 1));
        var list = new List<(NaiveHypothesis Hypothesis, double Prior)> { (new([null]), document.NotListed) };
        foreach (var cause in tables.Causes) list.Add((new([cause]), alone[cause]));
        foreach (var one in tables.Causes)
        {
            foreach (var other in tables.Causes.Where(other => string.CompareOrdinal(one.Id, other.Id) < 0))
            {
                list.Add((new([one, other]), PairFactor(one, other, document.Pairs) * alone[one] * alone[other]));
            }
        }

        double sum = list.Sum(entry => entry.Prior);
        return [.. list.Select(entry => (entry.Hypothesis, entry.Prior / sum))];
    }

    private static double Seen(CauseDocument cause, Case weighed, KnowledgeDocument document)
    {
        var seen = cause.Seen;
        double weight = seen.Weight[weighed.Host];
        if (weighed.System is { } system && seen.Systems.TryGetValue(system, out double there)) weight *= there;
        bool saysTheSame = weighed is { System: not null, Stage: not null } && document.OnlyOrgan.Systems.ContainsKey(weighed.System) && document.OnlyOrgan.Stages.ContainsKey(weighed.Stage);
        if (weighed.Stage is { } stage && !saysTheSame && seen.Stages.TryGetValue(stage, out double then)) weight *= then;
        if (weighed is { Noticed: { } noticed, Place: { } place } && seen.Months.Length > 0)
        {
            int month = noticed.Month;
            if (place.Latitude < 0) month = month > 6 ? month - 6 : month + 6;
            weight *= seen.Months[month - 1];
        }

        return weight;
    }

    private static double Factor(CauseDocument cause, Case weighed, KnowledgeDocument document)
    {
        var rule = document.PriorFactors.NeverUnderOne;
        bool isWateredFromAbove = weighed.Looks.Any(look => look.Character.Id == "watering" && look.States.Any(state => rule.Watering.Contains(look.Character.States[state])));
        bool isHeld = isWateredFromAbove || (weighed.System is { } system && rule.Systems.Contains(system)) || (weighed.Stage is { } stage && rule.Stages.Contains(stage));
        return weighed.PriorFactors.Where(factor => factor.Cause.Id == cause.Id).Aggregate(1.0, (product, factor) => product * (isHeld && factor.Factor < 1 ? 1 : factor.Factor));
    }

    private static double PairFactor(CauseDocument one, CauseDocument other, PairsDocument pairs)
    {
        var named = pairs.ByCause.FirstOrDefault(pair => pair.Causes.Order().SequenceEqual(new[] { one.Id, other.Id }.Order()));
        if (named is not null) return named.Factor;
        var ofKind = pairs.ByKind.FirstOrDefault(pair => pair.Kinds.Order().SequenceEqual(new[] { one.Kind, other.Kind }.Order()));
        return ofKind?.Factor ?? pairs.Otherwise;
    }
}
