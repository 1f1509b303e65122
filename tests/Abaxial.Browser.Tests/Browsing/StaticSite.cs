using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;

namespace Abaxial.Browser.Tests.Browsing;

/// <summary>Serves one folder on the loopback interface, on a port of the system's choice.</summary>
internal sealed class StaticSite : IAsyncDisposable
{
    private readonly WebApplication application;

    private StaticSite(WebApplication application) => this.application = application;

    public Uri Address => new(application.Urls.First());

    public static async Task<StaticSite> ServeAsync(string folder)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var application = builder.Build();
        var files = new PhysicalFileProvider(folder);
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".wasm"] = "application/wasm";
        types.Mappings[".dat"] = types.Mappings[".pdb"] = "application/octet-stream";
        application.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        application.UseStaticFiles(new StaticFileOptions { FileProvider = files, ContentTypeProvider = types });
        await application.StartAsync();
        return new StaticSite(application);
    }

    public ValueTask DisposeAsync() => application.DisposeAsync();
}
