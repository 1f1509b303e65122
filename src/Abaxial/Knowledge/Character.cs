using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>Something a person can look at, touch, smell or test. Immutable; compared by identity within one knowledge base.</summary>
public sealed class Character
{
    internal Character(CharacterDocument document, int index, double groupWeight)
    {
        Id = document.Id;
        Index = index;
        States = [.. document.States];
        IsMany = document.Many;
        IsSign = document.Sign;
        IsMeasured = document.Measure is not null;
        EmptyState = document.Empty is null ? -1 : States.IndexOf(document.Empty, 0, StringComparer.Ordinal);
        Voids = [.. document.States.Select(state => document.Voids.Contains(state, StringComparer.Ordinal))];
        Organ = document.Organ;
        Hosts = [.. document.Hosts];
        StateHosts = document.StateHosts.ToImmutableDictionary(pair => pair.Key, pair => pair.Value.ToImmutableArray(), StringComparer.Ordinal);
        Ways = [.. document.How.Select(word => Vocabulary.TryWay(word, out var way) ? way : Way.NakedEye)];
        Surfaces = [.. document.Surface.Select(word => Vocabulary.TrySurface(word, out var surface) ? surface : Surface.DryDay)];
        Minutes = document.Minutes;
        WaitHours = document.WaitHours;
        Group = document.Group;
        GroupWeight = groupWeight;
        OfOnly = document.OfOnly;
        Facets = document.From.Length > 0 ? [.. document.From] : [];
    }

    public string Id { get; }

    /// <summary>The place in <see cref="KnowledgeBase.Characters"/>.</summary>
    public int Index { get; }

    /// <summary>All states, for every host; empty for a measured character.</summary>
    public ImmutableArray<string> States { get; }

    /// <summary>Several states may be there at once.</summary>
    public bool IsMany { get; }

    /// <summary>The organism itself or its direct trace: what one cause of a pair shows, the pair shows.</summary>
    public bool IsSign { get; }

    /// <summary>Recorded as numbers, in micrometres.</summary>
    public bool IsMeasured { get; }

    /// <summary>The index of the state that says that nothing is there, or -1.</summary>
    public int EmptyState { get; }

    /// <summary>For each state, whether it carries no evidence (an invalid test).</summary>
    public ImmutableArray<bool> Voids { get; }

    /// <summary>The organ that this character describes, a state of organs-affected; null where it describes none.</summary>
    public string? Organ { get; }

    public ImmutableArray<string> Hosts { get; }

    internal ImmutableDictionary<string, ImmutableArray<string>> StateHosts { get; }

    /// <summary>The ways listed for it. Where the naked eye is listed, a photograph and being told are accepted too.</summary>
    public ImmutableArray<Way> Ways { get; }

    public ImmutableArray<Surface> Surfaces { get; }

    /// <summary>Hands-on minutes of the cheapest way.</summary>
    public double Minutes { get; }

    /// <summary>Hours until there is something to see, where the character itself needs them.</summary>
    public double WaitHours { get; }

    public string Group { get; }

    /// <summary>The static weight of its redundancy group, 0 to 1.</summary>
    public double GroupWeight { get; }

    /// <summary>Where a bacterial streaming may come from; empty for other characters.</summary>
    public ImmutableArray<string> Facets { get; }

    /// <summary>For a measured character that belongs to one kind of spore alone.</summary>
    public string? OfOnly { get; }

    /// <summary>The character whose states are the kinds of thing measured.</summary>
    public Character? OfCharacter { get; internal set; }

    /// <summary>The parent that must have been answered with one of <see cref="WhenStates"/>; null where the look always means something.</summary>
    public Character? WhenParent { get; internal set; }

    /// <summary>States of <see cref="WhenParent"/> under which this look means something.</summary>
    public ImmutableArray<int> WhenStates { get; internal set; } = [];

    public bool Accepts(Way way) => Ways.Contains(way) || (way is Way.Photo or Way.Asked && Ways.Contains(Way.NakedEye));

    public bool AppliesTo(string host) => Hosts.IsEmpty || Hosts.Contains(host, StringComparer.Ordinal);

    public bool HasState(int state, string host) =>
        !StateHosts.TryGetValue(States[state], out var hosts) || hosts.Contains(host, StringComparer.Ordinal);

    public int StateIndex(string state) => States.IndexOf(state, 0, StringComparer.Ordinal);

    public override string ToString() => Id;
}
