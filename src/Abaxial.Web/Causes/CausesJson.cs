using Abaxial.Knowledge;

namespace Abaxial.Web.Causes;

/// <summary>A cause in a list.</summary>
internal sealed record CauseLine(string Id, string Name, string? Scientific, string Kind, IReadOnlyList<string> Hosts, bool IsRegulated);

/// <summary>Every cause, with the knowledge that it is from.</summary>
internal sealed record CausesJson(string Knowledge, IReadOnlyList<CauseLine> Causes);

/// <summary>A cause with all that is known of it.</summary>
internal sealed record CauseJson
{
    public required string Knowledge { get; init; }

    public required CauseLine Cause { get; init; }

    public required IReadOnlyList<string> OlderNames { get; init; }

    public string? Eppo { get; init; }

    public required string Advice { get; init; }

    public required IReadOnlyList<RowJson> Rows { get; init; }
}

/// <summary>What a cause shows of one character.</summary>
/// <param name="Character">Id of the character.</param>
/// <param name="Facet">What was measured, or where a streaming came from.</param>
/// <param name="Host">The host that it holds for; null for every host of the cause.</param>
/// <param name="Chances">By state, how often it is truly there in good conditions; empty for a measured character.</param>
/// <param name="Range">Of a measured character, in micrometers.</param>
/// <param name="Strength">How many cases it is worth.</param>
/// <param name="Says">A sentence for people.</param>
/// <param name="Source">Where it is from, in words.</param>
internal sealed record RowJson(string Character, string? Facet, string? Host, IReadOnlyDictionary<string, double> Chances, MeasuredRange? Range, double Strength, string Says, string Source);

/// <summary>Something to look at.</summary>
internal sealed record CharacterJson(
    string Id,
    string Name,
    IReadOnlyList<StateJson> States,
    bool IsMany,
    bool IsMeasured,
    string? Organ,
    IReadOnlyList<string> Hosts,
    IReadOnlyList<string> Ways,
    IReadOnlyList<string> Surfaces,
    IReadOnlyList<string> From,
    double Minutes,
    double WaitHours);

/// <summary>One thing that a look can show.</summary>
internal sealed record StateJson(string Id, string Name, bool IsEmpty);

/// <summary>Everything to look at, with the knowledge that it is from.</summary>
internal sealed record CharactersJson(string Knowledge, IReadOnlyList<CharacterJson> Characters);
