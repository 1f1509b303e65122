using Abaxial.Data;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Photographs;

/// <summary>Who may see a photograph: whoever may see a sample that names it. One that no sample names is nobody's to see.</summary>
internal static class PhotographRights
{
    /// <summary>Whether whoever asks may see a photograph; the original, with the position and the camera in it, is for diagnosticians and leads alone.</summary>
    public static async Task<bool> MaySeeAsync(HttpContext http, Ledger ledger, string sha256, bool isOriginal, CancellationToken cancel)
    {
        if (isOriginal && !MaySeeOriginals(http)) return false;
        await using var context = ledger.Ask();
        var samples = await context.PhotographUses.AsNoTracking().Where(row => row.Sha256 == sha256).Select(row => row.Sample).ToListAsync(cancel);
        return samples.Any(sample => MaySeeSample(http, sample));
    }

    // A clinic without accounts is its diagnostician's alone.
    private static bool MaySeeOriginals(HttpContext _) => true;

    private static bool MaySeeSample(HttpContext _, string __) => true;
}
