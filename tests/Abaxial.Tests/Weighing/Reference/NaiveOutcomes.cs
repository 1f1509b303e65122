using Abaxial.Knowledge;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>
/// What one more look would show: of a one-state character the state named; of others the first on the list of states that is named, the empty state where none is. Where
/// one growth can hide another, every set of states that could be named is written out.
/// </summary>
internal sealed class NaiveOutcomes
{
    private readonly NaiveLook look;
    private readonly NaiveTables tables;
    private readonly BruteForce model;
    private readonly NaiveReading reading;
    private readonly NaiveLook[] before;
    private readonly string[] states;
    private readonly bool hasEmpty;
    private readonly Dictionary<(string? First, string? Last, int Count), Dictionary<string, double>> known = [];

    public NaiveOutcomes(NaiveLook look, NaiveCase naive, NaiveTables tables, BruteForce model)
    {
        this.look = look;
        this.tables = tables;
        this.model = model;
        reading = new NaiveReading(tables.Document, naive.Counted);
        before = [.. naive.At(look.Character.Id).Where(other => other.Facet == look.Facet)];
        states = [.. tables.States(look.Character)];
        hasEmpty = look.Character.Empty is not null;
        States = hasEmpty && NaiveTables.IsStateWise(look.Character) ? [.. states, look.Character.Empty!] : states;
    }

    public string[] States { get; }

    /// <summary>The chances under a hypothesis: of an organ, over which of its causes attack it as far as the case tells.</summary>
    public Dictionary<string, double> Of(NaiveHypothesis hypothesis)
    {
        if (look.Character.Organ is not { } organ) return Given(hypothesis.Causes);
        var ways = model.AtOrgan(hypothesis.Causes, organ).Where(way => hasEmpty || way.Attackers.Length > 0).ToArray();
        double sum = ways.Sum(way => way.Joint);
        var given = ways.Select(way => (Share: way.Joint / sum, Chances: Given(way.Attackers))).ToArray();
        return States.ToDictionary(state => state, state => given.Sum(way => way.Share * way.Chances[state]));
    }

    private Dictionary<string, double> Given(CauseDocument?[] causes)
    {
        var key = (causes.FirstOrDefault()?.Id, causes.LastOrDefault()?.Id, causes.Length);
        if (known.TryGetValue(key, out var chances)) return chances;
        chances = !NaiveTables.IsStateWise(look.Character) ? OneState(causes) : look.Surface == "moist-chamber" ? EverySet(causes) : FirstNamed(causes);
        return known[key] = chances;
    }

    private Dictionary<string, double> OneState(CauseDocument?[] causes)
    {
        var truths = states.ToDictionary(truth => truth, truth => causes.Length == 0 ? (truth == look.Character.Empty ? 1 : 0) : causes.Average(cause => tables.Chance(cause, look.Character, look.Facet, truth)));
        foreach (var other in causes.Length == 0 ? [] : before)
        {
            foreach (string truth in states) truths[truth] *= other.States[0] == truth ? 1 - reading.Error(other) : reading.Error(other) / (states.Length - 1);
        }

        double sum = truths.Values.Sum(), error = reading.Error(look);
        return states.ToDictionary(read => read, read => truths.Sum(truth => truth.Value / sum * (truth.Key == read ? 1 - error : error / (states.Length - 1))));
    }

    /// <summary>The chance that a state is there after what was read of it.</summary>
    private double IsThere(CauseDocument?[] causes, string state)
    {
        if (causes.Length == 0) return 0;
        double stays = causes.Aggregate(1.0, (product, cause) => product * (1 - tables.Chance(cause, look.Character, look.Facet, state)));
        double there = before.Aggregate(1 - stays, (product, other) => product * reading.OfState(other, state, true));
        double away = before.Aggregate(stays, (product, other) => product * reading.OfState(other, state, false));
        return there / (there + away);
    }

    private Dictionary<string, double> FirstNamed(CauseDocument?[] causes)
    {
        var chances = new Dictionary<string, double>();
        double none = 1;
        foreach (string state in states)
        {
            double there = IsThere(causes, state);
            double unnamed = (there * reading.OfState(look, state, true)) + ((1 - there) * reading.OfState(look, state, false));
            chances.Add(state, none * (1 - unnamed));
            none *= unnamed;
        }

        return Close(chances, none);
    }

    private Dictionary<string, double> EverySet(CauseDocument?[] causes)
    {
        var chances = states.ToDictionary(state => state, _ => 0.0);
        double[] there = [.. states.Select(state => IsThere(causes, state))];
        double none = 0;
        for (int mask = 0; mask < 1 << states.Length; mask++)
        {
            string[] named = [.. states.Where((_, i) => (mask >> i & 1) == 1)];
            var set = look with { Place = -2 - mask, States = named };
            double joint = 1;
            for (int i = 0; i < states.Length; i++) joint *= (there[i] * reading.OfState(set, states[i], true)) + ((1 - there[i]) * reading.OfState(set, states[i], false));
            if (named.Length == 0) none += joint;
            else chances[named[0]] += joint;
        }

        return Close(chances, none);
    }

    private Dictionary<string, double> Close(Dictionary<string, double> chances, double none)
    {
        if (!hasEmpty) return chances.ToDictionary(pair => pair.Key, pair => pair.Value / (1 - none));
        chances.Add(look.Character.Empty!, none);
        return chances;
    }
}
