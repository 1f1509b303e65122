using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>What an entry says, understood.</summary>
public abstract record Payload
{
    private protected Payload()
    {
    }

    /// <summary>The kind of entry that says such things, one of <see cref="EntryKind"/>'s words.</summary>
    public abstract string Kind { get; }

    /// <summary>The version of <see cref="ToJson"/>.</summary>
    public int Version => EntryKind.NewestVersionOf(Kind);

    /// <summary>The seals of the texts about people that belong to it.</summary>
    public virtual IEnumerable<Seal> Seals => [];

    /// <summary>The payload as canonical JSON.</summary>
    public abstract string ToJson();

    private protected static string? Quote(string? text) => text is null ? null : CanonicalJson.Of(text);

    private protected static string? Digits(double? number) => number is { } known ? CanonicalJson.Of(known) : null;
}

/// <summary>What an entry's payload was read as.</summary>
public sealed record PayloadReading
{
    /// <summary>What is said; null where it was not understood.</summary>
    public Payload? Payload { get; init; }

    /// <summary>The kind is not known here, or the payload's version is newer than this program.</summary>
    public bool IsNewer { get; init; }

    /// <summary>Why a payload of a known kind and version is refused, with places in the payload.</summary>
    public ImmutableArray<CaseProblem> Problems { get; init; } = [];
}

/// <summary>Reads what entries say.</summary>
public static class PayloadReader
{
    /// <summary>Reads the payload of an entry. What is not understood stays in the entry as it is.</summary>
    public static PayloadReading Read(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Read(entry.Kind, entry.Version, entry.Payload);
    }

    /// <summary>Reads the payload of a kind and version.</summary>
    public static PayloadReading Read(string kind, int version, string json)
    {
        if (version > EntryKind.NewestVersionOf(kind)) return new PayloadReading { IsNewer = true };
        byte[] utf8 = Encoding.UTF8.GetBytes(json);
        var problems = new CaseProblems();
        if (!CaseForm.Check(utf8, problems) || problems.Count > 0) return new PayloadReading { Problems = problems.ToImmutable() };
        var reader = new Utf8JsonReader(utf8, CaseForm.Options);
        using var document = JsonDocument.ParseValue(ref reader);
        var payload = EntryKind.Read(kind, version, document.RootElement, "", problems);
        bool isNewer = payload is Correction { Replacement: null, Payload: not null };
        return isNewer ? new PayloadReading { Payload = payload, IsNewer = true } : new PayloadReading { Payload = payload, Problems = problems.ToImmutable() };
    }
}
