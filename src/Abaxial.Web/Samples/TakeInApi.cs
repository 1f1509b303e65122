using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Data;
using Abaxial.Data.People;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Samples;

/// <summary>Takes samples in, with what was seen and stated of each plant or lot.</summary>
internal sealed class TakingIn(Ledger ledger, KnowledgeBase knowledge)
{
    private static readonly ImmutableArray<string> InCase = ["looks", "priorFactors"];
    private static readonly ImmutableArray<string> InFactor = ["cause", "factor", "reason"];

    /// <summary>Takes a sample in.</summary>
    /// <param name="by">Who takes it in.</param>
    /// <param name="id">The id that it shall have; null where the ledger may choose.</param>
    /// <param name="root">What was sent: what <see cref="TakenIn"/> holds, with plain texts, and beside it cases.</param>
    /// <param name="problems">Where problems are noted.</param>
    /// <param name="cancel">Ends the wait.</param>
    public async Task<Written> WriteAsync(Visitor by, EntryId? id, JsonElement root, CaseProblems problems, CancellationToken cancel)
    {
        if (!by.MayWrite(EntryKind.TakenIn)) return Written.Refuse(StatusCodes.Status403Forbidden, "", EntryKind.TakenIn, EntryWriting.KindsFor(by));
        if (root.ValueKind != JsonValueKind.Object) problems.AddWrongKind("", root, "an object");
        if (problems.Count > 0) return Written.Refuse(StatusCodes.Status400BadRequest, problems);
        await using var context = ledger.Ask();
        var sealing = await Sealing.OfNewAsync(context, id, cancel);
        var cases = ReadCases(root, by, problems);
        using var rest = JsonDocument.Parse(Without(root, "cases"));
        if (PlainPayload.Read(EntryKind.TakenIn, rest.RootElement, "", sealing, problems) is not { } stated) return Written.Refuse(StatusCodes.Status400BadRequest, problems);
        var taken = (TakenIn)stated.Payload;

        // Who sends a sample of their own cannot send it in another's name.
        if (by.Role == Role.Submitter) taken = taken with { Submitter = by.Id };
        var misread = KnowledgeCheck.Of(taken, cases, knowledge);
        if (problems.Count > 0 || !misread.IsEmpty) return new Written { Status = StatusCodes.Status400BadRequest, Problems = [.. problems.ToImmutable(), .. misread] };
        var more = cases.SelectMany(one => one).ToList();
        var written = Written.Of(await ledger.TakeInAsync(new EntryDraft { Id = id, Author = by.Id, Payload = taken, Texts = stated.Texts }, more, cancel));
        return written is { WasThere: true, Entry: { } entry } && !await HoldsAsync(entry.Sample, more, cancel) ? Written.Refuse(StatusCodes.Status409Conflict, "/id", entry.Id.ToString(), "an id that no other entry has") : written;
    }

    /// <summary>Whether a sample that was there holds what is said of it now.</summary>
    private async Task<bool> HoldsAsync(EntryId sample, List<Payload> more, CancellationToken cancel)
    {
        var payloads = (await ledger.EntriesOfAsync(sample, cancel)).Select(entry => entry.Payload).ToHashSet(StringComparer.Ordinal);
        return more.TrueForAll(payload => payloads.Contains(payload.ToJson()));
    }

    private static List<ImmutableArray<Payload>> ReadCases(JsonElement root, Visitor by, CaseProblems problems)
    {
        var cases = new List<ImmutableArray<Payload>>();
        if (!root.TryGetProperty("cases", out var list)) return cases;
        if (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() is 0 or > LookMade.MostCases)
        {
            problems.AddWrongKind("/cases", list, $"an array of 1 to {LookMade.MostCases} plants or lots");
            return cases;
        }

        foreach (var item in list.EnumerateArray())
        {
            if (problems.IsFull) break;
            string at = CaseProblems.Below("/cases", cases.Count);
            var said = CaseMembers.Of(item, at, InCase, problems) is { } members ? ReadCase(members, cases.Count + 1, by, problems) : [];
            if (said.IsEmpty && cases.Count > 0) problems.Add(at, "nothing", "at least one look or prior factor: it is by them that a plant or lot is there"); // the first is there with the sample
            cases.Add(said);
        }

        return cases;
    }

    private static ImmutableArray<Payload> ReadCase(CaseMembers members, int number, Visitor by, CaseProblems problems)
    {
        var said = ImmutableArray.CreateBuilder<Payload>();
        var looks = members.List("looks");
        if (looks?.GetArrayLength() > CaseLimits.Looks) problems.Add(members.Below("looks"), $"{looks.Value.GetArrayLength()} looks", $"at most {CaseLimits.Looks}");
        foreach (var (look, i) in Items(looks, CaseLimits.Looks))
        {
            if (look.ValueKind == JsonValueKind.Object) said.Add(new LookMade(number, CanonicalJson.Of(look)));
            else problems.AddWrongKind(CaseProblems.Below(members.Below("looks"), i), look, "a look");
        }

        var factors = members.List("priorFactors");
        if (factors is not null && !by.MayWrite(EntryKind.PriorFactor)) problems.Add(members.Below("priorFactors"), "priorFactors", "leave it out");
        foreach (var (factor, i) in Items(factors, CaseLimits.Looks))
        {
            if (CaseMembers.Of(factor, CaseProblems.Below(members.Below("priorFactors"), i), InFactor, problems) is not { } one) continue;
            string? cause = one.Id("cause", isRequired: true), reason = one.Text("reason", isRequired: true);
            double? times = one.Number("factor", CaseRange.Positive, isRequired: true);
            if (cause is not null && reason is not null && times is not null) said.Add(new PriorFactorStated(number, cause, times.Value, reason));
        }

        return said.ToImmutable();
    }

    private static IEnumerable<(JsonElement Item, int Index)> Items(JsonElement? list, int most) => list is { } array ? array.EnumerateArray().Take(most).Select((item, index) => (item, index)) : [];

    private static string Without(JsonElement root, string name)
    {
        var rest = System.Text.Json.Nodes.JsonObject.Create(root)!;
        rest.Remove(name);
        return rest.ToJsonString();
    }
}

/// <summary>Taking samples in over the API.</summary>
internal static class TakeInApi
{
    public static async Task<Results<Created<WrittenJson>, Ok<WrittenJson>, ProblemHttpResult>> TakeIn(JsonBody body, Visitor visitor, TakingIn taking, HttpRequest request, CancellationToken cancel)
    {
        if (body.Refusal is { } refusal) return refusal;
        if (!IdempotencyKey.TryRead(request, out var id, out var wrong)) return wrong;
        var written = await taking.WriteAsync(visitor, id, body.Root, body.Problems, cancel);
        return WrittenJson.Answer(written);
    }
}
