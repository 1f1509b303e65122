using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// Reads case files. Nothing is guessed and nothing is dropped: what is not understood refuses the case, with the place, what was found and what would be
/// accepted, for as many as <see cref="CaseLimits.Problems"/> problems at once.
/// </summary>
public static class CaseReader
{
    /// <summary>The value of a case's member <c>format</c>.</summary>
    public const string Format = "abaxial-case/1";

    private static readonly ImmutableArray<string> Known = ["format", "host", "system", "stage", "purpose", "noticed", "place", "priorFactors", "looks"];
    private static readonly ImmutableArray<string> KnownInPlace = ["latitude", "longitude", "uncertaintyMeters"];

    /// <summary>Reads one case.</summary>
    /// <param name="utf8">The JSON text in UTF-8, of any content whatever: nothing in it makes this method throw.</param>
    /// <param name="knowledge">The knowledge that its ids are looked up in.</param>
    public static CaseReading Read(ReadOnlySpan<byte> utf8, KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        if (utf8.Length > CaseLimits.Bytes) return CaseLimits.TooLong;
        var problems = new CaseProblems();
        if (!CaseForm.Check(utf8, problems)) return CaseReading.Refuse(problems.ToImmutable());

        var reader = new Utf8JsonReader(utf8, CaseForm.Options);
        using var document = JsonDocument.ParseValue(ref reader);
        var read = ReadCase(document.RootElement, knowledge, problems);
        return problems.Count > 0 ? CaseReading.Refuse(problems.ToImmutable()) : CaseReading.Accept(read!);
    }

    private static Case? ReadCase(JsonElement root, KnowledgeBase knowledge, CaseProblems problems)
    {
        if (HasOtherFormat(root, problems)) return null;
        if (CaseMembers.Of(root, "", Known, problems) is not { } members) return null;
        var rules = knowledge.Document;
        members.Word("format", [Format], isRequired: true);
        string? host = members.Word("host", rules.Hosts, isRequired: true);
        var read = new Case
        {
            Knowledge = knowledge,
            Host = host ?? "",
            System = members.Word("system", rules.Systems),
            Stage = members.Word("stage", rules.Stages),
            Purpose = members.Word("purpose", rules.Purposes),
            Noticed = ReadNoticed(members),
            Place = ReadPlace(members),
        };
        return read with
        {
            PriorFactors = PriorFactorReader.Read(members, knowledge, host),
            Looks = LooksReader.Read(members, knowledge, host),
        };
    }

    /// <summary>Of a text in another format, nothing else can be judged.</summary>
    private static bool HasOtherFormat(JsonElement root, CaseProblems problems)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("format", out var format)) return false;
        if (format.ValueKind != JsonValueKind.String || format.ValueEquals(Format)) return false;
        problems.Add("/format", format.GetString()!, Format);
        return true;
    }

    private static DateOnly? ReadNoticed(CaseMembers members)
    {
        if (members.Find("noticed") is not { } value) return null;
        if (value.ValueKind == JsonValueKind.String && IsoTime.TryDate(value.GetString(), out var date)) return date;
        members.Problems.Add(members.Below("noticed"), value, "a date as 2026-07-14");
        return null;
    }

    private static Place? ReadPlace(CaseMembers members)
    {
        if (members.Find("place") is not { } value || CaseMembers.Of(value, members.Below("place"), KnownInPlace, members.Problems) is not { } place) return null;
        double? latitude = place.Number("latitude", new CaseRange(-90, 90), isRequired: true);
        double? longitude = place.Number("longitude", new CaseRange(-180, 180), isRequired: true);
        double? uncertainty = place.Number("uncertaintyMeters", new CaseRange(0, double.PositiveInfinity));
        return latitude is null || longitude is null ? null : new Place(latitude.Value, longitude.Value, uncertainty);
    }
}
