using System.Collections.Immutable;
using Abaxial.Statistics;

namespace Abaxial.Knowledge;

/// <summary>
/// The tables of one host, filled: for every character and cause the chances of its states, with the background where the cause says nothing and the
/// redundancy weight applied. One more row than causes: the last is the cause that is not listed, which has background rows alone.
/// </summary>
public sealed class HostTable
{
    private readonly Dictionary<(int Character, string? Facet), Question> questions = [];

    public HostTable(KnowledgeBase knowledge, string host)
    {
        Knowledge = knowledge;
        Host = host;
        Causes = [.. knowledge.Causes.Where(cause => cause.Hosts.Contains(host, StringComparer.Ordinal))];
        var list = ImmutableArray.CreateBuilder<Question>();
        foreach (var character in knowledge.Characters.Where(character => character.AppliesTo(host)))
        {
            foreach (string? facet in FacetsOf(character))
            {
                var question = new Question(this, character, facet);
                questions.Add((character.Index, facet), question);
                list.Add(question);
            }
        }

        Questions = list.ToImmutable();
    }

    public KnowledgeBase Knowledge { get; }

    public string Host { get; }

    /// <summary>The causes of this host, in ordinal order of id.</summary>
    public ImmutableArray<Cause> Causes { get; }

    /// <summary>The row of the cause that is not listed.</summary>
    public int NotListed => Causes.Length;

    public ImmutableArray<Question> Questions { get; }

    /// <summary>The place of a cause in <see cref="Causes"/>, or -1.</summary>
    public int IndexOf(Cause cause) => Causes.IndexOf(cause);

    /// <summary>What is asked by a character, of one kind of thing measured or from one place where it has such.</summary>
    public Question Find(Character character, string? facet = null) => questions[(character.Index, facet)];

    private static IEnumerable<string?> FacetsOf(Character character)
    {
        if (character is { IsMeasured: true, OfOnly: null, OfCharacter: { } kinds })
        {
            return kinds.States.Where((_, state) => state != kinds.EmptyState);
        }

        return [null, .. character.Facets];
    }
}

/// <summary>One character, with what was measured or where it came from, and its tables for every cause of a host.</summary>
public sealed class Question
{
    private readonly double[] chances;
    private readonly Dictionary<string, NoiseDocument>.KeyCollection saysLittle;

    internal Question(HostTable table, Character character, string? facet)
    {
        Character = character;
        Facet = facet;
        saysLittle = table.Knowledge.Document.Reading.StreamingFrom.Keys;
        var background = table.Knowledge.Document.Characters[character.Index].Background;
        int rows = table.Causes.Length + 1;
        StateCount = character.States.Length;
        IsStateWise = character.IsMany || character.IsSign;
        States = [.. Enumerable.Range(0, StateCount).Where(state => !character.Voids[state] && character.HasState(state, table.Host) && !(IsStateWise && state == character.EmptyState))];
        chances = new double[rows * StateCount];
        var strengths = new double[rows];
        var used = new Row?[rows];
        var ranges = new MeasuredRange?[rows];
        for (int cause = 0; cause < rows; cause++)
        {
            var row = cause < table.Causes.Length ? FindRow(table.Causes[cause], table.Host) : null;
            used[cause] = row;
            ranges[cause] = row?.Range;
            strengths[cause] = row?.Strength ?? table.Knowledge.Document.Strengths["judgement"];
            if (!character.IsMeasured) Fill(cause, row, background, table.Host);
        }

        Strengths = [.. strengths];
        Rows = [.. used];
        Ranges = [.. ranges];
        if (character.IsMeasured) BackgroundRange = new MeasuredRange(background["mean"], background["sd"], background["sd"] / 2);
    }

    public Character Character { get; }

    public string? Facet { get; }

    /// <summary>How many states the character has; 0 where it is measured.</summary>
    public int StateCount { get; }

    /// <summary>Read state by state (signs and characters with several states at once) rather than as one of several.</summary>
    public bool IsStateWise { get; }

    /// <summary>The states that can be there on this host: all but void ones and, where they are read one by one, the empty one.</summary>
    public ImmutableArray<int> States { get; }

    /// <summary>How many cases each row is worth, by cause.</summary>
    public ImmutableArray<double> Strengths { get; }

    /// <summary>The row that a cause wrote; null where the background stands in.</summary>
    public ImmutableArray<Row?> Rows { get; }

    /// <summary>Published ranges by cause; null where the cause gives none.</summary>
    public ImmutableArray<MeasuredRange?> Ranges { get; }

    /// <summary>What stands in where a cause gives no range.</summary>
    public MeasuredRange? BackgroundRange { get; }

    /// <summary>
    /// The chance that a state is there under a cause. One-state characters: the states of a row sum to one. `many` characters: each state by itself; the
    /// empty state holds the product of the others staying away.
    /// </summary>
    public double Chance(int cause, int state) => chances[(cause * StateCount) + state];

    private Row? FindRow(Cause cause, string host)
    {
        Row? best = null;
        int bestRank = -1;
        foreach (var row in cause.Rows)
        {
            if (row.Character != Character || (row.Host is not null && row.Host != host) || (row.Facet is not null && row.Facet != Facet)) continue;
            int rank = (row.Facet is not null ? 2 : 0) + (row.Host is not null ? 1 : 0);
            if (rank <= bestRank) continue;
            best = row;
            bestRank = rank;
        }

        return best ?? (Facet is null && !Character.Facets.IsEmpty ? Unplaced(cause, host) : null);
    }

    /// <summary>Where it came from was not said: the mean of the places that a cause speaks of, those left out that say little whatever the cause.</summary>
    private Row? Unplaced(Cause cause, string host)
    {
        var rows = cause.Rows.Where(row => row.Character == Character && row.Facet is not null && !saysLittle.Contains(row.Facet) && (row.Host is null || row.Host == host)).ToArray();
        if (rows.Length == 0) return null;
        return rows[0] with { Facet = null, Chances = [.. Enumerable.Range(0, StateCount).Select(state => rows.Average(row => row.Chances[state]))], Strength = rows.Min(row => row.Strength) };
    }

    private void Fill(int cause, Row? row, Dictionary<string, double> background, string host)
    {
        var span = chances.AsSpan(cause * StateCount, StateCount);
        double nothing = 1, sum = 0;
        for (int state = 0; state < span.Length; state++)
        {
            bool counts = !Character.Voids[state] && Character.HasState(state, host) && !(Character.IsMany && state == Character.EmptyState);
            if (!counts) continue;
            double chance = row is not null ? row.Chances[state] : background[Character.States[state]];
            span[state] = Character.IsMany ? Damped(chance, 1 - chance) : Raised(chance);
            nothing *= 1 - span[state];
            sum += span[state];
        }

        if (Character.IsMany)
        {
            if (Character.EmptyState >= 0) span[Character.EmptyState] = nothing;
            return;
        }

        for (int state = 0; state < span.Length; state++) span[state] /= sum;
    }

    private double Damped(double chance, double otherwise)
    {
        double raised = Raised(chance);
        return raised / (raised + Raised(otherwise));
    }

    private double Raised(double chance) => Character.GroupWeight == 1 ? chance : PlainMath.Exp(Character.GroupWeight * PlainMath.Log(chance));
}
