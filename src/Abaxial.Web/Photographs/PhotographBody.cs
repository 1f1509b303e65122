using Abaxial.Weighing;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace Abaxial.Web.Photographs;

/// <summary>The bytes of a photograph in a request: the body itself, or the one file of a form. They are read as they come, never held.</summary>
internal sealed record PhotographBody
{
    /// <summary>What the rest of a form may take.</summary>
    public const long RoomForForm = 64 << 10;

    private const int LongestBoundary = 100;

    /// <summary>Where the bytes come from; null where there is a problem.</summary>
    public Stream? Bytes { get; private init; }

    public CaseProblem? Problem { get; private init; }

    /// <summary>The status that goes with the problem.</summary>
    public int Status { get; private init; }

    public static async Task<PhotographBody> OpenAsync(HttpRequest request, CancellationToken cancel)
    {
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type)) return Unsupported(request.ContentType);
        if (type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase)) return await OfFormAsync(request, type, cancel);
        bool isBytes = type.Type.Equals("image", StringComparison.OrdinalIgnoreCase) || type.MediaType.Equals("application/octet-stream", StringComparison.OrdinalIgnoreCase);
        return isBytes ? new PhotographBody { Bytes = request.Body } : Unsupported(request.ContentType);
    }

    private static async Task<PhotographBody> OfFormAsync(HttpRequest request, MediaTypeHeaderValue type, CancellationToken cancel)
    {
        string? boundary = HeaderUtilities.RemoveQuotes(type.Boundary).Value;
        if (string.IsNullOrEmpty(boundary) || boundary.Length > LongestBoundary) return Bad("/headers/content-type", "a form without a usable boundary", "multipart/form-data with a boundary");
        try
        {
            var reader = new MultipartReader(boundary, request.Body) { HeadersCountLimit = 8, HeadersLengthLimit = 4 << 10 };
            while (await reader.ReadNextSectionAsync(cancel) is { } section)
            {
                if (ContentDispositionHeaderValue.TryParse(section.ContentDisposition, out var part) && part.IsFileDisposition()) return new PhotographBody { Bytes = section.Body };
            }
        }
        catch (Exception broken) when (broken is InvalidDataException || (broken is IOException && broken is not BadHttpRequestException))
        {
            return Bad("/body", "a form that cannot be read", "multipart/form-data with one file");
        }

        return Bad("/body", "a form without a file", "multipart/form-data with one file");
    }

    private static PhotographBody Unsupported(string? found) => new()
    {
        Status = StatusCodes.Status415UnsupportedMediaType,
        Problem = new CaseProblem("/headers/content-type", string.IsNullOrEmpty(found) ? "(missing)" : found, ["image/jpeg", "image/png", "image/webp", "image/heic", "application/octet-stream", "multipart/form-data"]),
    };

    private static PhotographBody Bad(string at, string found, string accepted) => new() { Status = StatusCodes.Status400BadRequest, Problem = new CaseProblem(at, found, [accepted]) };
}
