using System.Collections.Immutable;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>What a sample comes to once its entries are read in order. It is never stored as the truth: the entries are.</summary>
public sealed record SampleView
{
    public required EntryId Sample { get; init; }

    /// <summary>The number that people call it by; null where it has none yet.</summary>
    public SampleNumber? Number { get; init; }

    /// <summary>What was taken in, as corrected; null where that entry has not arrived, was struck or is not understood.</summary>
    public TakenIn? TakenIn { get; init; }

    /// <summary>The plants or lots of the sample, by number; there is at least one where the sample was taken in.</summary>
    public ImmutableArray<SampleCase> Cases { get; init; } = [];

    /// <summary>In the order in which they were added.</summary>
    public ImmutableArray<Photograph> Photographs { get; init; } = [];

    /// <summary>In the order in which they were signed; the last one of a plant or lot is what holds.</summary>
    public ImmutableArray<SignedDiagnosis> Diagnoses { get; init; } = [];

    public ImmutableArray<NotedMessage> Messages { get; init; } = [];

    /// <summary>The person who has to act on it; null where nobody was named.</summary>
    public string? With { get; init; }

    /// <summary>The moment until which it is put aside; null where it is not. Whether that has passed is for those to say who know the time.</summary>
    public DateTimeOffset? SnoozedUntil { get; init; }

    /// <summary>Why it was closed; null where it is open.</summary>
    public string? ClosedBecause { get; init; }

    /// <summary>Persons whose sealed texts were deleted, by id.</summary>
    public ImmutableArray<string> Erased { get; init; } = [];

    /// <summary>Every entry in order: nothing that was ever said is left out.</summary>
    public ImmutableArray<TimelineItem> Timeline { get; init; } = [];

    /// <summary>The entries that no other has seen: what the next author has before them.</summary>
    public ImmutableArray<EntryId> Heads { get; init; } = [];
}

/// <summary>One plant or lot of a sample, for the engine.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Reading">The case, or why the knowledge at hand refuses it.</param>
/// <param name="Looks">The entries that its looks come from, in the order of the case's looks.</param>
public sealed record SampleCase(int Number, CaseReading Reading, ImmutableArray<EntryId> Looks);

/// <summary>A photograph of a sample with what was marked on it.</summary>
public sealed record Photograph(EntryId Entry, PhotographAdded Added, string? Side, double? MicrometersPerPixel);

/// <summary>A signed diagnosis.</summary>
/// <param name="Entry">The entry that signed it.</param>
/// <param name="By">Who signed: of a corrected diagnosis the author of the correction.</param>
/// <param name="Made">When.</param>
/// <param name="Diagnosis">What was signed.</param>
public sealed record SignedDiagnosis(EntryId Entry, string By, DateTimeOffset Made, DiagnosisSigned Diagnosis);

/// <summary>A message of a sample.</summary>
public sealed record NotedMessage(EntryId Entry, DateTimeOffset Made, MessageNoted Message);

/// <summary>What became of an entry.</summary>
public enum ItemState
{
    /// <summary>It holds as it was made.</summary>
    Stands,

    /// <summary>Another entry took its place.</summary>
    Corrected,

    /// <summary>Another entry struck it.</summary>
    Struck,

    /// <summary>A correction that changes nothing: what it names is not before it, or is of another kind.</summary>
    WithoutEffect,

    /// <summary>A newer version's kind or payload, or one that is refused: kept, shown, and of no effect here.</summary>
    NotUnderstood,
}

/// <summary>One entry of a sample's history.</summary>
public sealed record TimelineItem
{
    public required Entry Entry { get; init; }

    public required ItemState State { get; init; }

    /// <summary>The correction that took its place or struck it.</summary>
    public EntryId? By { get; init; }

    /// <summary>What it said when it was made; null where that is not understood.</summary>
    public Payload? Said { get; init; }

    /// <summary>What holds in its place: <see cref="Said"/>, what a correction put there, or null where it was struck or is not understood.</summary>
    public Payload? Holds { get; init; }

    /// <summary>Why the payload was refused, with places in the payload.</summary>
    public ImmutableArray<CaseProblem> Problems { get; init; } = [];
}
