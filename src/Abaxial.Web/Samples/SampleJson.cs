using System.Text.Json;
using Abaxial.Data;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>A sample as its entries make it, with the texts that its seals stand for.</summary>
internal sealed record SampleJson
{
    public required string Sample { get; init; }

    public string? Number { get; init; }

    public required TakenInJson? TakenIn { get; init; }

    public required IReadOnlyList<CaseJson> Cases { get; init; }

    public required IReadOnlyList<PhotographJson> Photographs { get; init; }

    public required IReadOnlyList<DiagnosisJson> Diagnoses { get; init; }

    public required IReadOnlyList<MessageJson> Messages { get; init; }

    public string? With { get; init; }

    public DateTimeOffset? SnoozedUntil { get; init; }

    public string? ClosedBecause { get; init; }

    public required IReadOnlyList<string> Erased { get; init; }

    public required IReadOnlyList<ItemJson> Timeline { get; init; }

    /// <summary>The entries that no other has seen.</summary>
    public required IReadOnlyList<string> Heads { get; init; }

    public static SampleJson Of(SampleView view, SealedTexts texts) => new()
    {
        Sample = view.Sample.ToString(),
        Number = view.Number?.ToString(),
        TakenIn = view.TakenIn is { } taken ? TakenInJson.Of(taken, texts) : null,
        Cases = [.. view.Cases.Select(CaseJson.Of)],
        Photographs = [.. view.Photographs.Select(photograph => new PhotographJson(photograph.Entry.ToString(), photograph.Added.Sha256, photograph.Added.MediaType, photograph.Added.Bytes, photograph.Side, photograph.MicrometersPerPixel))],
        Diagnoses = [.. view.Diagnoses.Select(signed => new DiagnosisJson(signed.Entry.ToString(), signed.By, signed.Made, Json.Of(signed.Diagnosis.ToJson())))],
        Messages = [.. view.Messages.Select(noted => new MessageJson(noted.Entry.ToString(), noted.Made, noted.Message.Direction, texts.Find(noted.Message.Text)))],
        With = view.With,
        SnoozedUntil = view.SnoozedUntil,
        ClosedBecause = view.ClosedBecause,
        Erased = view.Erased,
        Timeline = [.. view.Timeline.Select(ItemJson.Of)],
        Heads = [.. view.Heads.Select(head => head.ToString())],
    };
}

/// <summary>What was taken in. Place and says are null where nothing was said, or the person was erased.</summary>
internal sealed record TakenInJson(string Host, string? System, string? Stage, string? Purpose, DateOnly? Noticed, string? Cultivar, Area? Area, JsonElement? Place, string? Submitter, string? Says, DateTimeOffset? Promised)
{
    public static TakenInJson Of(TakenIn taken, SealedTexts texts) => new(
        taken.Host, taken.System, taken.Stage, taken.Purpose, taken.Noticed, taken.Cultivar, taken.Area,
        texts.Find(taken.Place) is { } place ? Json.Of(place) : null, taken.Submitter, texts.Find(taken.Says), taken.Promised);
}

/// <summary>A plant or lot.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Case">The case file that it amounts to; null where the knowledge refuses it.</param>
/// <param name="Problems">Why it is refused.</param>
/// <param name="Looks">The entries that its looks come from, in the order of the case's looks.</param>
internal sealed record CaseJson(int Number, JsonElement? Case, ProblemAt[] Problems, string[] Looks)
{
    public static CaseJson Of(SampleCase part) => new(
        part.Number,
        part.Reading.Case is { } weighed ? Json.Of(CaseWriter.ToUtf8(weighed)) : null,
        [.. part.Reading.Problems.Select(problem => new ProblemAt(problem.At, problem.Found, [.. problem.Accepted]))],
        [.. part.Looks.Select(look => look.ToString())]);
}

internal sealed record PhotographJson(string Entry, string Sha256, string MediaType, long Bytes, string? Side, double? MicrometersPerPixel);

internal sealed record DiagnosisJson(string Entry, string By, DateTimeOffset Made, JsonElement Diagnosis);

/// <summary>A message; its text is null where the person was erased.</summary>
internal sealed record MessageJson(string Entry, DateTimeOffset Made, string Direction, string? Text);

/// <summary>An entry and what became of it.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="State">stands, corrected, struck, without-effect or not-understood.</param>
/// <param name="By">The correction that took its place or struck it.</param>
/// <param name="Holds">What holds in its place, where that is something else than it said.</param>
internal sealed record ItemJson(JsonElement Entry, string State, string? By, JsonElement? Holds)
{
    private static readonly string[] States = ["stands", "corrected", "struck", "without-effect", "not-understood"];

    public static ItemJson Of(TimelineItem item) => new(
        Json.Of(item.Entry.Canonical()), StateOf(item), item.By?.ToString(), item.State == ItemState.Corrected && item.Holds is { } holds ? Json.Of(holds.ToJson()) : null);

    public static string StateOf(TimelineItem item) => States[(int)item.State];
}

/// <summary>The texts that the seals of a sample stand for, as far as they are still there.</summary>
public sealed class SealedTexts(IReadOnlyDictionary<string, string> texts)
{
    public static async Task<SealedTexts> OfAsync(LedgerContext context, SampleView view, CancellationToken cancel)
    {
        string[] seals = [.. view.Timeline.SelectMany(item => (item.Said?.Seals ?? []).Concat(item.Holds?.Seals ?? [])).Select(seal => seal.Sha256).Distinct()];
        if (seals.Length == 0) return new SealedTexts(new Dictionary<string, string>());
        return new SealedTexts(await context.SealedTexts.AsNoTracking().Where(row => seals.Contains(row.Sha256)).ToDictionaryAsync(row => row.Sha256, row => row.Text, cancel));
    }

    public string? Find(Seal? seal) => seal is null ? null : texts.GetValueOrDefault(seal.Sha256);
}

/// <summary>JSON that is there already, to be put into an answer.</summary>
internal static class Json
{
    public static JsonElement Of(string json)
    {
        using var document = JsonDocument.Parse(json);
        return document.RootElement.Clone();
    }

    public static JsonElement Of(byte[] utf8)
    {
        using var document = JsonDocument.Parse(utf8);
        return document.RootElement.Clone();
    }
}
