using Abaxial.Web.Hosting.Description;
using Abaxial.Web.Hosting.Faults;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Hosting;

/// <summary>How the clinic listens, and what every answer goes through.</summary>
internal static class HostingSetup
{
    public static void AddHosting(this WebApplicationBuilder builder, ClinicOptions options)
    {
        builder.Configuration.Sources.Clear(); // what the clinic is told stands in its options and nowhere else
        builder.AddListening(options);
        builder.AddProxies(options);
        builder.AddLimits(options.Limits);
        builder.AddJsonRules();
        builder.AddApiDescription();
        builder.AddTelemetry(options);
        RequestLog.Add(builder, options);
        builder.Services.AddSingleton<IProblemDetailsWriter, ProblemWriter>(); // before the framework's own, which does not write where a client asks for pages
        builder.Services.AddProblemDetails();
        builder.Services.AddExceptionHandler<FaultHandler>();
        builder.Services.Configure<RouteHandlerOptions>(handlers => handlers.ThrowOnBadRequest = true); // so that the place in the body can be told
    }

    /// <summary>From the outside in; who is signed in comes after it, and <see cref="RequestLimiting.UseLimits"/> after that.</summary>
    public static void UseHosting(this WebApplication app, ClinicOptions options)
    {
        app.UseMiddleware<RequestLog>();
        app.UseMiddleware<SecurityHeaders>();
        app.UseExceptionHandler();
        app.UseStatusCodePages(context => FaultAnswers.WriteAsync(context.HttpContext, context.HttpContext.Response.StatusCode));
        app.UseProxies(options);
        app.UseMiddleware<CrossSite>();
        app.UseRequestTimeouts();
    }

    public static void MapHosting(this WebApplication app)
    {
        app.MapHealth();
        app.MapApiDescription();
    }
}
