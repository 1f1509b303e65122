using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>
/// The bands worked out draw by draw: in each, every cell that the case used (and the chance of attacking the organs that are affected) takes its drawn value, every cause
/// is as much more or less common as drawn, every hypothesis that holds something is weighed anew, and the 10th and 90th of the draws bound the probability.
/// </summary>
internal sealed class NaiveBands(NaiveCase naive, NaiveTables tables, KnowledgeBase knowledge)
{
    private readonly HostTable table = new(knowledge, tables.Host);
    private readonly RowDraws draws = new();

    public Dictionary<string, (double Low, double High)> Of(List<(NaiveHypothesis Hypothesis, double Probability)> posterior)
    {
        var active = NaiveActive.Of(posterior);
        var asWritten = new BruteForce(naive, tables);
        double[] written = [.. active.Select(entry => asWritten.LogLikelihood(entry.Hypothesis.Causes))];
        var shares = tables.Causes.ToDictionary(cause => cause.Id, _ => new List<double>());
        for (int draw = 0; draw < RowDraws.Count; draw++)
        {
            int now = draw;
            var drawn = new BruteForce(naive, tables, (cause, character, facet, state) => Chance(now, asWritten, cause, character, facet, state));
            double[] weights = [.. active.Select((entry, h) => entry.Mass * entry.Hypothesis.Causes.Aggregate(1.0, (product, cause) => product * Weight(cause, now)) * Math.Exp(drawn.LogLikelihood(entry.Hypothesis.Causes) - written[h]))];
            foreach (var (id, list) in shares) list.Add(active.Select((entry, h) => entry.Hypothesis.Holds(id) ? weights[h] : 0).Sum() / weights.Sum());
        }

        return shares.ToDictionary(pair => pair.Key, pair => Around(posterior.Where(entry => entry.Hypothesis.Holds(pair.Key)).Sum(entry => entry.Probability), [.. pair.Value.Order()], active.Any(entry => entry.Hypothesis.Holds(pair.Key))));
    }

    private double Weight(CauseDocument? cause, int draw) => cause is null ? 1 : draws.OfWeight(knowledge.FindCause(cause.Id)!, knowledge.Document.WeightSpread)[draw];

    private static (double Low, double High) Around(double middle, double[] sorted, bool isActive)
    {
        if (!isActive) return (middle, middle);
        return (Math.Min(middle, Quantile(sorted, 0.1)), Math.Max(middle, Quantile(sorted, 0.9)));
    }

    private static double Quantile(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1), part = place - Math.Floor(place);
        return ((1 - part) * sorted[(int)Math.Floor(place)]) + (part * sorted[(int)Math.Ceiling(place)]);
    }

    private double Chance(int draw, BruteForce asWritten, CauseDocument? cause, CharacterDocument character, string? facet, string state)
    {
        bool isUsed = character.Id == "organs-affected"
            ? asWritten.IsAffected(state)
            : naive.At(character.Id).Where(look => look.Facet == facet).Any(look => !NaiveTables.IsStateWise(character) || look.SaysNothingThere || look.States.Contains(state));
        if (!isUsed) return tables.Chance(cause, character, facet, state);

        var question = table.Find(knowledge.FindCharacter(character.Id)!, facet);
        int row = cause is null ? table.NotListed : table.IndexOf(knowledge.FindCause(cause.Id)!);
        double value = draws.Of(question, row)[(Array.IndexOf(character.States, state) * RowDraws.Count) + draw];
        return question.IsStateWise ? 1 - value : value;
    }
}
