using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;

namespace Abaxial.Web.Hosting;

/// <summary>
/// One line a request: method, route, status, time, number. Never an address as it was asked for, a body, a name or where somebody asked from: the log is kept by others than the
/// clinic's people.
/// </summary>
internal sealed partial class RequestLog(RequestDelegate next, TimeProvider clock, ILogger<RequestLog> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        long start = clock.GetTimestamp();
        try
        {
            await next(context);
        }
        finally
        {
            Note(context, clock.GetElapsedTime(start));
        }
    }

    private void Note(HttpContext context, TimeSpan took)
    {
        int status = context.Response.StatusCode;
        var level = status >= 500 ? LogLevel.Error : LogLevel.Information;
        if (!log.IsEnabled(level)) return;
        string method = Known(context.Request.Method), number = RequestNumber.Of(context);
        var endpoint = context.GetEndpoint() ?? context.Features.Get<IExceptionHandlerFeature>()?.Endpoint;
        string route = (endpoint as RouteEndpoint)?.RoutePattern.RawText ?? (endpoint is null ? "(no route)" : "(other)");
        LogRequest(level, method, route, status, took.TotalMilliseconds, number);
    }

    public static void Add(WebApplicationBuilder builder, ClinicOptions options)
    {
        builder.Logging.ClearProviders();
        builder.Logging.SetMinimumLevel(options.LogLevel);
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning); // the framework's own lines hold addresses as they were asked for
        builder.Logging.AddFilter("System", LogLevel.Warning);
        if (options.LogsAsJson) builder.Logging.AddJsonConsole(json => (json.TimestampFormat, json.UseUtcTimestamp) = ("O", true));
        else builder.Logging.AddSimpleConsole(simple => (simple.SingleLine, simple.TimestampFormat, simple.UseUtcTimestamp) = (true, "yyyy-MM-dd'T'HH:mm:ss.fff'Z' ", true));
        builder.Services.Configure<ConsoleLoggerOptions>(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
    }

    /// <summary>A method is any word that a client cares to send.</summary>
    private static string Known(string method) => HttpMethods.IsGet(method) || HttpMethods.IsPost(method) || HttpMethods.IsPut(method) || HttpMethods.IsDelete(method) || HttpMethods.IsHead(method) || HttpMethods.IsPatch(method) || HttpMethods.IsOptions(method) ? method : "(other)";

    [LoggerMessage(EventId = 1, Message = "{Method} {Route} {Status} in {Milliseconds:F1} ms, request {Number}")]
    private partial void LogRequest(LogLevel level, string method, string route, int status, double milliseconds, string number);
}
