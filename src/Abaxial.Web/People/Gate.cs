using System.Security.Claims;
using Abaxial.Data;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.People;

/// <summary>Stands before every endpoint: finds out who asks, and lets pass what they may do. What is not marked is for nobody who is not signed in.</summary>
internal sealed class Gate(RequestDelegate next, ClinicOptions options, TimeProvider clock)
{
    /// <summary>Where those begin who see no samples.</summary>
    public const string People = "/people";

    public async Task InvokeAsync(HttpContext context, LedgerContext store)
    {
        if (context.GetEndpoint() is not { } endpoint)
        {
            await next(context); // a file of the site, or nothing
            return;
        }

        var person = await Recognizing.PersonAsync(context, store, options, clock);
        if (person is not null)
        {
            context.Features.Set(person);
            context.User = new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.NameIdentifier, person.Id)], "clinic"));
        }

        if (endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null || await LetsPassAsync(context, endpoint, person)) await next(context);
    }

    private async Task<bool> LetsPassAsync(HttpContext context, Endpoint endpoint, CurrentPerson? person)
    {
        bool isApi = context.Request.Path.StartsWithSegments("/api");
        if (person is null)
        {
            context.Response.Headers.WWWAuthenticate = "Bearer";
            if (isApi) context.Response.StatusCode = StatusCodes.Status401Unauthorized;
            else Send(context, "/sign-in");
            return false;
        }

        bool isOwn = person.Means is not (Means.Device or Means.Demo);
        if (!endpoint.Metadata.GetOrderedMetadata<RequireRightAttribute>().All(required => person.Has(required.Right)) || (!isOwn && endpoint.Metadata.GetMetadata<RequireAccountAttribute>() is not null))
        {
            if (context.Request.Path == "/" && HttpMethods.IsGet(context.Request.Method)) Turn(context, People);
            else context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return false;
        }

        if (endpoint.Metadata.GetMetadata<RequireProofAttribute>() is null || person.IsProvenAt(clock.GetUtcNow())) return true;
        if (!isApi || context.Request.HasFormContentType) Send(context, "/prove");
        else await Faults.Answer(Faults.ProofWanted, StatusCodes.Status403Forbidden).ExecuteAsync(context);
        return false;
    }

    /// <summary>To a page that is in the way, and back where that is only reading.</summary>
    private static void Send(HttpContext context, string page)
    {
        string back = HttpMethods.IsGet(context.Request.Method) ? $"{context.Request.Path}{context.Request.QueryString}" : "";
        Turn(context, back.Length == 0 ? page : $"{page}?returnUrl={Uri.EscapeDataString(back)}");
    }

    private static void Turn(HttpContext context, string to)
    {
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = to;
    }
}
