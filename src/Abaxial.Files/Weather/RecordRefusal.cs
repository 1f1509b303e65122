using System.Collections.Immutable;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>Why a file was not read: where, what stands there, what would do.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">The line, from 1; 0 where it is the file as a whole.</param>
/// <param name="Column">The column by its name; null where it is the whole line.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Accepted">What would do.</param>
public sealed record RecordRefusal(string File, long Line, string? Column, string Found, ImmutableArray<string> Accepted);

/// <summary>A station's record, or why it was refused.</summary>
public sealed record StationReading
{
    private StationReading(StationRecord? record, RecordRefusal? refusal, ImmutableArray<string> unknown)
    {
        Record = record;
        Refusal = refusal;
        UnknownColumns = unknown;
    }

    /// <summary>The record as it was read, before quality control; null where it was refused.</summary>
    public StationRecord? Record { get; }

    /// <summary>Why it was refused; null where it was not.</summary>
    public RecordRefusal? Refusal { get; }

    /// <summary>Columns that nothing is known of; they were not read.</summary>
    public ImmutableArray<string> UnknownColumns { get; }

    internal static StationReading Of(StationRecord record, ImmutableArray<string> unknown) => new(record, null, unknown);

    internal static StationReading Refused(RecordRefusal refusal) => new(null, refusal, []);
}

/// <summary>Leaves a reader at the place that cannot be read; turned into a <see cref="RecordRefusal"/> where reading began.</summary>
internal sealed class RefusedException(long line, string? column, string found, params ImmutableArray<string> accepted) : Exception
{
    private const int Shown = 80;

    public long Line => line;

    public RecordRefusal In(string file) => new(file, line, column, Short(found), accepted);

    private static string Short(string text)
    {
        string cut = text.Length <= Shown ? text : string.Concat(text.AsSpan(0, Shown - 1), "…");
        return string.Concat(cut.Select(sign => char.IsControl(sign) ? '·' : sign));
    }
}
