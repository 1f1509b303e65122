using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Abaxial.Data;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Samples;

/// <summary>What became of entries that a device sent.</summary>
/// <param name="Added">How many were new.</param>
/// <param name="WereThere">How many had been there already.</param>
/// <param name="Refused">Those that were refused, by their place in what was sent, from 0.</param>
internal sealed record MergedJson(int Added, int WereThere, IReadOnlyList<RefusedJson> Refused);

/// <summary>An entry that was refused.</summary>
internal sealed record RefusedJson(int Index, ProblemAt[] Problems);

/// <summary>
/// Takes in what a device wrote while it was away: entries of its own chain, with the texts that they seal. Each is refused or taken by itself; what was taken is not sent again. A device
/// speaks for the person who uses it: it brings their entries, of kinds that they may write, to samples that they may see or took in themselves.
/// </summary>
internal static class MergeApi
{
    /// <summary>Bytes of one request: 8 MiB.</summary>
    public const int Bytes = 8 << 20;

    private const int MostEntries = 2_000;

    private static readonly ImmutableArray<string> Known = ["entries", "texts"];
    private static readonly ImmutableArray<string> InText = ["person", "salt", "text"];

    public static async Task<Results<Ok<MergedJson>, ProblemHttpResult>> Merge(JsonBody body, Visitor visitor, Ledger ledger, CancellationToken cancel)
    {
        if (body.Refusal is { } refusal) return refusal;
        if (CaseMembers.Of(body.Root, "", Known, body.Problems) is not { } members) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);
        var entries = members.List("entries", isRequired: true);
        var texts = TextsOf(members);
        if (entries?.GetArrayLength() > MostEntries) body.Problems.Add("/entries", $"{entries.Value.GetArrayLength()} entries", $"at most {MostEntries}");
        if (body.Problems.Count > 0) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);

        var rights = await MergeRights.OfAsync(ledger, visitor, entries!.Value, cancel);
        List<ReadOnlyMemory<byte>> taken = [];
        List<int> places = [];
        var refused = new List<RefusedJson>();
        foreach (var (entry, index) in entries.Value.EnumerateArray().Select((entry, index) => (entry, index)))
        {
            // The form is canonical already or becomes so: the hash is taken over it, not over what was sent.
            byte[] utf8 = Encoding.UTF8.GetBytes(CanonicalJson.Of(entry));
            if (rights.Refusal(utf8) is { } problems)
            {
                refused.Add(Of(index, problems));
                continue;
            }

            taken.Add(utf8);
            places.Add(index);
        }

        var merged = await ledger.MergeAsync(taken, texts, cancel);
        refused.AddRange(merged.Refused.Select(one => Of(places[one.Index], one.Problems)));
        return TypedResults.Ok(new MergedJson(merged.Added, merged.WereThere, [.. refused.OrderBy(one => one.Index)]));
    }

    private static RefusedJson Of(int index, ImmutableArray<CaseProblem> problems) => new(index, [.. problems.Select(problem => new ProblemAt(problem.At, problem.Found, [.. problem.Accepted]))]);

    private static List<SealedText> TextsOf(CaseMembers members)
    {
        var texts = new List<SealedText>();
        if (members.List("texts") is not { } list) return texts;
        foreach (var (item, index) in list.EnumerateArray().Select((item, index) => (item, index)))
        {
            if (members.Problems.IsFull) break;
            string at = CaseProblems.Below(members.Below("texts"), index);
            if (CaseMembers.Of(item, at, InText, members.Problems) is not { } one) continue;
            string? person = one.Id("person", isRequired: true), salt = one.Text("salt", isRequired: true), text = one.Text("text", isRequired: true);
            if (person is null || salt is null || text is null) continue;
            byte[] bytes = new byte[SealedText.SaltLength];
            var sealedText = new SealedText(person, bytes, text);
            if (!Convert.TryFromBase64String(salt, bytes, out int length) || length != SealedText.SaltLength) members.Problems.Add(one.Below("salt"), salt, $"{SealedText.SaltLength} bytes in base 64");
            else if (sealedText.Fault() is { } fault) members.Problems.Add(at, fault.Found, fault.Accepted);
            else texts.Add(sealedText);
        }

        return texts;
    }
}

/// <summary>What somebody may bring from a device.</summary>
internal sealed class MergeRights
{
    private readonly Visitor visitor;
    private readonly string store;
    private readonly HashSet<string> samples;
    private readonly HashSet<string> others;

    private MergeRights(Visitor visitor, string store, HashSet<string> samples, HashSet<string> others)
    {
        this.visitor = visitor;
        this.store = store;
        this.samples = samples;
        this.others = others;
    }

    public static async Task<MergeRights> OfAsync(Ledger ledger, Visitor visitor, JsonElement entries, CancellationToken cancel)
    {
        var named = entries.EnumerateArray()
            .Select(entry => entry.ValueKind == JsonValueKind.Object && entry.TryGetProperty("sample", out var sample) && sample.ValueKind == JsonValueKind.String ? sample.GetString()! : "")
            .Where(sample => EntryId.TryParse(sample, out _)).Distinct().ToList();
        await using var context = ledger.Ask();
        string store = (await context.Store.AsNoTracking().SingleAsync(cancel)).Device;
        var rows = await context.Samples.AsNoTracking().Where(row => named.Contains(row.Sample)).ToListAsync(cancel);
        return new MergeRights(visitor, store, [.. rows.Where(visitor.Sees).Select(row => row.Sample)], [.. rows.Where(row => !visitor.Sees(row)).Select(row => row.Sample)]);
    }

    /// <summary>Why an entry is not taken; null where the ledger may judge it.</summary>
    public ImmutableArray<CaseProblem>? Refusal(byte[] utf8)
    {
        var reading = EntryReader.Read(utf8);
        if (reading.IsRefused) return reading.Problems;
        var entry = reading.Entry;
        var problems = new CaseProblems();
        if (entry.Author != visitor.Id) problems.Add("/author", entry.Author, visitor.Id);
        if (entry.Device == store) problems.Add("/device", entry.Device, "the id of the device that wrote it; this is the clinic's own");
        var payload = PayloadReader.Read(entry).Payload;
        string kind = payload is Correction correction ? correction.Of : entry.Kind;
        if (!visitor.MayWrite(entry.Kind) || !visitor.MayWrite(kind)) problems.Add("/kind", kind, [.. EntryKind.All.Where(visitor.MayWrite)]);
        string sample = entry.Sample.ToString();
        if (entry.Kind == EntryKind.TakenIn && !others.Contains(sample)) samples.Add(sample);
        else if (!samples.Contains(sample)) problems.Add("/sample", sample, "a sample that is here, or that is taken in by an entry before it");
        return problems.Count > 0 ? problems.ToImmutable() : null;
    }
}
