using System.Net.Mime;
using System.Text.Json;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Description;
using Abaxial.Web.People;
using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Samples;

/// <summary>Samples: their API and pages.</summary>
internal static class SamplesSetup
{
    public static void AddSamples(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<EntryWriting>();
        builder.Services.AddSingleton<TakingIn>();
        builder.Services.AddSingleton<PhotographForm>();
        builder.Services.AddScoped<PageForm>();
    }

    public static void MapSamples(this WebApplication app)
    {
        var api = app.MapGroup("/api").WithTags("Samples").RequireRight(Right.SeeSamples);
        api.MapGet("/samples", ListApi.List).WithSummary("Lists and finds samples, a page at a time.").WithAnswerExample(SampleExamples.List);
        api.MapPost("/samples", TakeInApi.TakeIn).Writes<TakeInBody>(SampleExamples.TakeIn).WithSummary("Takes a sample in.");
        api.MapGet("/samples/{sample}", SampleApi.Get).WithSummary("A sample with all that was said of it.").WithAnswerExample(SampleExamples.Sample);
        api.MapGet("/samples/{sample}/entries", SampleApi.Entries).WithSummary("The entries of a sample, as they are hashed.").WithAnswerExample(SampleExamples.Entries);
        api.MapPost("/samples/{sample}/entries", EntriesApi.Append).Writes<EntryBody>(SampleExamples.Entry).WithSummary("Says something of a sample: a look, a photograph, a diagnosis, a message, that it is handed over, put aside, closed or reopened.");
        api.MapPost("/samples/{sample}/entries/{entry}/corrections", EntriesApi.Correct).Writes<CorrectionBody>(SampleExamples.Correction).WithSummary("Corrects an entry, or strikes it.");
        api.MapGet("/samples/{sample}/cases/{number}/answer", SampleApi.Answer).Produces<JsonElement>(StatusCodes.Status200OK, MediaTypeNames.Application.Json).WithAnswerExample(SampleExamples.Answer).WithSummary("The answer for a plant or lot of a sample, as abaxial weigh --json prints it.");
        api.MapGet("/numbers/{number}", ListApi.ByNumber).WithSummary("The sample that is called by a number.").WithAnswerExample(SampleExamples.List);
        api.MapPost("/weigh", SampleApi.Weigh).Accepts<JsonElement>(MediaTypeNames.Application.Json).WithRequestExample(SampleExamples.Case)
            .Produces<JsonElement>(StatusCodes.Status200OK, MediaTypeNames.Application.Json).WithAnswerExample(SampleExamples.Answer).WithSummary("Weighs a case file and stores nothing.");
        api.MapPost("/merge", MergeApi.Merge).Accepts<MergeBody>(MediaTypeNames.Application.Json).WithMetadata(new BodyLimit(MergeApi.Bytes), new RequestSizeLimitAttribute(MergeApi.Bytes)).RequireRight(Right.Merge)
            .WithRequestExample(SampleExamples.Merge).WithAnswerExample(SampleExamples.Merged).WithSummary("Takes in what a device wrote while it was away.");
        api.MapGet("/changes", ChangesApi.Changes).DisableRequestTimeout().WithSummary("Tells what is written, as it is written.");
        MapForms(app);
    }

    /// <summary>Where the forms of the pages go. Each stands at the address of its page, before the page itself, so that the page is shown again where something was wrong.</summary>
    private static void MapForms(WebApplication app)
    {
        var pages = app.MapGroup("/samples").ExcludeFromDescription().WithOrder(-1).RequireRight(Right.SeeSamples);
        pages.MapPost("/new", TakeInForm.TakeIn);
        pages.MapPost("/{sample}", SampleForms.Say);
        pages.MapPost("/{sample}/photographs", PhotographForm.Add).RequireRight(Right.UsePhotographs).TakesUpload();
        pages.MapPost("/{sample}/look", SampleForms.Look);
        pages.MapPost("/{sample}/diagnosis", SampleForms.Diagnose);
        pages.MapPost("/{sample}/entries/{entry}/correct", SampleForms.Correct);
    }

    /// <summary>A request that writes one entry: what it takes, and what it answers where the entry is new or was there.</summary>
    private static RouteHandlerBuilder Writes<TBody>(this RouteHandlerBuilder endpoint, string example)
        where TBody : notnull => endpoint
        .Accepts<TBody>(MediaTypeNames.Application.Json)
        .WithRequestExample(example)
        .WithAnswerExample(SampleExamples.Written, StatusCodes.Status201Created)
        .WithAnswerExample(SampleExamples.Written);
}
