using System.Collections.Immutable;

namespace Abaxial.Files.Trials;

/// <summary>A case with what must come out of it.</summary>
public sealed record Trial
{
    public required string Id { get; init; }

    /// <summary>The file it stands in, without its folder.</summary>
    public required string File { get; init; }

    /// <summary>The line it starts on, from 1; 0 for a file that holds one case only.</summary>
    public required int Line { get; init; }

    /// <summary>What was seen, in a sentence.</summary>
    public string Story { get; init; } = "";

    /// <summary>Publications, or <c>common practice</c>, or <c>judgement</c>.</summary>
    public ImmutableArray<string> Sources { get; init; } = [];

    /// <summary>Ids of causes, one of which must lead; empty where none is asked for.</summary>
    public ImmutableArray<string> Leads { get; init; } = [];

    /// <summary>Greatest probability of late blight, 0 to 1.</summary>
    public double? AtMost { get; init; }

    /// <summary>Least probability of late blight, 0 to 1.</summary>
    public double? AtLeast { get; init; }

    /// <summary>Standings allowed; empty where any is.</summary>
    public ImmutableArray<string> Standings { get; init; } = [];

    /// <summary>Advice allowed; empty where any is.</summary>
    public ImmutableArray<string> Advice { get; init; } = [];

    /// <summary>Advice that must not be given.</summary>
    public ImmutableArray<string> AdviceNot { get; init; } = [];

    /// <summary>The case file in UTF-8.</summary>
    public required ReadOnlyMemory<byte> Case { get; init; }
}
