using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;

namespace Abaxial.Web.Shell;

/// <summary>The frame that every page stands in, and the files that it is drawn with.</summary>
internal static class ShellSetup
{
    /// <summary>Where the files of the site lie beside the program.</summary>
    private static readonly string Files = Path.Combine(AppContext.BaseDirectory, "clinic");

    public static void AddShell(this WebApplicationBuilder builder)
    {
        builder.Services.AddRazorComponents();
        builder.Services.AddAntiforgery();
    }

    public static void MapShell(this WebApplication app)
    {
        app.UseStaticFiles(new StaticFileOptions { FileProvider = new PhysicalFileProvider(Files) });
        app.UseAntiforgery();
        app.MapRazorComponents<Document>();
    }
}
