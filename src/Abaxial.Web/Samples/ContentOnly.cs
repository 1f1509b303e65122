using Abaxial.Web.Shell;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Samples;

/// <summary>Lets only those in who have to do with samples.</summary>
internal sealed class ContentOnly : IEndpointFilter
{
    public ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        if (Visitor.Of(context.HttpContext) is not { } visitor) return ValueTask.FromResult<object?>(TypedResults.Unauthorized());
        return visitor.MayRead ? next(context) : ValueTask.FromResult<object?>(Problem.Forbidden("Samples are content; an administrator looks after people and settings."));
    }
}
