using Abaxial.Data;
using Abaxial.Web.People;
using Abaxial.Web.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Web.Photographs;

/// <summary>Who may see a photograph: whoever may see a sample that names it; the original, with the position and the camera in it, diagnosticians and leads alone.</summary>
internal static class PhotographRights
{
    /// <summary>Whether somebody may see a photograph. One that no sample names is nobody's to see.</summary>
    public static async Task<bool> MaySeeAsync(Ledger ledger, Visitor visitor, string sha256, bool isOriginal, CancellationToken cancel)
    {
        if (isOriginal && !Rights.Of(visitor.Role).Contains(Right.SeeOriginals)) return false;
        await using var context = ledger.Ask();
        var naming = await context.PhotographUses.AsNoTracking().Where(row => row.Sha256 == sha256)
            .Join(context.Samples.AsNoTracking(), use => use.Sample, row => row.Sample, (_, row) => row).ToListAsync(cancel);
        return naming.Exists(row => visitor.Sees(row));
    }
}
