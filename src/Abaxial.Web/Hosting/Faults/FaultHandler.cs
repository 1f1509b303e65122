using System.Diagnostics;
using System.Text.Json;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Abaxial.Web.Hosting.Faults;

/// <summary>
/// Turns what was thrown into an answer. Of a fault of the program the log gets its kind and where it was thrown, never its message: that may hold what somebody wrote.
/// </summary>
internal sealed partial class FaultHandler(ILogger<FaultHandler> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (exception is BadHttpRequestException bad)
        {
            httpContext.Response.StatusCode = bad.StatusCode;
            if (bad.InnerException is JsonException json) await FaultAnswers.Refusal([ProblemOf(json)]).ExecuteAsync(httpContext);
            else await FaultAnswers.WriteAsync(httpContext, bad.StatusCode);
            return true;
        }

        LogFault(RequestNumber.Of(httpContext), Describe(exception), new StackTrace(exception, fNeedFileInfo: false).ToString());
        httpContext.Response.StatusCode = StatusCodes.Status500InternalServerError;
        await FaultAnswers.WriteAsync(httpContext, StatusCodes.Status500InternalServerError);
        return true;
    }

    /// <summary>The place in a body that is no JSON, or not the JSON that is taken.</summary>
    private static CaseProblem ProblemOf(JsonException json)
    {
        string at = string.IsNullOrEmpty(json.Path) || json.Path == "$" ? "" : $"/{json.Path.TrimStart('$').TrimStart('.').Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Replace('.', '/')}";
        string found = json.LineNumber is { } line ? $"line {line + 1}, byte {json.BytePositionInLine + 1}" : "no JSON";
        return new CaseProblem(at, found, ["JSON of the form that the API describes at /api/openapi.json"]);
    }

    private static string Describe(Exception exception) => exception.InnerException is { } inner ? $"{exception.GetType().FullName} of {inner.GetType().FullName}" : exception.GetType().FullName!;

    [LoggerMessage(1, LogLevel.Error, "Request {Number} failed: {Fault}\n{Trace}")]
    private partial void LogFault(string number, string fault, string trace);
}
