using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.Data;

/// <summary>Something to be written into the ledger; the ledger adds what makes an entry of it.</summary>
public sealed record EntryDraft
{
    /// <summary>The id that it shall have, so that sending it twice writes it once; null where the ledger may choose.</summary>
    public EntryId? Id { get; init; }

    /// <summary>The sample it belongs to; null where it takes one in.</summary>
    public EntryId? Sample { get; init; }

    public required string Author { get; init; }

    /// <summary>The moment it happened; null for now. Where it is over a minute ago the ledger notes that it was entered later.</summary>
    public DateTimeOffset? Made { get; init; }

    public required Payload Payload { get; init; }

    /// <summary>The newest entries of the sample that the author had before them; null where they had all that are there.</summary>
    public ImmutableArray<EntryId>? Heads { get; init; }

    /// <summary>The texts whose seals the payload holds.</summary>
    public ImmutableArray<SealedText> Texts { get; init; } = [];
}

/// <summary>What became of an entry that was to be written.</summary>
public sealed record Appended
{
    /// <summary>The entry as it is in the ledger, on the disk; null where it was refused.</summary>
    public Entry? Entry { get; init; }

    /// <summary>It had been there already, the same.</summary>
    public bool WasThere { get; init; }

    /// <summary>Why it was refused; empty otherwise.</summary>
    public ImmutableArray<CaseProblem> Problems { get; init; } = [];

    [MemberNotNullWhen(false, nameof(Entry))]
    public bool IsRefused => Entry is null;

    internal static Appended Refuse(string at, string found, params ReadOnlySpan<string> accepted) => new() { Problems = [new CaseProblem(at, found, [.. accepted])] };
}

/// <summary>What became of entries that came from elsewhere.</summary>
/// <param name="Added">How many were new.</param>
/// <param name="WereThere">How many had been there already.</param>
/// <param name="Refused">Those that were refused, by their place in what was sent, from 0.</param>
public sealed record Merged(int Added, int WereThere, ImmutableArray<(int Index, ImmutableArray<CaseProblem> Problems)> Refused);

/// <summary>What became of the wish to erase a person.</summary>
/// <param name="Samples">The samples that got an entry that says so.</param>
/// <param name="Texts">Texts that were deleted.</param>
/// <param name="IsWrittenOver">
/// The texts are gone from the bytes of the database files too; false where a long reader kept the log from being cut, which the next erasing, backup or opening makes good.
/// </param>
public sealed record Erased(ImmutableArray<EntryId> Samples, int Texts, bool IsWrittenOver);
