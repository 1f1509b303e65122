using System.Security.Cryptography;
using Abaxial.Samples;

namespace Abaxial.Web.Samples;

/// <summary>Ids for entries that are still to be written: a form carries one, so that pressing twice writes once.</summary>
internal static class EntryIds
{
    public static EntryId New(TimeProvider clock) => EntryId.From(clock.GetUtcNow(), RandomNumberGenerator.GetBytes(10));
}
