namespace Abaxial.Data;

/// <summary>An entry as it is stored. The text is the truth; what stands beside it is there to be found by, and is held against it by the check.</summary>
public sealed class EntryRow
{
    /// <summary>In the order in which entries were received here.</summary>
    public long Row { get; init; }

    public required string Id { get; init; }

    public required string Sample { get; init; }

    public required string Device { get; init; }

    /// <summary>Place in the device's chain, from 1.</summary>
    public required long Place { get; init; }

    public required string Kind { get; init; }

    /// <summary>The entry as canonical JSON.</summary>
    public required string Text { get; init; }

    /// <summary>SHA-256 of the text.</summary>
    public required string Hash { get; init; }

    /// <summary>When it was received here; information only.</summary>
    public required DateTimeOffset Received { get; init; }
}

/// <summary>The end of a device's chain: shows that its last entries are all there.</summary>
public sealed class ChainRow
{
    public required string Device { get; init; }

    /// <summary>Place of the last entry.</summary>
    public required long Place { get; set; }

    /// <summary>Hash of the last entry.</summary>
    public required string Hash { get; set; }
}

/// <summary>A text about a person, kept outside the chain so that it can be deleted.</summary>
public sealed class SealedRow
{
    /// <summary>The seal: SHA-256 of salt, person and text.</summary>
    public required string Sha256 { get; init; }

    public required string Person { get; init; }

    public required byte[] Salt { get; init; }

    public required string Text { get; init; }
}

/// <summary>A person whose texts were deleted: texts that arrive later are not kept.</summary>
public sealed class ErasureRow
{
    public required string Person { get; init; }
}

/// <summary>A number that a sample was called by. Stores that were apart may have given one number to two samples.</summary>
public sealed class NumberRow
{
    public required string Number { get; init; }

    public required string Sample { get; init; }

    /// <summary>The last two digits of the year.</summary>
    public required int Year { get; init; }

    public required int Running { get; init; }
}

/// <summary>A photograph that lies in the folder.</summary>
public sealed class PhotographRow
{
    public required string Sha256 { get; init; }

    public required long Bytes { get; init; }

    /// <summary>When it was received here; information only.</summary>
    public required DateTimeOffset Received { get; init; }
}

/// <summary>What the store is: one row.</summary>
public sealed class StoreRow
{
    public required int Id { get; init; }

    /// <summary>The id of the device as which this store writes. A restored copy gets a new one: two stores must not write one chain.</summary>
    public required string Device { get; set; }

    /// <summary>Every sample has its row in the lists; false where the store is of a version that knew none, until it was opened.</summary>
    public bool HasSampleRows { get; set; }
}
