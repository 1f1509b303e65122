using System.Diagnostics;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.Hosting;

/// <summary>What a request is called in the log, in problem documents and on pages, so that one can be found from the other.</summary>
internal static class RequestNumber
{
    /// <summary>The id of its trace; where nothing traces, the server's own.</summary>
    public static string Of(HttpContext context) => Activity.Current?.TraceId.ToHexString() ?? context.TraceIdentifier;
}
