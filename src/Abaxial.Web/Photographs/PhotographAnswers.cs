using System.Globalization;
using Abaxial.Data;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Photographs;

/// <summary>What is answered to whoever sends a photograph.</summary>
/// <param name="Sha256">The hash of its bytes, by which it is named from now on.</param>
/// <param name="MediaType">What its bytes are.</param>
/// <param name="Bytes">How many bytes it has.</param>
/// <param name="Width">Pixels across, the right way up.</param>
/// <param name="Height">Pixels down, the right way up.</param>
public sealed record PhotographStored(string Sha256, string MediaType, long Bytes, int Width, int Height);

/// <summary>Refusals, as problem documents (RFC 9457) with what was found and what is accepted.</summary>
internal static class PhotographAnswers
{
    private static readonly TimeSpan ComeAgain = TimeSpan.FromSeconds(5);

    public static ProblemHttpResult Refused(int status, string title, CaseProblem problem) => TypedResults.Problem(
        statusCode: status,
        title: title,
        extensions: new Dictionary<string, object?> { ["problems"] = new[] { problem } });

    public static ProblemHttpResult TooLarge(long? found) => Refused(
        StatusCodes.Status413PayloadTooLarge,
        "The photograph is too large.",
        new CaseProblem("/photograph", found is { } bytes ? $"{bytes} bytes" : $"more than {PhotographFolder.MostBytes} bytes", [$"at most {PhotographFolder.MostBytes} bytes"]));

    public static ProblemHttpResult Busy(HttpContext http)
    {
        http.Response.Headers.RetryAfter = ComeAgain.TotalSeconds.ToString(CultureInfo.InvariantCulture);
        return TypedResults.Problem(statusCode: StatusCodes.Status503ServiceUnavailable, title: "Too many photographs are coming in at the moment. Send it again in a few seconds.");
    }
}
