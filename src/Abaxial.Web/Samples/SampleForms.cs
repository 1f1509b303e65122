using System.Text.Json.Nodes;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Samples;

/// <summary>
/// What the forms of a sample's pages say. Each becomes the entry that a program would send, and is written the same way; then the page is asked for anew. What was refused is shown on the page
/// that it came from, with all that was typed.
/// </summary>
internal static class SampleForms
{
    /// <summary>The forms of the sample's own page.</summary>
    public static Task<IResult> Say(string sample, IFormCollection form, Visitor visitor, EntryWriting writing, KnowledgeBase knowledge, PageForm page, CancellationToken cancel)
    {
        string kind = PageForm.Text(form, "do") ?? "";
        var payload = kind switch
        {
            EntryKind.Look => LookForm.Payload(form, knowledge, visitor),
            EntryKind.Message => PageForm.Texts(form, "direction", "text"),
            EntryKind.HandedOver => PageForm.Texts(form, "to"),
            EntryKind.Snoozed => new JsonObject { ["until"] = PageForm.Moment(form, "until") },
            EntryKind.PhotographMarked => Marked(form),
            _ => PageForm.Texts(form, "why"),
        };
        return WriteAsync(sample, kind, payload, form, visitor, writing, page, cancel);
    }

    /// <summary>The form of a look that nobody proposed.</summary>
    public static Task<IResult> Look(string sample, IFormCollection form, Visitor visitor, EntryWriting writing, KnowledgeBase knowledge, PageForm page, CancellationToken cancel) =>
        WriteAsync(sample, EntryKind.Look, LookForm.Payload(form, knowledge, visitor), form, visitor, writing, page, cancel);

    /// <summary>The form of a diagnosis.</summary>
    public static Task<IResult> Diagnose(string sample, IFormCollection form, Visitor visitor, EntryWriting writing, PageForm page, CancellationToken cancel)
    {
        var payload = PageForm.Texts(form, "disagreement", "provenBy", "unlisted");
        payload["case"] = PageForm.Number(form, "case");
        foreach (string list in new[] { "primary", "secondary" })
        {
            string[] causes = [.. form[list].OfType<string>().Where(cause => cause.Length > 0).Distinct()];
            if (causes.Length > 0) payload[list] = new JsonArray([.. causes.Select(cause => (JsonNode)cause)]);
        }

        return WriteAsync(sample, EntryKind.Diagnosis, payload, form, visitor, writing, page, cancel);
    }

    /// <summary>The form that corrects a look, or strikes any entry.</summary>
    public static async Task<IResult> Correct(string sample, string entry, IFormCollection form, Visitor visitor, EntryWriting writing, KnowledgeBase knowledge, PageForm page, CancellationToken cancel)
    {
        var payload = PageForm.Text(form, "do") == "correct" ? PageForm.Element(LookForm.Payload(form, knowledge, visitor)) : default;
        if (PageForm.Text(form, "why") is not { } why) return Shown(page, form, Written.Refuse(StatusCodes.Status400BadRequest, "/why", "nothing", "why it is corrected"));
        var saying = new Saying { By = visitor, Sample = sample, Id = PageForm.Key(form), Kind = EntryKind.Correction, Payload = payload };
        return Answer(await writing.CorrectAsync(saying, entry, why, cancel), page, form);
    }

    private static async Task<IResult> WriteAsync(string sample, string kind, JsonObject payload, IFormCollection form, Visitor visitor, EntryWriting writing, PageForm page, CancellationToken cancel)
    {
        var saying = new Saying { By = visitor, Sample = sample, Id = PageForm.Key(form), Kind = kind, Payload = PageForm.Element(payload) };
        return Answer(await writing.AppendAsync(saying, cancel), page, form);
    }

    private static IResult Answer(Written written, PageForm page, IFormCollection form) =>
        written.IsRefused ? Shown(page, form, written) : TypedResults.LocalRedirect($"/samples/{written.Entry.Sample}");

    /// <summary>The page that the form stands on, with what was wrong.</summary>
    public static IResult Shown(PageForm page, IFormCollection form, Written refused, string title = PageForm.NothingWritten)
    {
        if (refused.Status == StatusCodes.Status404NotFound) return TypedResults.NotFound();
        page.Refuse(form, refused.Problems, title);
        return new RazorComponentResult<Document> { StatusCode = refused.Status };
    }

    private static JsonObject Marked(IFormCollection form)
    {
        var payload = PageForm.Texts(form, "sha256", "side");
        if (PageForm.Number(form, "micrometersPerPixel") is { } scale) payload["micrometersPerPixel"] = scale;
        return payload;
    }
}
