using System.Collections.Immutable;
using Abaxial.Weighing;

namespace Abaxial.Data.Search;

/// <summary>Which samples are asked for, a page at a time. What is left out does not narrow.</summary>
public sealed record SampleQuery
{
    /// <summary>Samples of one page.</summary>
    public const int MostPerPage = 200;

    /// <summary>Words of <see cref="Text"/> that count; further ones are left out.</summary>
    public const int MostWords = 16;

    /// <summary>Words all of which are in the sample, each at least as the beginning of a word; anything whatever may stand here.</summary>
    public string? Text { get; init; }

    /// <summary>Open samples or closed ones.</summary>
    public bool? Open { get; init; }

    public Standing? Standing { get; init; }

    /// <summary>Id of the person who has to act on it.</summary>
    public string? With { get; init; }

    public string? Host { get; init; }

    /// <summary>Id of the person who sent it.</summary>
    public string? Submitter { get; init; }

    /// <summary>Whose samples are seen at all; null for all of them.</summary>
    public SampleScope? Scope { get; init; }

    /// <summary>The costliest to leave waiting first, of the open samples alone; otherwise the newest first.</summary>
    public bool ByWaiting { get; init; }

    /// <summary>Where the page before ended; null for the first page.</summary>
    public SampleCursor? After { get; init; }

    /// <summary>Samples of the page, from 1 to <see cref="MostPerPage"/>.</summary>
    public int Limit { get; init; } = 50;
}

/// <summary>What a person may see: what they sent or took in, and what comes from the areas.</summary>
/// <param name="Person">Id of the person.</param>
/// <param name="Areas">Names of areas; at most 50.</param>
public sealed record SampleScope(string Person, ImmutableArray<string> Areas);

/// <summary>A page of samples.</summary>
/// <param name="Rows">The samples, in the order asked for.</param>
/// <param name="Next">Where the next page begins; null where there is none.</param>
public sealed record SamplePage(ImmutableArray<SampleRow> Rows, SampleCursor? Next);
