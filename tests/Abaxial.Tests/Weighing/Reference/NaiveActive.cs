using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>The hypotheses that bands and next looks are worked out over, by the rule of <see cref="ActiveHypotheses"/>, written out.</summary>
internal static class NaiveActive
{
    private const string Subject = "late-blight";

    public static (NaiveHypothesis Hypothesis, double Mass)[] Of(List<(NaiveHypothesis Hypothesis, double Probability)> posterior)
    {
        double Alone(string id) => posterior.Single(entry => entry.Hypothesis.Causes is [{ } cause] && cause.Id == id).Probability;
        string Heir(NaiveHypothesis pair) => Alone(pair.Causes[1]!.Id) > Alone(pair.Causes[0]!.Id) * ActiveHypotheses.Clearly ? pair.Causes[1]!.Id : pair.Causes[0]!.Id;
        var masses = posterior.Where(entry => entry.Hypothesis.Causes.Length == 1).ToDictionary(entry => entry.Hypothesis.Causes[0]?.Id ?? "", entry => entry.Probability);
        var kept = new List<(NaiveHypothesis Hypothesis, double Mass)>();
        foreach (var (pair, probability) in posterior.Where(entry => entry.Hypothesis.Causes.Length == 2))
        {
            if (probability >= (pair.Holds(Subject) ? ActiveHypotheses.LeastOfSubject : ActiveHypotheses.LeastPair)) kept.Add((pair, probability));
            else masses[pair.Holds(Subject) ? Subject : Heir(pair)] += probability;
        }

        foreach (var (alone, _) in posterior.Where(entry => entry.Hypothesis.Causes.Length == 1))
        {
            double mass = masses[alone.Causes[0]?.Id ?? ""];
            if (mass >= (alone.Holds(Subject) ? ActiveHypotheses.LeastOfSubject : ActiveHypotheses.LeastAlone)) kept.Add((alone, mass));
        }

        double sum = kept.Sum(entry => entry.Mass);
        return [.. kept.Select(entry => (entry.Hypothesis, entry.Mass / sum))];
    }
}
