using System.Buffers.Text;
using Microsoft.AspNetCore.Identity;

namespace Abaxial.Web.People;

/// <summary>A passkey as its person sees it.</summary>
public sealed record PasskeyLine(string Id, string Name, DateTimeOffset Made)
{
    public static PasskeyLine Of(IdentityUserPasskey<string> row) => new(Base64Url.EncodeToString(row.CredentialId), row.Data.Name ?? "Passkey", row.Data.CreatedAt);
}
