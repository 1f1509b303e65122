using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.WebUtilities;

namespace Abaxial.Web.Hosting.Faults;

/// <summary>The answer to a request that came to nothing: a page for people, a problem document (RFC 9457) for everything else.</summary>
internal static class FaultAnswers
{
    /// <summary>Where the problems stand that name place, found and accepted.</summary>
    private const string Problems = "problems";

    /// <summary>A refusal of what was sent: each problem with place, what was found there and what would do.</summary>
    public static ProblemHttpResult Refusal(IEnumerable<CaseProblem> problems, int status = StatusCodes.Status400BadRequest)
    {
        var document = new ProblemDetails { Status = status };
        document.Extensions[Problems] = problems.Select(problem => new { at = problem.At, found = problem.Found, accepted = problem.Accepted }).ToArray();
        return TypedResults.Problem(document);
    }

    /// <summary>Answers with a status alone, in the form that the one who asks can read.</summary>
    public static Task WriteAsync(HttpContext context, int status)
    {
        if (!WantsPage(context.Request)) return TypedResults.Problem(statusCode: status).ExecuteAsync(context);
        var page = new RazorComponentResult<FaultPage>(new { Status = status, Number = RequestNumber.Of(context) }) { StatusCode = status };
        return page.ExecuteAsync(context);
    }

    /// <summary>Gives every problem document the words for its status and the number of the request.</summary>
    public static void Complete(ProblemDetailsContext problem)
    {
        var document = problem.ProblemDetails;
        int status = document.Status ?? problem.HttpContext.Response.StatusCode;
        var words = FaultWords.Of(status);
        document.Status = status;
        document.Type = document.Type?.StartsWith("https://tools.ietf.org/", StringComparison.Ordinal) == false ? document.Type : "about:blank"; // the framework's names a section on the status
        document.Title ??= ReasonPhrases.GetReasonPhrase(status);
        document.Detail ??= $"{words.Title}. {words.Detail}";
        document.Extensions.Remove("exception");
        document.Extensions["traceId"] = RequestNumber.Of(problem.HttpContext);
    }

    /// <summary>A browser that asks for a page; what programs ask for is never one.</summary>
    private static bool WantsPage(HttpRequest request) =>
        !request.Path.StartsWithSegments("/api") && !request.Path.StartsWithSegments("/health") && request.GetTypedHeaders().Accept.Any(accepted => accepted.MediaType.Value == "text/html");
}
