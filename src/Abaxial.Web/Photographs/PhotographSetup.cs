using System.Net.Mime;
using Abaxial.Web.Hosting;
using Abaxial.Web.Hosting.Description;
using Abaxial.Web.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Photographs;

/// <summary>Photographs: receiving, decoding, showing.</summary>
internal static class PhotographSetup
{
    private const string Stored = """{ "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08", "mediaType": "image/jpeg", "bytes": 2483211, "width": 4032, "height": 3024 }""";

    public static void AddPhotographs(this WebApplicationBuilder builder, PhotographOptions options)
    {
        options.Check();
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton<PhotographWorker>();
        builder.Services.AddHostedService(services => services.GetRequiredService<PhotographWorker>());
        builder.Services.AddSingleton<PhotographSizes>();
        builder.Services.AddSingleton<PhotographUpload>();
    }

    public static void MapPhotographs(this WebApplication app)
    {
        var api = app.MapGroup("/api/photographs").WithTags("Photographs").RequireRight(Right.UsePhotographs);
        api.MapPost("/", (HttpContext http, PhotographUpload upload, CancellationToken cancel) => upload.TakeAsync(http, cancel)).TakesUpload()
            .WithSummary("Stores a photograph: its bytes as the body, or a form with one file. The same bytes are stored once.")
            .Produces<PhotographStored>(StatusCodes.Status201Created).WithAnswerExample(Stored, StatusCodes.Status201Created)
            .Produces<PhotographStored>().WithAnswerExample(Stored);
        api.MapGet("/{sha256}/{size}", PhotographServing.ShowAsync)
            .WithSummary("Shows a photograph that a sample names: thumb, work, or original, which is for diagnosticians and leads.")
            .Produces<byte[]>(StatusCodes.Status200OK, MediaTypeNames.Image.Jpeg);
    }
}
