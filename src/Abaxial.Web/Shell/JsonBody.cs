using System.Reflection;
using System.Text.Json;
using Abaxial.Samples;
using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Abaxial.Web.Shell;

/// <summary>
/// The JSON that a request sends, read as strictly as a case file: no more bytes and levels than allowed, each name once, whole surrogate pairs. Members are read by name, and what is
/// not known is refused, so that nobody can set what was not offered.
/// </summary>
internal sealed class JsonBody : IDisposable
{
    private readonly JsonDocument? document;

    private JsonBody(JsonDocument? document, ProblemHttpResult? refusal)
    {
        this.document = document;
        Refusal = refusal;
    }

    /// <summary>The answer where it was refused.</summary>
    public ProblemHttpResult? Refusal { get; }

    /// <summary>Where what is wrong with its members is noted.</summary>
    public CaseProblems Problems { get; } = new();

    /// <summary>What was sent.</summary>
    /// <exception cref="InvalidOperationException">It was refused.</exception>
    public JsonElement Root => document?.RootElement ?? throw new InvalidOperationException("The body was refused.");

    /// <summary>Reads the body of a request; the endpoint says by <see cref="BodyLimit"/> how long it may be.</summary>
    public static async ValueTask<JsonBody?> BindAsync(HttpContext context, ParameterInfo _)
    {
        int most = context.GetEndpoint()?.Metadata.GetMetadata<BodyLimit>()?.Bytes ?? CaseLimits.Bytes;
        if (!context.Request.HasJsonContentType()) return Refused(StatusCodes.Status415UnsupportedMediaType, "/", context.Request.ContentType ?? "no media type", "application/json");
        if (await BodyBytes.ReadAsync(context.Request, most, context.RequestAborted) is not { } bytes) return Refused(StatusCodes.Status413PayloadTooLarge, "", $"more than {most} bytes", $"at most {most} bytes");
        var problems = new CaseProblems();
        if (!CaseForm.Check(bytes, problems) || problems.Count > 0) return new JsonBody(null, Problem.Of(StatusCodes.Status400BadRequest, problems));
        var body = new JsonBody(JsonDocument.Parse(bytes, new JsonDocumentOptions { MaxDepth = CaseForm.Options.MaxDepth }), null);
        context.Response.RegisterForDispose(body);
        if (PayloadMembers.IsWritable(body.Root)) return body;
        return Refused(StatusCodes.Status400BadRequest, "", "a number that no double holds", "numbers that fit a double");
    }

    public void Dispose() => document?.Dispose();

    private static JsonBody Refused(int status, string at, string found, string accepted) => new(null, Problem.Of(status, [new CaseProblem(at, found, [accepted])]));
}

/// <summary>How many bytes the body of a request may have; where nothing is said, as many as a case file.</summary>
internal sealed record BodyLimit(int Bytes);

/// <summary>Reads the bytes of a request, and no more of them than are wanted.</summary>
internal static class BodyBytes
{
    /// <summary>The bytes; null where there are more than allowed.</summary>
    public static async Task<byte[]?> ReadAsync(HttpRequest request, int most, CancellationToken cancel)
    {
        if (request.ContentLength > most) return null;
        using var bytes = new MemoryStream();
        byte[] buffer = new byte[16 << 10];
        int read;
        while ((read = await request.Body.ReadAsync(buffer, cancel)) > 0)
        {
            if (bytes.Length + read > most) return null;
            bytes.Write(buffer, 0, read);
        }

        return bytes.ToArray();
    }
}
