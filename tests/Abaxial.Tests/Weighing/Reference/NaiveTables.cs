using System.Collections.Concurrent;
using Abaxial.Knowledge;

namespace Abaxial.Tests.Weighing.Reference;

/// <summary>The tables of one host, filled from the compiled document by words alone: most particular row first, background where there is none, redundancy weight, sum.</summary>
internal sealed class NaiveTables
{
    private readonly ConcurrentDictionary<(string? Cause, string Character, string? Facet), Dictionary<string, double>> filled = new();

    public NaiveTables(KnowledgeDocument document, string host)
    {
        Document = document;
        Host = host;
        Causes = [.. document.Causes.Where(cause => cause.Hosts.Contains(host)).OrderBy(cause => cause.Id, StringComparer.Ordinal)];
        Characters = document.Characters.ToDictionary(character => character.Id);
    }

    public KnowledgeDocument Document { get; }

    public string Host { get; }

    public CauseDocument[] Causes { get; }

    public Dictionary<string, CharacterDocument> Characters { get; }

    public static bool IsStateWise(CharacterDocument character) => character.Many || character.Sign;

    /// <summary>What can be true of a character on this host; of those read state by state, what can be there.</summary>
    public IEnumerable<string> States(CharacterDocument character) => character.States.Where(
        state => OccursHere(character, state) && !character.Voids.Contains(state) && !(IsStateWise(character) && state == character.Empty));

    /// <summary>The chance of a state under a cause; of one that is not listed where the cause is null.</summary>
    public double Chance(CauseDocument? cause, CharacterDocument character, string? facet, string state) => Fill(cause, character, facet)[state];

    /// <summary>A measured character: the mean, the spread between collections and the spread within one.</summary>
    public (double Mean, double Between, double Within) Range(CauseDocument? cause, CharacterDocument character, string? facet)
    {
        if (Row(cause, character, facet) is { } row) return (row.Mean!.Value, row.Between!.Value, row.Within!.Value);
        return (character.Background["mean"], character.Background["sd"], character.Background["sd"] / 2);
    }

    private bool OccursHere(CharacterDocument character, string state) => !character.StateHosts.TryGetValue(state, out string[]? hosts) || hosts.Contains(Host);

    private RowDocument? Row(CauseDocument? cause, CharacterDocument character, string? facet)
    {
        if (cause is null) return null;
        string[] keys = facet is null
            ? [$"{character.Id}@{Host}", character.Id]
            : [$"{character.Id}/{facet}@{Host}", $"{character.Id}/{facet}", $"{character.Id}@{Host}", character.Id];
        var found = keys.Select(key => cause.Rows.GetValueOrDefault(key)).FirstOrDefault(row => row is not null);
        return found ?? (facet is null && character.From.Length > 0 ? FromAnywhere(cause, character) : null);
    }

    /// <summary>From where was not said: the mean of the places that the cause speaks of and that say something.</summary>
    private RowDocument? FromAnywhere(CauseDocument cause, CharacterDocument character)
    {
        var rows = character.From.Except(Document.Reading.StreamingFrom.Keys).Select(from => Row(cause, character, from)).OfType<RowDocument>().ToArray();
        if (rows.Length == 0) return null;
        double never = Document.Words["never"];
        return rows[0] with { Is = character.States.ToDictionary(state => state, state => rows.Average(row => row.Is!.GetValueOrDefault(state, never))) };
    }

    private Dictionary<string, double> Fill(CauseDocument? cause, CharacterDocument character, string? facet)
    {
        if (filled.TryGetValue((cause?.Id, character.Id, facet), out var known)) return known;
        double never = Document.Words["never"], weight = Document.Groups[character.Group];
        var row = Row(cause, character, facet)?.Is;
        var written = character.States
            .Where(state => OccursHere(character, state) && !character.Voids.Contains(state) && !(character.Many && state == character.Empty))
            .ToDictionary(state => state, state => row is null ? character.Background[state] : row.GetValueOrDefault(state, never));
        double sum = written.Values.Sum(chance => Math.Pow(chance, weight));
        known = written.ToDictionary(
            pair => pair.Key,
            pair => Math.Pow(pair.Value, weight) / (character.Many ? Math.Pow(pair.Value, weight) + Math.Pow(1 - pair.Value, weight) : sum));
        return filled[(cause?.Id, character.Id, facet)] = known;
    }
}
