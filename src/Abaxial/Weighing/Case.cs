using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>One plant, or one lot that looks alike: what is known of it and what was looked at. Every id is resolved against one knowledge base.</summary>
public sealed record Case
{
    /// <summary>The knowledge whose characters and causes the case refers to.</summary>
    public required KnowledgeBase Knowledge { get; init; }

    public required string Host { get; init; }

    /// <summary>How it is grown or kept; null where unknown.</summary>
    public string? System { get; init; }

    public string? Stage { get; init; }

    /// <summary>home, market, seed or nursery; null where the case does not say (then the system decides).</summary>
    public string? Purpose { get; init; }

    /// <summary>The day the trouble was noticed.</summary>
    public DateOnly? Noticed { get; init; }

    public Place? Place { get; init; }

    public ImmutableArray<PriorFactor> PriorFactors { get; init; } = [];

    /// <summary>The looks in the order of the file; their order never matters to the answer.</summary>
    public ImmutableArray<Look> Looks { get; init; } = [];
}

/// <summary>A place on the WGS 84 ellipsoid, in degrees.</summary>
public sealed record Place(double Latitude, double Longitude, double? UncertaintyMeters);

/// <summary>What weather or neighbours say of one cause before any look: a factor on its prior, with the reason.</summary>
public sealed record PriorFactor(Cause Cause, double Factor, string Reason);

/// <summary>One observation.</summary>
public sealed record Look
{
    public required Character Character { get; init; }

    public required Way How { get; init; }

    /// <summary>Indices of the states seen, ascending, each once; empty where values were measured or the answer was <c>unsure</c>.</summary>
    public ImmutableArray<int> States { get; init; } = [];

    /// <summary>Measured values in the character's unit; empty for other characters.</summary>
    public ImmutableArray<double> Values { get; init; } = [];

    /// <summary>Looked at, but nothing can be said: moves nothing.</summary>
    public bool IsUnsure { get; init; }

    /// <summary>The surface, where the character lists surfaces: dry day where nothing was said, moist chamber where the look was made in one. Null elsewhere.</summary>
    public Surface? Surface { get; init; }

    /// <summary>Hours in the moist chamber; null where not recorded.</summary>
    public double? Hours { get; init; }

    /// <summary>What was measured (resolved, also where the case file leaves it to the one kind of spore recorded) or where a streaming came from; else null.</summary>
    public string? Facet { get; init; }

    /// <summary>Who looked; a grower where nothing was said.</summary>
    public Observer By { get; init; } = Observer.Grower;

    /// <summary>Any id of the person; null where not recorded.</summary>
    public string? Person { get; init; }

    /// <summary>ISO 8601, as written.</summary>
    public string? At { get; init; }

    public string? Note { get; init; }

    /// <summary>Whether this is the same look as another: same character, what was seen, way, surface and facet, and the same person or, without one, the same kind of observer.</summary>
    public bool IsSameAs(Look other) =>
        Character == other.Character
        && How == other.How
        && IsUnsure == other.IsUnsure
        && Surface == other.Surface
        && Facet == other.Facet
        && (Person is not null || other.Person is not null ? Person == other.Person : By == other.By)
        && States.AsSpan().SequenceEqual(other.States.AsSpan())
        && Values.AsSpan().SequenceEqual(other.Values.AsSpan());
}
