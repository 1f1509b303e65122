using System.Collections.Immutable;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Hosting;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>What the pages of a sample show: its fold, the answers, and the texts that its seals stand for.</summary>
public sealed record SampleShown(SampleView View, ImmutableArray<Answer?> Answers, SealedTexts Texts, Visitor Visitor)
{
    public string Id => View.Sample.ToString();

    /// <summary>Loads a sample; null, with the status that says so, where it is not there for whoever asks.</summary>
    public static async Task<SampleShown?> LoadAsync(string sample, HttpContext http, Ledger ledger, KnowledgeBase knowledge, Weigher? weigher)
    {
        if (Visitor.Of(http) is not { } visitor || await ledger.ViewAsync(visitor, sample, knowledge, http.RequestAborted) is not { } view)
        {
            http.Response.StatusCode = StatusCodes.Status404NotFound;
            return null;
        }

        await using var context = ledger.Ask();
        var answers = weigher is null ? [] : view.Cases.Select(part => part.Reading.Case is { } weighed ? weigher.Weigh(weighed) : null).ToImmutableArray();
        ClinicFigures.CountAnswers(answers.Count(answer => answer is not null));
        return new SampleShown(view, answers, await SealedTexts.OfAsync(context, view, http.RequestAborted), visitor);
    }
}
