using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Hosting;

/// <summary>What every answer tells a browser not to do.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    private const string Pages =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    /// <summary>For data and photographs: whatever a browser takes them for, nothing in them runs.</summary>
    private const string Data = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; sandbox";

    private const string Year = "max-age=31536000; includeSubDomains";

    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(() =>
        {
            Write(context);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private static void Write(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = context.Request.Path.StartsWithSegments("/api") || context.Request.Path.StartsWithSegments("/health") ? Data : Pages;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin"; // stricter, and forms would be sent without an origin that can be checked
        headers["Permissions-Policy"] = "camera=(self), geolocation=(self), publickey-credentials-get=(self), publickey-credentials-create=(self), microphone=(), payment=(), usb=(), serial=(), display-capture=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (context.Request.IsHttps) headers.StrictTransportSecurity = Year;
        if (headers.CacheControl.Count == 0) headers.CacheControl = IsFileOfSite(context) ? "no-cache" : "no-store";
    }

    /// <summary>What no endpoint answered and is there all the same is a file of the site: nothing of the clinic's is in it. It is asked for again by its tag.</summary>
    private static bool IsFileOfSite(HttpContext context) => context.GetEndpoint() is null && context.Response.StatusCode is 200 or 206 or 304;
}
