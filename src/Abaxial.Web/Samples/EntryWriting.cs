using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Samples;

/// <summary>What became of something that was to be written.</summary>
internal sealed record Written
{
    /// <summary>The entry in the ledger; null where it was refused.</summary>
    public Entry? Entry { get; init; }

    /// <summary>It had been there already, the same.</summary>
    public bool WasThere { get; init; }

    /// <summary>The status that an answer over HTTP has.</summary>
    public int Status { get; init; } = StatusCodes.Status201Created;

    public ImmutableArray<CaseProblem> Problems { get; init; } = [];

    [MemberNotNullWhen(false, nameof(Entry))]
    public bool IsRefused => Entry is null;

    public static Written Refuse(int status, CaseProblems problems) => new() { Status = status, Problems = problems.ToImmutable() };

    public static Written Refuse(int status, string at, string found, params string[] accepted) => new() { Status = status, Problems = [new CaseProblem(at, found, [.. accepted])] };

    public static Written Refuse(int status, ImmutableArray<CaseProblem> problems) => new() { Status = status, Problems = problems };

    public static Written NotFound { get; } = new() { Status = StatusCodes.Status404NotFound };

    /// <summary>What the ledger made of it. An id that is taken is a conflict; anything else was wrong in what was sent.</summary>
    public static Written Of(Appended appended) => appended.IsRefused
        ? new Written { Status = appended.Problems.Any(problem => problem.At == "/id") ? StatusCodes.Status409Conflict : StatusCodes.Status400BadRequest, Problems = appended.Problems }
        : new Written { Entry = appended.Entry, WasThere = appended.WasThere, Status = appended.WasThere ? StatusCodes.Status200OK : StatusCodes.Status201Created };

    public ProblemHttpResult ToProblem() => Status == StatusCodes.Status404NotFound ? Problem.NotFound() : Problem.Of(Status, Problems);
}

/// <summary>What somebody says of a sample, before the server has read it.</summary>
internal sealed record Saying
{
    public required Visitor By { get; init; }

    public required string Sample { get; init; }

    /// <summary>The id that the entry shall have; null where the ledger may choose.</summary>
    public EntryId? Id { get; init; }

    public required string Kind { get; init; }

    public required JsonElement Payload { get; init; }

    public DateTimeOffset? Made { get; init; }

    public ImmutableArray<EntryId>? Heads { get; init; }
}

/// <summary>Writes entries of samples for people and programs: rights first, then the form, then what the knowledge makes of it. Pages and the API write by the same way.</summary>
internal sealed class EntryWriting(Ledger ledger, KnowledgeBase knowledge, Weigher weigher)
{
    private const string PayloadAt = "/payload";

    /// <summary>Kinds that are written by ways of their own: with a sample, as a correction, or by the server alone.</summary>
    private static readonly ImmutableArray<string> Elsewhere = [EntryKind.TakenIn, EntryKind.Numbered, EntryKind.Correction, EntryKind.PersonErased];

    /// <summary>The kinds that somebody may append to a sample.</summary>
    public static string[] KindsFor(Visitor visitor) => [.. EntryKind.All.Except(Elsewhere).Where(visitor.MayWrite)];

    /// <summary>Appends an entry.</summary>
    public async Task<Written> AppendAsync(Saying saying, CancellationToken cancel)
    {
        if (await ledger.ViewAsync(saying.By, saying.Sample, knowledge, cancel) is not { } view) return Written.NotFound;
        if (Elsewhere.Contains(saying.Kind) || EntryKind.NewestVersionOf(saying.Kind) == 0) return Written.Refuse(StatusCodes.Status400BadRequest, "/kind", saying.Kind, KindsFor(saying.By));
        if (!saying.By.MayWrite(saying.Kind)) return Written.Refuse(StatusCodes.Status403Forbidden, "/kind", saying.Kind, KindsFor(saying.By));
        var problems = new CaseProblems();
        if (await ReadAsync(saying, saying.Kind, view, problems, cancel) is not { } stated) return Written.Refuse(StatusCodes.Status400BadRequest, problems);
        return await WriteAsync(saying, view, stated.Payload, stated.Texts, cancel);
    }

    /// <summary>Corrects an entry; where nothing is put in its place it is struck.</summary>
    public async Task<Written> CorrectAsync(Saying saying, string replaces, string why, CancellationToken cancel)
    {
        if (await ledger.ViewAsync(saying.By, saying.Sample, knowledge, cancel) is not { } view) return Written.NotFound;
        if (!EntryId.TryParse(replaces, out var replaced) || view.Timeline.FirstOrDefault(item => item.Entry.Id == replaced) is not { } item) return Written.NotFound;
        string of = item.Said is Correction earlier ? earlier.Of : item.Entry.Kind;
        if (!MayCorrect(saying.By, item, of)) return Written.Refuse(StatusCodes.Status403Forbidden, "", of, [.. KindsFor(saying.By).Select(kind => $"{kind} of your own")]);
        if (saying.Payload.ValueKind == JsonValueKind.Undefined) return await WriteAsync(saying, view, Correction.Striking(replaced, of, why), [], cancel);
        var problems = new CaseProblems();
        if (await ReadAsync(saying, of, view, problems, cancel) is not { } stated) return Written.Refuse(StatusCodes.Status400BadRequest, problems);
        return await WriteAsync(saying, view, Correction.With(replaced, why, stated.Payload), stated.Texts, cancel);
    }

    /// <summary>The clinic corrects what anybody said; others what they said themselves. Numbers and erasings stay.</summary>
    private static bool MayCorrect(Visitor visitor, TimelineItem item, string of) =>
        of is not (EntryKind.Numbered or EntryKind.PersonErased)
        && visitor.MayWrite(EntryKind.Correction)
        && (visitor.MayWrite(of) || (EntryKind.NewestVersionOf(of) == 0 && visitor.Scope is null))
        && (visitor.Scope is null || item.Entry.Author == visitor.Id);

    private async Task<Stated?> ReadAsync(Saying saying, string kind, SampleView view, CaseProblems problems, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        var sealing = await Sealing.OfAsync(context, saying.Id, view, weigher, cancel);
        return PlainPayload.Read(kind, saying.Payload, PayloadAt, sealing, problems);
    }

    private async Task<Written> WriteAsync(Saying saying, SampleView view, Payload payload, ImmutableArray<SealedText> texts, CancellationToken cancel)
    {
        var misread = KnowledgeCheck.Of(view, payload, saying.By.Id, knowledge);
        if (!misread.IsEmpty) return new Written { Status = StatusCodes.Status400BadRequest, Problems = misread };
        var draft = new EntryDraft { Id = saying.Id, Sample = view.Sample, Author = saying.By.Id, Made = saying.Made, Payload = payload, Heads = saying.Heads, Texts = texts };
        return Written.Of(await ledger.AppendAsync(draft, cancel));
    }
}
