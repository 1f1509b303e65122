using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Photographs;

/// <summary>Photographs: receiving, decoding, showing.</summary>
internal static class PhotographSetup
{
    public static void AddPhotographs(this WebApplicationBuilder builder, PhotographOptions options)
    {
        builder.Services.AddSingleton(options);
        builder.Services.AddSingleton<PhotographWorker>();
        builder.Services.AddHostedService(services => services.GetRequiredService<PhotographWorker>());
        builder.Services.AddSingleton<PhotographSizes>();
        builder.Services.AddSingleton<PhotographUpload>();
    }

    public static void MapPhotographs(this WebApplication app)
    {
        var api = app.MapGroup("/api/photographs");
        api.MapPost("/", (HttpContext http, PhotographUpload upload, CancellationToken cancel) => upload.TakeAsync(http, cancel));
        api.MapGet("/{sha256}/{size}", PhotographServing.ShowAsync);
    }
}
