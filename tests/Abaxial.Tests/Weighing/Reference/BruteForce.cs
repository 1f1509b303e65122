using Abaxial.Knowledge;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>
/// The method as docs/method states it, computed by writing every possibility out: every hypothesis, which of its causes attack each organ, which of them brings each
/// state, which one true state a character has. Platform logarithms, nothing pooled, nothing shared with the engine but the document.
/// </summary>
internal sealed class BruteForce
{
    private const string Organs = "organs-affected";

    private readonly NaiveTables tables;
    private readonly NaiveReading reading;
    private readonly Func<CauseDocument?, CharacterDocument, string?, string, double> chance;
    private readonly Dictionary<(string Organ, string? First, string? Last), double> known = [];

    /// <param name="naive">The case.</param>
    /// <param name="tables">The tables.</param>
    /// <param name="drawn">Takes the place of a chance in the tables, for what is drawn about it; null for the tables as written.</param>
    public BruteForce(NaiveCase naive, NaiveTables tables, Func<CauseDocument?, CharacterDocument, string?, string, double>? drawn = null)
    {
        Case = naive;
        this.tables = tables;
        reading = new NaiveReading(tables.Document, naive.Counted);
        chance = drawn ?? tables.Chance;
    }

    public NaiveCase Case { get; }

    public NaiveReading Reading => reading;

    public static List<(NaiveHypothesis Hypothesis, double Probability)> Posterior(NaiveCase naive, NaiveTables tables, bool withFactors = true, bool flat = false)
    {
        var model = new BruteForce(naive, tables);
        var logs = NaivePriors.Of(naive.Weighed, tables, withFactors, flat).Select(entry => (entry.Hypothesis, Log: Math.Log(entry.Prior) + model.LogLikelihood(entry.Hypothesis.Causes))).ToArray();
        double top = logs.Max(entry => entry.Log);
        double sum = logs.Sum(entry => Math.Exp(entry.Log - top));
        return [.. logs.Select(entry => (entry.Hypothesis, Math.Exp(entry.Log - top) / sum))];
    }

    /// <summary>The natural logarithm of the chance of all readings where these causes are on the plant.</summary>
    public double LogLikelihood(CauseDocument?[] causes)
    {
        double log = LogOfLooks(causes, [.. Case.Read.Where(look => look.Character.Organ is null && look.Character.Id != Organs)]);
        foreach (string organ in tables.States(tables.Characters[Organs]).Where(organ => Case.Read.Any(look => look.Character.Id == Organs || look.Character.Organ == organ))) log += Math.Log(AtOrgan(causes, organ).Sum(entry => entry.Joint));
        return log;
    }

    /// <summary>Every choice of causes that attack an organ, with the joint chance of that and of all that was reported and seen of it.</summary>
    public IEnumerable<(CauseDocument?[] Attackers, double Joint)> AtOrgan(CauseDocument?[] causes, string organ)
    {
        NaiveLook[] looks = [.. Case.Read.Where(look => look.Character.Organ == organ)];
        foreach (var (attackers, prior) in Subsets(causes, cause => Attacks(cause, organ)))
        {
            double seen = attackers.Length == 0 ? OfSound(looks) : Math.Exp(Once(attackers, organ, looks));
            yield return (attackers, prior * Reports(organ, attackers.Length > 0) * seen);
        }
    }

    /// <summary>The chance that a cause attacks an organ: of the one organ that a sample of this kind has, nearly sure where the cause can.</summary>
    public double Attacks(CauseDocument? cause, string organ)
    {
        var only = tables.Document.OnlyOrgan;
        double written = tables.Chance(cause, tables.Characters[Organs], null, organ);
        bool isSure = OnlyOrgan == organ && written >= only.FromChance && written != only.Chance;
        return isSure ? only.Chance : chance(cause, tables.Characters[Organs], null, organ);
    }

    /// <summary>The one organ that a sample of this system or stage has.</summary>
    public string? OnlyOrgan
    {
        get
        {
            var (only, weighed) = (tables.Document.OnlyOrgan, Case.Weighed);
            if (weighed.System is { } system && only.Systems.TryGetValue(system, out var kept)) return kept.GetValueOrDefault(weighed.Host);
            return weighed.Stage is { } stage && only.Stages.TryGetValue(stage, out var cut) ? cut.GetValueOrDefault(weighed.Host) : null;
        }
    }

    /// <summary>Whether an organ was reported ill or a look at it shows something.</summary>
    public bool IsAffected(string organ) =>
        Case.At(Organs).Any(look => look.States.Contains(organ)) || Case.Read.Any(look => look.Character.Organ == organ && !look.SaysNothingThere);

    /// <summary>Every subset of causes, each in it with its own chance.</summary>
    public static IEnumerable<(CauseDocument?[] In, double Chance)> Subsets(CauseDocument?[] causes, Func<CauseDocument?, double> chanceOf)
    {
        for (int mask = 0; mask < 1 << causes.Length; mask++)
        {
            double product = 1;
            var chosen = new List<CauseDocument?>();
            for (int i = 0; i < causes.Length; i++)
            {
                bool isIn = (mask >> i & 1) == 1;
                product *= isIn ? chanceOf(causes[i]) : 1 - chanceOf(causes[i]);
                if (isIn) chosen.Add(causes[i]);
            }

            yield return ([.. chosen], product);
        }
    }

    private double Reports(string organ, bool isAffected)
    {
        NaiveLook[] reports = [.. Case.At(Organs)];
        bool isNamed = reports.Any(look => look.States.Contains(organ));
        if (OnlyOrgan is { } only && only != organ && !isNamed) return 1;
        return reports.Aggregate(1.0, (product, look) => product * reading.OfState(look, organ, isAffected));
    }

    /// <summary>Of a sound organ nothing but its soundness can be seen.</summary>
    private double OfSound(NaiveLook[] looks)
    {
        double product = 1;
        foreach (var look in looks)
        {
            if (!look.SaysNothingThere) return 0;
            if (!NaiveTables.IsStateWise(look.Character)) product *= 1 - reading.Error(look);
            else foreach (string state in tables.States(look.Character)) product *= reading.OfState(look, state, false);
        }

        return product;
    }

    /// <summary>The same causes attack the same organ in many hypotheses.</summary>
    private double Once(CauseDocument?[] attackers, string organ, NaiveLook[] looks)
    {
        var key = (organ, attackers[0]?.Id, attackers[^1]?.Id);
        if (!known.TryGetValue(key, out double log)) known.Add(key, log = LogOfLooks(attackers, looks));
        return log;
    }

    private double LogOfLooks(CauseDocument?[] causes, NaiveLook[] looks)
    {
        if (looks.Length == 0) return 0;
        double log = looks.GroupBy(look => (look.Character.Id, look.Facet)).Sum(group => Math.Log(OfQuestion(causes, group.First().Character, group.Key.Facet, [.. group])));
        var implied = looks.Select(NaiveCase.Needs).OfType<(string Parent, string[] States)>().Where(need => Case.Counted.All(other => other.Character.Id != need.Parent));
        foreach (var parent in implied.GroupBy(need => need.Parent)) log += Math.Log(AllAreMet(causes, tables.Characters[parent.Key], [.. parent.Select(need => need.States)]));
        return log;
    }

    private double OfQuestion(CauseDocument?[] causes, CharacterDocument character, string? facet, NaiveLook[] looks)
    {
        if (character.Measure is not null) return Measured(causes, character, facet, [.. looks.SelectMany(look => look.Values)]);
        if (NaiveTables.IsStateWise(character))
        {
            double product = 1;
            foreach (string state in tables.States(character)) product *= OfState(causes, character, facet, state, looks);
            return product;
        }

        string[] states = [.. tables.States(character)];
        double sum = 0;
        foreach (var shown in causes)
        {
            foreach (string truth in states)
            {
                double joint = chance(shown, character, facet, truth) / causes.Length;
                foreach (var look in looks) joint *= look.States[0] == truth ? 1 - reading.Error(look) : reading.Error(look) / (states.Length - 1);
                sum += joint;
            }
        }

        return sum;
    }

    /// <summary>One state: each of the causes brings it or does not.</summary>
    private double OfState(CauseDocument?[] causes, CharacterDocument character, string? facet, string state, NaiveLook[] looks)
    {
        double ifThere = 1, ifNot = 1, sum = 0;
        foreach (var look in looks)
        {
            ifThere *= reading.OfState(look, state, true);
            ifNot *= reading.OfState(look, state, false);
        }

        double[] brings = [.. causes.Select(cause => chance(cause, character, facet, state))];
        for (int mask = 0; mask < 1 << causes.Length; mask++)
        {
            double joint = mask == 0 ? ifNot : ifThere;
            for (int i = 0; i < brings.Length; i++) joint *= (mask >> i & 1) == 1 ? brings[i] : 1 - brings[i];
            sum += joint;
        }

        return sum;
    }

    /// <summary>What was measured belongs to one of the causes, in proportion to how often each has that kind.</summary>
    private double Measured(CauseDocument?[] causes, CharacterDocument character, string? facet, double[] values)
    {
        double weight = tables.Document.Groups[character.Group], mean = values.Average(), sum = 0, all = 0;
        foreach (var owner in causes)
        {
            var (middle, between, within) = tables.Range(owner, character, facet);
            double variance = ((between * between) + (within * within / values.Length)) / weight;
            double owns = character.OfCharacter is { } kinds ? tables.Chance(owner, tables.Characters[kinds], null, facet ?? character.OfOnly!) : 1;
            sum += owns * (Math.Exp(-Math.Pow(mean - middle, 2) / (2 * variance)) + 1e-4) / Math.Sqrt(variance);
            all += owns;
        }

        return sum / all;
    }

    /// <summary>Children whose parent was not recorded tell that each found one of the states there that it needs: every way the states can be there or not.</summary>
    private double AllAreMet(CauseDocument?[] causes, CharacterDocument parent, string[][] needs)
    {
        string[] states = [.. needs.SelectMany(need => need).Distinct()];
        double[] there = [.. states.Select(state => 1 - causes.Aggregate(1.0, (stays, cause) => stays * (1 - tables.Chance(cause, parent, null, state))))];
        double sum = 0;
        for (int mask = 0; mask < 1 << states.Length; mask++)
        {
            if (!needs.All(need => need.Any(state => (mask >> Array.IndexOf(states, state) & 1) == 1))) continue;
            double joint = 1;
            for (int i = 0; i < states.Length; i++) joint *= (mask >> i & 1) == 1 ? there[i] : 1 - there[i];
            sum += joint;
        }

        return sum;
    }
}
