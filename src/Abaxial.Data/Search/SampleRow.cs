using Abaxial.Samples;

namespace Abaxial.Data.Search;

/// <summary>
/// A sample in one line, for lists: a cached fold, written with the entries that it comes from and never the truth. What its members mean stands at those of
/// <see cref="SampleSummary"/>.
/// </summary>
public sealed class SampleRow
{
    /// <summary>The sample's place in every list, newest first: the leading bits of its id, or the next number that is free.</summary>
    public required long Key { get; init; }

    public required string Sample { get; init; }

    public string? Number { get; set; }

    public string? Host { get; set; }

    public string? System { get; set; }

    public string? Purpose { get; set; }

    public string? Area { get; set; }

    public string? Submitter { get; set; }

    public string? TakenBy { get; set; }

    public string? With { get; set; }

    /// <summary>To a millisecond.</summary>
    public DateTimeOffset Taken { get; set; }

    /// <summary>To a millisecond.</summary>
    public DateTimeOffset? Promised { get; set; }

    /// <summary>To a millisecond.</summary>
    public DateTimeOffset? SnoozedUntil { get; set; }

    public bool IsOpen { get; set; }

    /// <summary>A word of the fixed interface, as open or likely.</summary>
    public string? Standing { get; set; }

    public double? LateBlight { get; set; }

    public string? Leader { get; set; }

    public int? LeaderPercent { get; set; }

    /// <summary>Ids of causes with a space between; empty where nothing listed was signed.</summary>
    public string Diagnosed { get; set; } = "";

    public int Photographs { get; set; }

    public string? FirstPhotograph { get; set; }

    public int Looks { get; set; }

    public double Waiting { get; set; }

    /// <summary>How many entries the row was folded from.</summary>
    public int Entries { get; set; }

    /// <summary>Hash of the knowledge that the sample was read and weighed with.</summary>
    public string Knowledge { get; set; } = "";
}

/// <summary>Which sample seals a text: finds the rows that a text about a person is in.</summary>
public sealed class SampleSealRow
{
    public required string Sha256 { get; init; }

    public required string Sample { get; init; }

    public required string Person { get; init; }
}

/// <summary>A word of the name that a person is shown by. Names are looked up when somebody searches: no row holds one.</summary>
public sealed class PersonWordRow
{
    public required string Word { get; init; }

    public required string Person { get; init; }
}
