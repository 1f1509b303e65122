using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>The words of the names that people are shown by.</summary>
public static class PersonWords
{
    /// <summary>Puts the words of a person's name in the place of those of the name before, within a transaction of the caller's. The name of a person who was erased is not kept.</summary>
    public static async Task WriteAsync(LedgerContext context, string person, string name, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(context);
        await context.PersonWords.Where(row => row.Person == person).ExecuteDeleteAsync(cancel);
        if (await context.Erasures.AnyAsync(row => row.Person == person, cancel)) return;
        context.PersonWords.AddRange(SearchWords.OfText(name).Distinct(StringComparer.Ordinal).Select(word => new PersonWordRow { Word = word, Person = person }));
        await context.SaveChangesAsync(cancel);
    }
}
