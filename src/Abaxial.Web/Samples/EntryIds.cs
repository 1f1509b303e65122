using System.Security.Cryptography;
using System.Text;
using Abaxial.Samples;

namespace Abaxial.Web.Samples;

/// <summary>Ids for entries that are still to be written: a form carries one, so that pressing twice writes once.</summary>
internal static class EntryIds
{
    private const int RandomBytes = 10;

    public static EntryId New(TimeProvider clock) => EntryId.From(clock.GetUtcNow(), RandomNumberGenerator.GetBytes(RandomBytes));

    /// <summary>The id of one of several entries that one form writes: the same whenever the same form brings the same thing.</summary>
    /// <param name="form">The id that the form carries.</param>
    /// <param name="part">What tells the entry from the others of the form.</param>
    public static EntryId Of(EntryId form, string part) =>
        EntryId.From(DateTimeOffset.FromUnixTimeMilliseconds(form.UnixMilliseconds), SHA256.HashData(Encoding.UTF8.GetBytes($"{form} {part}")).AsSpan(0, RandomBytes));
}
