using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>
/// Samples drawn from the weighted model itself: causes by how often clinics see them, which organs each attacks, what is truly there, and what people read of that with the
/// noise of their way and skill. Which looks are made is settled first; a plant on which they cannot have been made so (a spot described where there is none, a colour of
/// nothing, growth placed where there is no growth) is put back and another drawn.
/// </summary>
internal sealed class SimulatedSample
{
    private const int Tries = 400;

    private readonly Random random;
    private readonly NaiveTables tables;
    private readonly Case frame;
    private readonly (CharacterDocument Character, string? Facet)[] plan;
    private readonly Dictionary<string, bool> implied = [];
    private readonly List<NaiveLook> looks = [];
    private CauseDocument?[] causes = [];
    private Dictionary<string, CauseDocument?[]> attackers = [];

    private SimulatedSample(Random random, NaiveTables tables, Case frame, (CharacterDocument Character, string? Facet)[] plan)
    {
        this.random = random;
        this.tables = tables;
        this.frame = frame;
        this.plan = plan;
    }

    /// <summary>A case, and the causes that are on its plant (none for a cause that is not listed).</summary>
    public static (Case Case, string[] Truth) Draw(Random random, KnowledgeBase knowledge, Func<string, NaiveTables> tablesOf, Func<Case, NaiveTables, (NaiveHypothesis[] Hypotheses, double[] UpTo)> priors)
    {
        while (true)
        {
            string host = Pick(random, knowledge.Document.Hosts);
            var tables = tablesOf(host);
            var frame = new Case { Knowledge = knowledge, Host = host, System = Pick(random, ["field", "garden", "greenhouse"]), Stage = Pick(random, ["vegetative", "fruiting"]) };
            var sample = new SimulatedSample(random, tables, frame, Plan(random, tables));
            var (hypotheses, upTo) = priors(frame, tables);
            for (int tries = 0; tries < Tries; tries++)
            {
                double point = random.NextDouble();
                int h = Array.BinarySearch(upTo, point) is var at && at < 0 ? ~at : at;
                sample.causes = hypotheses[Math.Min(h, hypotheses.Length - 1)].Causes;
                if (sample.Look()) return (sample.ToCase(), [.. sample.causes.OfType<CauseDocument>().Select(cause => cause.Id)]);
            }
        }
    }

    /// <summary>Which looks are made, whatever is there: what hides growth first, and parents before their children.</summary>
    private static (CharacterDocument Character, string? Facet)[] Plan(Random random, NaiveTables tables)
    {
        string[] often = ["leaf-underside-growth", "leaf-underside-growth-place", "stem-lesion", "stem-feel", "stem-lesion-place", "spores-seen", "sporangiophore", "sporangium-sheds", "pcr-p-infestans", "concentric-rings", "pycnidia"];
        CharacterDocument[] made = [.. tables.Document.Characters.Where(character => character.Measure is null && (character.Hosts.Length == 0 || character.Hosts.Contains(tables.Host)))];
        var chosen = new HashSet<CharacterDocument>();
        if (random.Next(4) > 0) chosen.Add(tables.Characters["organs-affected"]);
        for (int left = random.Next(2, 6); left > 0; left--) chosen.Add(random.Next(2) == 0 ? tables.Characters[Pick(random, often)] : made[random.Next(made.Length)]);
        return [.. chosen
            .OrderByDescending(character => tables.Document.Reading.Hides.InChamber.ContainsKey(character.Id)).ThenBy(character => character.When.Count)
            .Select(character => (character, character.From.Length == 0 ? null : Pick(random, character.From)))];
    }

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];

    private bool Look()
    {
        looks.Clear();
        implied.Clear();
        attackers = tables.States(tables.Characters["organs-affected"]).ToDictionary(
            organ => organ,
            organ => causes.Where(cause => random.NextDouble() < tables.Chance(cause, tables.Characters["organs-affected"], null, organ)).ToArray());
        return plan.All(look => Look(look.Character, look.Facet));
    }

    private bool Look(CharacterDocument character, string? facet)
    {
        if (!ParentAllows(character, out bool isSetAside)) return false;
        if (isSetAside) return true;
        var showing = character.Organ is { } organ ? attackers[organ] : causes;
        var truth = Truth(character, facet, showing);
        int people = random.Next(3) == 0 ? 2 : 1;
        for (int person = 0; person < people; person++)
        {
            var look = Read(character, facet, truth);
            if (look.States.Length == 0 || (showing.Length == 0 && !look.SaysNothingThere)) return false;
            looks.Add(look);
        }

        return true;
    }

    /// <summary>A child stands only on a parent that has one of the states it needs: as was read of it, or as is true where nobody read it.</summary>
    private bool ParentAllows(CharacterDocument child, out bool isSetAside)
    {
        isSetAside = false;
        foreach (var (id, states) in child.When)
        {
            var answers = looks.Where(look => look.Character.Id == id).ToArray();
            isSetAside = answers.Length > 0 && !answers.Any(look => look.States.Intersect(states).Any());
            if (answers.Length > 0) continue;
            var parent = tables.Characters[id];
            var showing = parent.Organ is { } organ ? attackers[organ] : causes;
            foreach (string state in tables.States(parent))
            {
                if (!implied.ContainsKey($"{id}/{state}")) implied.Add($"{id}/{state}", showing.Any(cause => random.NextDouble() < tables.Chance(cause, parent, null, state)));
            }

            if (!states.Any(state => implied[$"{id}/{state}"])) return false;
        }

        return true;
    }

    private HashSet<string> Truth(CharacterDocument character, string? facet, CauseDocument?[] showing)
    {
        string[] states = [.. tables.States(character)];
        if (character.Id == "organs-affected") return [.. states.Where(organ => attackers[organ].Length > 0)];
        if (NaiveTables.IsStateWise(character)) return [.. states.Where(state => showing.Any(cause => random.NextDouble() < tables.Chance(cause, character, facet, state)))];
        if (showing.Length == 0) return character.Empty is null ? [] : [character.Empty];
        var shown = showing[random.Next(showing.Length)];
        double left = random.NextDouble();
        foreach (string state in states)
        {
            left -= tables.Chance(shown, character, facet, state);
            if (left < 0) return [state];
        }

        return [states[^1]];
    }

    private NaiveLook Read(CharacterDocument character, string? facet, HashSet<string> truth)
    {
        string how = Pick(random, character.How);
        string? surface = character.Surface.Length == 0 ? null : how == "moist-chamber" ? how : Pick(random, character.Surface);
        double? hours = surface == "moist-chamber" ? 12 + (random.NextDouble() * 72) : null;
        var look = new NaiveLook(looks.Count, character, facet, how, Pick(random, ["grower", "scout", "diagnostician", "specialist"]), $"person {looks.Count}", [], [], surface, hours);
        var reading = new NaiveReading(tables.Document, [.. looks]);
        string[] states = [.. tables.States(character)];
        if (!NaiveTables.IsStateWise(character)) return look with { States = truth.Count == 0 ? [] : [Misread(truth.Single(), states, reading.Error(look))] };

        // What can be hidden under another growth is read last.
        var named = new List<string>();
        foreach (string state in states.OrderBy(state => tables.Document.Reading.Hides.States.Contains(state)))
        {
            double unnamed = reading.OfState(look with { States = [.. named] }, state, truth.Contains(state));
            if (random.NextDouble() >= unnamed) named.Add(state);
        }

        if (named.Count == 0 && character.Empty is not null) named.Add(character.Empty);
        return look with { States = [.. named] };
    }

    private string Misread(string truth, string[] states, double error)
    {
        if (random.NextDouble() >= error) return truth;
        return Pick(random, [.. states.Where(state => state != truth)]);
    }

    private Case ToCase() => frame with
    {
        Looks = [.. looks.Select(look =>
        {
            var character = frame.Knowledge.FindCharacter(look.Character.Id)!;
            return new Look
            {
                Character = character,
                How = Enum.GetValues<Way>().Single(way => way.Word() == look.How),
                By = Enum.GetValues<Observer>().Single(observer => observer.Word() == look.By),
                Surface = look.Surface is null ? null : Enum.GetValues<Surface>().Single(surface => surface.Word() == look.Surface),
                Hours = look.Hours,
                Facet = look.Facet,
                Person = look.Person,
                States = [.. look.States.Select(character.StateIndex).Order()],
            };
        })],
    };
}
