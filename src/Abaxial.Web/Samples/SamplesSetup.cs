using System.Net.Mime;
using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Samples;

/// <summary>Samples: their API and pages.</summary>
internal static class SamplesSetup
{
    public static void AddSamples(this WebApplicationBuilder builder)
    {
        builder.Services.AddSingleton<EntryWriting>();
        builder.Services.AddSingleton<TakingIn>();
        builder.Services.AddScoped<PageForm>();
        builder.Services.AddSingleton<Func<HttpContext, Visitor?>>(_ => _ => new Visitor("d-01", Role.Diagnostician, []));
    }

    public static void MapSamples(this WebApplication app)
    {
        var api = app.MapGroup("/api").WithTags("Samples");
        api.MapGet("/samples", ListApi.List).WithSummary("Lists and finds samples, a page at a time.");
        api.MapPost("/samples", TakeInApi.TakeIn).TakesJson().WithSummary("Takes a sample in.");
        api.MapGet("/samples/{sample}", SampleApi.Get).WithSummary("A sample with all that was said of it.");
        api.MapGet("/samples/{sample}/entries", SampleApi.Entries).WithSummary("The entries of a sample, as they are hashed.");
        api.MapPost("/samples/{sample}/entries", EntriesApi.Append).TakesJson().WithSummary("Says something of a sample: a look, a photograph, a diagnosis, a message, that it is handed over, put aside, closed or reopened.");
        api.MapPost("/samples/{sample}/entries/{entry}/corrections", EntriesApi.Correct).TakesJson().WithSummary("Corrects an entry, or strikes it.");
        api.MapGet("/samples/{sample}/cases/{number}/answer", SampleApi.Answer).WithSummary("The answer for a plant or lot of a sample.");
        api.MapGet("/numbers/{number}", ListApi.ByNumber).WithSummary("The sample that is called by a number.");
        api.MapPost("/weigh", SampleApi.Weigh).TakesJson().WithSummary("Weighs a case file and stores nothing.");
        api.MapPost("/merge", MergeApi.Merge).TakesJson().WithMetadata(new BodyLimit(MergeApi.Bytes)).WithSummary("Takes in what a device wrote while it was away.");
        api.MapGet("/changes", ChangesApi.Changes).WithSummary("Tells what is written, as it is written.");
        MapForms(app);
    }

    /// <summary>Where the forms of the pages go. Each stands at the address of its page, before the page itself, so that the page is shown again where something was wrong.</summary>
    private static void MapForms(WebApplication app)
    {
        var pages = app.MapGroup("/samples").ExcludeFromDescription().WithOrder(-1);
        pages.MapPost("/new", TakeInForm.TakeIn);
        pages.MapPost("/{sample}", SampleForms.Say);
        pages.MapPost("/{sample}/look", SampleForms.Look);
        pages.MapPost("/{sample}/diagnosis", SampleForms.Diagnose);
        pages.MapPost("/{sample}/entries/{entry}/correct", SampleForms.Correct);
    }

    private static RouteHandlerBuilder TakesJson(this RouteHandlerBuilder endpoint) => endpoint.Accepts<object>(MediaTypeNames.Application.Json);
}
