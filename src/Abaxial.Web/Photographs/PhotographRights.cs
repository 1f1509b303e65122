using Abaxial.Data;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Photographs;

/// <summary>
/// Who may see a photograph: whoever may see a sample that names it; the original, with the position and the camera in it, diagnosticians and leads alone. A clinic without accounts is one
/// diagnostician's, who sees every sample.
/// </summary>
internal static class PhotographRights
{
    /// <summary>Whether a photograph may be seen. One that no sample names is nobody's to see.</summary>
    public static async Task<bool> MaySeeAsync(Ledger ledger, string sha256, CancellationToken cancel)
    {
        await using var context = ledger.Ask();
        return await context.PhotographUses.AsNoTracking().AnyAsync(row => row.Sha256 == sha256, cancel);
    }
}
