using Abaxial.Knowledge;
using Abaxial.Samples;

namespace Abaxial.Load.Filling;

/// <summary>Looks as the knowledge says they fall out: a cause is drawn as often as a clinic sees it, and what is seen as often as the cause shows it.</summary>
internal sealed class Sightings(KnowledgeBase knowledge, Random chance, Island island)
{
    private readonly Dictionary<string, (Cause[] Causes, double[] UpTo)> byHost = knowledge.Document.Hosts.ToDictionary(host => host, host => Weighted(knowledge, host));

    public string Host() => chance.NextDouble() < 0.6 ? "tomato" : "potato";

    public Cause CauseOf(string host)
    {
        var (causes, upTo) = byHost[host];
        double at = chance.NextDouble() * upTo[^1];
        return causes[Array.FindIndex(upTo, sum => at < sum)];
    }

    /// <summary>A look at one of the characters that the cause has a row for; never one that needs more than a state to be recorded.</summary>
    public LookMade Look(string host, Cause cause, string by, string person)
    {
        var rows = cause.Rows.Where(row => row.Chances.Length > 0 && row.Facet is null && (row.Host is null || row.Host == host) && IsPlain(row.Character, host)).ToList();
        var row = rows[chance.Next(rows.Count)];
        var character = row.Character;
        var states = Enumerable.Range(0, row.Chances.Length).Where(state => character.HasState(state, host)).ToList();
        double at = chance.NextDouble() * states.Sum(state => row.Chances[state]);
        int seen = states.FirstOrDefault(state => (at -= row.Chances[state]) < 0, states[^1]);
        string note = chance.NextDouble() < 0.2 ? $",\"note\":\"{island.Note()}\"" : "";
        string form = character.IsMany ? $"\"states\":[\"{character.States[seen]}\"]" : $"\"state\":\"{character.States[seen]}\"";
        return new LookMade(1, $"{{\"by\":\"{by}\",\"character\":\"{character.Id}\",\"how\":\"{Vocabulary.Word(character.Ways[0])}\"{note},\"observer\":\"{person}\",{form}}}");
    }

    private static bool IsPlain(Character character, string host) =>
        character.AppliesTo(host) && !character.IsMeasured && character.Facets.IsEmpty && character.Ways[0] is not Way.MoistChamber && !character.States.IsEmpty;

    private static (Cause[] Causes, double[] UpTo) Weighted(KnowledgeBase knowledge, string host)
    {
        var causes = knowledge.Causes.Where(cause => cause.Hosts.Contains(host)).ToArray();
        double sum = 0;
        return (causes, [.. causes.Select(cause => sum += cause.Seen.Weight.GetValueOrDefault(host))]);
    }
}
