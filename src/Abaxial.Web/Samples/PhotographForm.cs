using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Photographs;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>The form that adds photographs to a sample, several at once. Each is stored and written by itself: one that is refused keeps no other out.</summary>
internal sealed class PhotographForm(Ledger ledger, KnowledgeBase knowledge, PhotographSizes sizes, EntryWriting writing)
{
    /// <summary>How many photographs one form may bring.</summary>
    public const int Most = 24;

    public static async Task<IResult> Add(string sample, IFormCollection form, Visitor visitor, PhotographForm adding, PageForm page, CancellationToken cancel)
    {
        if (await adding.RefusalAsync(sample, form, visitor, cancel) is { } refusal) return SampleForms.Shown(page, form, refusal);
        var problems = ImmutableArray.CreateBuilder<CaseProblem>();
        foreach (var file in form.Files) problems.AddRange(await adding.AddAsync(sample, file, PageForm.Key(form), visitor, cancel));
        if (problems.Count == 0) return TypedResults.LocalRedirect($"/samples/{sample}#photographs");
        string title = string.Create(CultureInfo.InvariantCulture, $"{(problems.Count == 1 ? "One photograph was" : $"{problems.Count} photographs were")} not added, {form.Files.Count - problems.Count} of {form.Files.Count} were");
        return SampleForms.Shown(page, form, Written.Refuse(StatusCodes.Status422UnprocessableEntity, problems.ToImmutable()), title);
    }

    /// <summary>Why nothing of it is looked at; null where it is.</summary>
    private async Task<Written?> RefusalAsync(string sample, IFormCollection form, Visitor visitor, CancellationToken cancel)
    {
        if (await ledger.ViewAsync(visitor, sample, knowledge, cancel) is null) return Written.NotFound;
        if (!visitor.MayWrite(EntryKind.Photograph)) return Written.Refuse(StatusCodes.Status403Forbidden, "", EntryKind.Photograph, EntryWriting.KindsFor(visitor));
        if (form.Files.Count is 0 or > Most) return Written.Refuse(StatusCodes.Status400BadRequest, "/photographs", $"{form.Files.Count} files", $"1 to {Most} files");
        return null;
    }

    /// <summary>Stores one and says of the sample that it is there; the problem where it was refused.</summary>
    private async Task<ImmutableArray<CaseProblem>> AddAsync(string sample, IFormFile file, EntryId? key, Visitor visitor, CancellationToken cancel)
    {
        await using var bytes = file.OpenReadStream();
        PhotographTaken taken;
        try
        {
            taken = await sizes.TakeInAsync(bytes, cancel);
        }
        catch (PhotographsBusyException)
        {
            return [new CaseProblem(file.FileName, "too many photographs at the moment", ["the same one again in a few seconds"])];
        }

        var adding = taken.Adding;
        if (adding.IsRefused) return [(taken.Problem ?? new CaseProblem("", adding.Refusal, adding.IsDiskFull ? [] : [.. PhotographKind.Names])) with { At = file.FileName }];
        var payload = new PhotographAdded(adding.Sha256, taken.MediaType!, adding.Bytes);
        var saying = new Saying { By = visitor, Sample = sample, Id = key is { } form ? EntryIds.Of(form, adding.Sha256) : null, Kind = EntryKind.Photograph, Payload = Json.Of(payload.ToJson()) };
        var written = await writing.AppendAsync(saying, cancel);
        return written.IsRefused ? [.. written.Problems.Take(1).Select(problem => problem with { At = file.FileName })] : [];
    }
}
