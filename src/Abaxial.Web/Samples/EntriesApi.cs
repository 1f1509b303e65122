using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Samples;

/// <summary>What was written.</summary>
/// <param name="Sample">The sample.</param>
/// <param name="Entry">The id of the entry.</param>
internal sealed record WrittenJson(string Sample, string Entry)
{
    public static Results<Created<WrittenJson>, Ok<WrittenJson>, ProblemHttpResult> Answer(Written written)
    {
        if (written.IsRefused) return written.ToProblem();
        var told = new WrittenJson(written.Entry.Sample.ToString(), written.Entry.Id.ToString());
        if (written.WasThere) return TypedResults.Ok(told);
        return TypedResults.Created($"/api/samples/{told.Sample}", told);
    }
}

/// <summary>The id that a writing request gives to the entry that it writes, so that sending it twice writes it once.</summary>
internal static class IdempotencyKey
{
    public const string Header = "Idempotency-Key";

    /// <summary>Reads it; null where none was sent.</summary>
    public static bool TryRead(HttpRequest request, out EntryId? id, [NotNullWhen(false)] out ProblemHttpResult? wrong)
    {
        (id, wrong) = (null, null);
        if (!request.Headers.TryGetValue(Header, out var values)) return true;
        if (values.Count == 1 && EntryId.TryParse(values[0], out var read))
        {
            id = read;
            return true;
        }

        var problems = new CaseProblems();
        problems.Add("/headers/idempotency-key", values.ToString(), "a ULID: 26 digits of Crockford's base 32");
        wrong = Problem.Of(StatusCodes.Status400BadRequest, problems);
        return false;
    }
}

/// <summary>Adding entries to a sample, and correcting them.</summary>
internal static class EntriesApi
{
    private const int MostHeads = 1_000;

    private static readonly ImmutableArray<string> InEntry = ["heads", "kind", "made", "payload", "version"];
    private static readonly ImmutableArray<string> InCorrection = ["heads", "made", "payload", "version", "why"];

    public static async Task<Results<Created<WrittenJson>, Ok<WrittenJson>, ProblemHttpResult>> Append(string sample, JsonBody body, Visitor visitor, EntryWriting writing, TimeProvider clock, HttpRequest request, CancellationToken cancel)
    {
        if (body.Refusal is { } refusal) return refusal;
        if (!IdempotencyKey.TryRead(request, out var id, out var wrong)) return wrong;
        if (CaseMembers.Of(body.Root, "", InEntry, body.Problems) is not { } members) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);
        string? kind = members.Text("kind", isRequired: true);
        var payload = PayloadOf(members, isRequired: true);
        var (made, heads) = (MadeOf(members, clock), HeadsOf(members));
        if (body.Problems.Count > 0) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);
        return WrittenJson.Answer(await writing.AppendAsync(new Saying { By = visitor, Sample = sample, Id = id, Kind = kind!, Payload = payload, Made = made, Heads = heads }, cancel));
    }

    public static async Task<Results<Created<WrittenJson>, Ok<WrittenJson>, ProblemHttpResult>> Correct(string sample, string entry, JsonBody body, Visitor visitor, EntryWriting writing, TimeProvider clock, HttpRequest request, CancellationToken cancel)
    {
        if (body.Refusal is { } refusal) return refusal;
        if (!IdempotencyKey.TryRead(request, out var id, out var wrong)) return wrong;
        if (CaseMembers.Of(body.Root, "", InCorrection, body.Problems) is not { } members) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);
        string? why = members.Text("why", isRequired: true);
        var payload = PayloadOf(members, isRequired: false);
        var (made, heads) = (MadeOf(members, clock), HeadsOf(members));
        if (body.Problems.Count > 0) return Problem.Of(StatusCodes.Status400BadRequest, body.Problems);
        return WrittenJson.Answer(await writing.CorrectAsync(new Saying { By = visitor, Sample = sample, Id = id, Kind = EntryKind.Correction, Payload = payload, Made = made, Heads = heads }, entry, why!, cancel));
    }

    /// <summary>The payload, at the one version that there is.</summary>
    private static JsonElement PayloadOf(CaseMembers members, bool isRequired)
    {
        members.Whole("version", 1, 1, isRequired);
        if (members.Find("payload") is { } payload) return payload;
        if (isRequired) members.Problems.AddMissing(members.Below("payload"), "an object");
        return default;
    }

    private static DateTimeOffset? MadeOf(CaseMembers members, TimeProvider clock)
    {
        var made = members.Moment("made");
        if (made > clock.GetUtcNow().AddMinutes(5)) members.Problems.Add(members.Below("made"), members.Find("made")!.Value, "a moment that has come");
        return made;
    }

    private static ImmutableArray<EntryId>? HeadsOf(CaseMembers members)
    {
        if (members.List("heads") is not { } list) return null;
        var heads = ImmutableArray.CreateBuilder<EntryId>();
        foreach (var item in list.EnumerateArray().Take(MostHeads))
        {
            if (item.ValueKind == JsonValueKind.String && EntryId.TryParse(item.GetString(), out var head)) heads.Add(head);
            else members.Problems.AddWrongKind(CaseProblems.Below(members.Below("heads"), heads.Count), item, "the id of an entry");
            if (members.Problems.IsFull) break;
        }

        if (heads.Count == 0) members.Problems.Add(members.Below("heads"), "no entry", "at least one: who writes of a sample has seen it");
        return heads.ToImmutable();
    }
}
