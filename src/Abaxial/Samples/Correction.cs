using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>
/// Takes the place of an earlier entry, which stays to be read. Without a payload the earlier entry is struck. A correction may itself be corrected: struck, it is as if it had
/// not been made; with a payload, that is what the entry it replaced says from then on.
/// </summary>
public sealed record Correction : Payload
{
    private static readonly ImmutableArray<string> Known = ["of", "payload", "replaces", "version", "why"];

    public override string Kind => EntryKind.Correction;

    /// <summary>The entry replaced.</summary>
    public required EntryId Replaces { get; init; }

    public required string Why { get; init; }

    /// <summary>The kind of what is replaced: that of the entry, or of what the correction replaced put in its place. Never <see cref="EntryKind.Correction"/>.</summary>
    public required string Of { get; init; }

    /// <summary>The version of <see cref="Payload"/>; 0 where there is none.</summary>
    public int PayloadVersion { get; init; }

    /// <summary>What stands there from now on, as canonical JSON; null where the entry is struck.</summary>
    public string? Payload { get; init; }

    /// <summary><see cref="Payload"/>, understood; null where it is of a newer version, or the entry is struck.</summary>
    public Payload? Replacement { get; init; }

    public override IEnumerable<Seal> Seals => Replacement?.Seals ?? [];

    /// <summary>A correction that puts something in an entry's place.</summary>
    public static Correction With(EntryId replaces, string why, Payload replacement)
    {
        ArgumentNullException.ThrowIfNull(replacement);
        return new Correction { Replaces = replaces, Why = why, Of = replacement.Kind, PayloadVersion = replacement.Version, Payload = replacement.ToJson(), Replacement = replacement };
    }

    /// <summary>A correction that strikes an entry.</summary>
    public static Correction Striking(EntryId replaces, string kind, string why) => new() { Replaces = replaces, Why = why, Of = kind };

    public override string ToJson() => CanonicalJson.OfObject(
        ("of", Quote(Of)),
        ("payload", Payload),
        ("replaces", Quote(Replaces.ToString())),
        ("version", Payload is null ? null : Digits(PayloadVersion)),
        ("why", Quote(Why)));

    internal static Payload? Read(JsonElement value, string at, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, Known, problems) is not { } members) return null;
        string? payload = members.Raw("payload"), of = members.Id("of", isRequired: true), why = members.Text("why", isRequired: true);
        var replaces = members.EntryId("replaces", isRequired: true);
        long? version = members.Whole("version", 1, int.MaxValue, isRequired: payload is not null);
        if (payload is null) members.RefuseMember("version", "leave it out where nothing is put in the entry's place");
        if (of is EntryKind.Correction or EntryKind.PersonErased) problems.Add(members.Below("of"), of, "the kind of what is put right; an erasing cannot be taken back");
        if (of is null || why is null || replaces is null) return null;
        var replacement = payload is null || version is null ? null : EntryKind.Read(of, (int)version, members.Find("payload")!.Value, members.Below("payload"), problems);
        return new Correction { Replaces = replaces.Value, Why = why, Of = of, PayloadVersion = (int)(version ?? 0), Payload = payload, Replacement = replacement };
    }
}
