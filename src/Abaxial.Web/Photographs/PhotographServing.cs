using Abaxial.Data;
using Abaxial.Web.Samples;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;

namespace Abaxial.Web.Photographs;

/// <summary>Shows a photograph to those who may see it.</summary>
internal static class PhotographServing
{
    /// <summary>Bytes under a hash never change; they are for the person who asked alone.</summary>
    private const string Forever = "private, max-age=31536000, immutable";

    public static async Task<IResult> ShowAsync(string sha256, string size, HttpContext http, Visitor visitor, Ledger ledger, PhotographSizes sizes, CancellationToken cancel)
    {
        bool isOriginal = size == PhotographSize.Original;
        var derived = PhotographSize.Derived.FirstOrDefault(known => known.Name == size);
        if (!PhotographFolder.IsHash(sha256) || (derived is null && !isOriginal)) return TypedResults.NotFound();
        if (!await PhotographRights.MaySeeAsync(ledger, visitor, sha256, isOriginal, cancel)) return TypedResults.NotFound();
        var headers = http.Response.Headers;
        try
        {
            return derived is null ? await OriginalAsync(sha256, headers, ledger, cancel) : await DerivedAsync(sha256, derived, headers, sizes, cancel);
        }
        catch (PhotographsBusyException)
        {
            return PhotographAnswers.Busy(http);
        }
    }

    /// <summary>As it came, to be saved and not to be opened by the browser.</summary>
    private static async Task<IResult> OriginalAsync(string sha256, IHeaderDictionary headers, Ledger ledger, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        string file = ledger.Photographs.PathOf(sha256);
        if (await context.Photographs.AsNoTracking().FirstOrDefaultAsync(row => row.Sha256 == sha256, cancel) is not { } row || !File.Exists(file)) return TypedResults.NotFound();
        headers.CacheControl = Forever;
        var (type, extension) = row.MediaType is { } known ? (known, PhotographKind.OfStored(known).Extension) : ("application/octet-stream", "");
        return TypedResults.PhysicalFile(file, type, fileDownloadName: sha256[..16] + extension, entityTag: TagOf(sha256, PhotographSize.Original), enableRangeProcessing: true);
    }

    private static async Task<IResult> DerivedAsync(string sha256, PhotographSize size, IHeaderDictionary headers, PhotographSizes sizes, CancellationToken cancel)
    {
        if (await sizes.FileOfAsync(sha256, size, cancel) is not { } file) return TypedResults.NotFound();
        headers.CacheControl = Forever;
        return TypedResults.PhysicalFile(file, "image/jpeg", entityTag: TagOf(sha256, size.Name));
    }

    private static EntityTagHeaderValue TagOf(string sha256, string size) => new($"\"{sha256}-{size}\"");
}
