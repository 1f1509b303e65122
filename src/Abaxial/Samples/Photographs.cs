using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>A photograph, by the SHA-256 of its bytes.</summary>
/// <param name="Sha256">64 lower-case hexadecimal digits.</param>
/// <param name="MediaType">As image/jpeg.</param>
/// <param name="Bytes">How many bytes it has.</param>
public sealed record PhotographAdded(string Sha256, string MediaType, long Bytes) : Payload
{
    private static readonly ImmutableArray<string> Known = ["bytes", "mediaType", "sha256"];
    private static readonly ImmutableArray<string> MediaTypes = ["image/jpeg", "image/png", "image/webp", "image/heic"];

    public override string Kind => EntryKind.Photograph;

    public override string ToJson() => CanonicalJson.OfObject(("bytes", Digits(Bytes)), ("mediaType", Quote(MediaType)), ("sha256", Quote(Sha256)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        string? sha256 = members.Sha256("sha256", isRequired: true), type = members.Word("mediaType", MediaTypes.AsSpan(), isRequired: true);
        long? bytes = members.Whole("bytes", 1, 1L << 40, isRequired: true);
        return sha256 is null || type is null || bytes is null ? null : new PhotographAdded(sha256, type, bytes.Value);
    }
}

/// <summary>What a photograph shows: which side of a leaf, and its scale. A later mark of the same photograph adds to the earlier, and takes the place of what it says again.</summary>
public sealed record PhotographMarked : Payload
{
    private static readonly ImmutableArray<string> Known = ["micrometersPerPixel", "sha256", "side"];

    public override string Kind => EntryKind.PhotographMarked;

    public required string Sha256 { get; init; }

    /// <summary>upper or lower.</summary>
    public string? Side { get; init; }

    /// <summary>Micrometers that one pixel of the original spans.</summary>
    public double? MicrometersPerPixel { get; init; }

    public override string ToJson() => CanonicalJson.OfObject(("micrometersPerPixel", Digits(MicrometersPerPixel)), ("sha256", Quote(Sha256)), ("side", Quote(Side)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        if (members.Present("micrometersPerPixel", "side").Length == 0) problems.AddMissing(at, "side or micrometersPerPixel");
        return new PhotographMarked
        {
            MicrometersPerPixel = members.Number("micrometersPerPixel", CaseRange.Positive),
            Sha256 = members.Sha256("sha256", isRequired: true) ?? "",
            Side = members.Word("side", ["upper", "lower"]),
        };
    }
}
