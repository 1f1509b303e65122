using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.Web.Samples;

/// <summary>What somebody wants to say, with the texts about people that belong to it.</summary>
internal sealed record Stated(Payload Payload, ImmutableArray<SealedText> Texts);

/// <summary>
/// Reads payloads as people and programs send them: as the ledger holds them, but with plain texts where it holds seals. What the server knows better than whoever sends, it does not ask for:
/// the coarse area of an exact place, and what the engine says beside a diagnosis.
/// </summary>
internal static class PlainPayload
{
    private static readonly ImmutableArray<string> InPlace = ["latitude", "longitude", "uncertaintyMeters"];

    /// <summary>Reads one; null where problems were noted.</summary>
    /// <param name="kind">The kind of entry, at the newest version.</param>
    /// <param name="value">What was sent.</param>
    /// <param name="at">Where it stands.</param>
    /// <param name="sealing">Seals the texts.</param>
    /// <param name="problems">Where problems are noted.</param>
    public static Stated? Read(string kind, JsonElement value, string at, Sealing sealing, CaseProblems problems)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            problems.AddWrongKind(at, value, "an object");
            return null;
        }

        int before = problems.Count;
        var said = kind switch
        {
            EntryKind.TakenIn => ReadTakenIn(value, at, sealing, problems),
            EntryKind.Message => ReadMessage(value, at, sealing, problems),
            EntryKind.Diagnosis => ReadDiagnosis(value, at, sealing, problems),
            _ => EntryKind.Read(kind, EntryKind.NewestVersionOf(kind), value, at, problems),
        };
        return said is null || problems.Count > before ? null : new Stated(said, sealing.Texts);
    }

    private static TakenIn? ReadTakenIn(JsonElement value, string at, Sealing sealing, CaseProblems problems)
    {
        if (ReadWithout(EntryKind.TakenIn, value, at, ["place", "says"], problems) is not TakenIn taken) return null;
        var place = ReadPlace(value, CaseProblems.Below(at, "place"), problems);
        string? says = Text(value, at, "says", problems);
        if (place is null && says is null) return taken;
        string sender = taken.Submitter ?? sealing.Sender;
        return taken with
        {
            Submitter = sender,
            Area = taken.Area ?? (place is null ? null : CaseIntake.AreaOf(place)),
            Place = place is null ? null : sealing.Seal(sender, CaseIntake.TextOf(place)),
            Says = says is null ? null : sealing.Seal(sender, says),
        };
    }

    private static Place? ReadPlace(JsonElement value, string at, CaseProblems problems)
    {
        if (!value.TryGetProperty("place", out var given) || CaseMembers.Of(given, at, InPlace, problems) is not { } place) return null;
        double? latitude = place.Number("latitude", new CaseRange(-90, 90), isRequired: true), longitude = place.Number("longitude", new CaseRange(-180, 180), isRequired: true);
        double? uncertainty = place.Number("uncertaintyMeters", new CaseRange(0, double.PositiveInfinity));
        return latitude is null || longitude is null ? null : new Place(latitude.Value, longitude.Value, uncertainty);
    }

    private static MessageNoted? ReadMessage(JsonElement value, string at, Sealing sealing, CaseProblems problems)
    {
        if (CaseMembers.Of(value, at, ["direction", "text"], problems) is not { } members) return null;
        string? direction = members.Word("direction", ["in", "out"], isRequired: true), text = Text(value, at, "text", problems);
        if (!value.TryGetProperty("text", out _)) problems.AddMissing(members.Below("text"), "text that is not blank");
        return direction is null || text is null ? null : new MessageNoted(direction, sealing.Seal(sealing.Sender, text));
    }

    /// <summary>What the engine said is put in by the server: whoever signs has no say in it.</summary>
    private static DiagnosisSigned? ReadDiagnosis(JsonElement value, string at, Sealing sealing, CaseProblems problems)
    {
        if (value.TryGetProperty("engine", out var engine))
        {
            problems.Add(CaseProblems.Below(at, "engine"), engine, "leave it out");
            return null;
        }

        int number = value.TryGetProperty("case", out var written) && written.ValueKind == JsonValueKind.Number && written.TryGetInt32(out int read) ? read : 0;
        if (sealing.EngineOf(number) is not { } said)
        {
            problems.Add(CaseProblems.Below(at, "case"), number == 0 ? "(missing)" : $"{number}", "the number of a plant or lot of the sample that can be weighed");
            return null;
        }

        var whole = JsonObject.Create(value)!;
        whole["engine"] = new JsonObject { ["knowledge"] = said.Knowledge, ["leader"] = said.Leader, ["standing"] = said.Standing };
        using var document = JsonDocument.Parse(whole.ToJsonString());
        return (DiagnosisSigned?)EntryKind.Read(EntryKind.Diagnosis, 1, document.RootElement, at, problems);
    }

    /// <summary>Reads a payload but for the members that hold plain text here.</summary>
    private static Payload? ReadWithout(string kind, JsonElement value, string at, ReadOnlySpan<string> names, CaseProblems problems)
    {
        var rest = JsonObject.Create(value)!;
        foreach (string name in names) rest.Remove(name);
        using var document = JsonDocument.Parse(rest.ToJsonString());
        return EntryKind.Read(kind, EntryKind.NewestVersionOf(kind), document.RootElement, at, problems);
    }

    private static string? Text(JsonElement value, string at, string name, CaseProblems problems)
    {
        if (!value.TryGetProperty(name, out var given)) return null;
        string form = $"1 to {SealedText.Longest} characters that are not all blank";
        if (given.ValueKind == JsonValueKind.String && given.GetString() is { Length: <= SealedText.Longest } text && !string.IsNullOrWhiteSpace(text)) return text;
        problems.AddWrongKind(CaseProblems.Below(at, name), given, form);
        return null;
    }
}
