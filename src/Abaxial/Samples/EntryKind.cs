using System.Collections.Frozen;
using System.Text.Json;
using Abaxial.Weighing;

namespace Abaxial.Samples;

/// <summary>The words for what an entry says. A word, once released, keeps its meaning; a changed payload gets a new version.</summary>
public static class EntryKind
{
    public const string TakenIn = "taken-in";
    public const string Numbered = "numbered";
    public const string Look = "look";
    public const string PriorFactor = "prior-factor";
    public const string Photograph = "photograph";
    public const string PhotographMarked = "photograph-marked";
    public const string Diagnosis = "diagnosis";
    public const string Message = "message";
    public const string HandedOver = "handed-over";
    public const string Snoozed = "snoozed";
    public const string Closed = "closed";
    public const string Reopened = "reopened";
    public const string Correction = "correction";
    public const string PersonErased = "person-erased";

    /// <summary>Every kind with the reader of its payload. All are at their first version.</summary>
    private static readonly FrozenDictionary<string, ReadPayload> Readers = new Dictionary<string, ReadPayload>(StringComparer.Ordinal)
    {
        [TakenIn] = Samples.TakenIn.Read,
        [Numbered] = Samples.Numbered.Read,
        [Look] = LookMade.Read,
        [PriorFactor] = PriorFactorStated.Read,
        [Photograph] = PhotographAdded.Read,
        [PhotographMarked] = Samples.PhotographMarked.Read,
        [Diagnosis] = DiagnosisSigned.Read,
        [Message] = MessageNoted.Read,
        [HandedOver] = Samples.HandedOver.Read,
        [Snoozed] = Samples.Snoozed.Read,
        [Closed] = Samples.Closed.Read,
        [Reopened] = Samples.Reopened.Read,
        [Correction] = Samples.Correction.Read,
        [PersonErased] = Samples.PersonErased.Read,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Every kind that this version knows.</summary>
    public static IEnumerable<string> All => Readers.Keys.Order(StringComparer.Ordinal);

    /// <summary>The newest version of a kind's payload that is known here; 0 for a kind that is not known.</summary>
    public static int NewestVersionOf(string kind) => Readers.ContainsKey(kind) ? 1 : 0;

    /// <summary>Reads a payload of its kind; null where problems were noted, or where the kind or version is not known here.</summary>
    internal static Payload? Read(string kind, int version, JsonElement value, string at, CaseProblems problems)
    {
        if (version > NewestVersionOf(kind)) return null;
        int before = problems.Count;
        var read = Readers[kind](value, at, problems);
        return problems.Count > before ? null : read;
    }

    internal delegate Payload? ReadPayload(JsonElement value, string at, CaseProblems problems);
}
