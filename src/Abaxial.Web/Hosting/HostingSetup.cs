using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;

namespace Abaxial.Web.Hosting;

/// <summary>How the clinic listens, and what every answer goes through.</summary>
internal static class HostingSetup
{
    public static void AddHosting(this WebApplicationBuilder builder, ClinicOptions options)
    {
        builder.WebHost.UseUrls(options.Address.ToString());
        builder.Services.AddProblemDetails();
    }

    public static void UseHosting(this WebApplication app)
    {
        app.UseExceptionHandler();
        app.UseStatusCodePages();
    }
}
