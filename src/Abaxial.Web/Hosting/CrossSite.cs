using Abaxial.Web.Hosting.Faults;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Hosting;

/// <summary>
/// Refuses what another site makes a browser send. A browser says where a request comes from (Sec-Fetch-Site; older ones Origin); pages' forms carry a token besides. A device
/// that shows its own token sends nothing by itself and needs no proof.
/// </summary>
internal sealed class CrossSite(RequestDelegate next, ClinicOptions options)
{
    public Task InvokeAsync(HttpContext context) =>
        IsSafe(context.Request.Method) || HasToken(context.Request) || IsFromHere(context.Request) ? next(context) : FaultAnswers.WriteAsync(context, StatusCodes.Status403Forbidden);

    private bool IsFromHere(HttpRequest request)
    {
        if (request.Headers["Sec-Fetch-Site"].ToString() is { Length: > 0 } site) return site is "same-origin" or "none";
        if (request.Headers.Origin.ToString() is { Length: > 0 } origin) return origin == $"{request.Scheme}://{request.Host}" || origin == options.PublicUrl?.GetLeftPart(UriPartial.Authority);
        return request.Headers.Cookie.Count == 0 || !request.Path.StartsWithSegments("/api"); // of a page, the form's token decides
    }

    private static bool IsSafe(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method);

    private static bool HasToken(HttpRequest request) => request.Headers.Authorization.ToString().StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) && request.Headers.Cookie.Count == 0;
}
