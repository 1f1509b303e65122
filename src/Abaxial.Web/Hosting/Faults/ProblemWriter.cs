using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Hosting.Faults;

/// <summary>Writes problem documents, whatever the one who asks says that it can read: a refusal has to arrive.</summary>
internal sealed class ProblemWriter : IProblemDetailsWriter
{
    public bool CanWrite(ProblemDetailsContext context) => true;

    public ValueTask WriteAsync(ProblemDetailsContext context)
    {
        FaultAnswers.Complete(context);
        return new ValueTask(context.HttpContext.Response.WriteAsJsonAsync(context.ProblemDetails, options: null, contentType: "application/problem+json"));
    }
}
