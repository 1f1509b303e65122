using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>
/// The table <c>sample_words</c>: SQLite's FTS5. Words are cut and folded before they come here, so that every database finds the same.
/// </summary>
internal static class WordIndex
{
    /// <summary>Makes the table. What is deleted leaves its bytes: an erased person's words must not be read out of the file.</summary>
    public const string CreateSqlite =
        """
        CREATE VIRTUAL TABLE sample_words USING fts5(words, tokenize = 'ascii', detail = none, columnsize = 0, prefix = '2 3');
        INSERT INTO sample_words(sample_words, rank) VALUES ('secure-delete', 1);
        """;

    /// <summary>The words of a sample as they are stored; null where it has none.</summary>
    public static async Task<string?> FindAsync(LedgerContext context, long key, CancellationToken cancel) =>
        (await context.Database.SqlQuery<string>($"SELECT words AS Value FROM sample_words WHERE rowid = {key}").ToListAsync(cancel)).SingleOrDefault();

    /// <summary>Puts the words of a sample in the place of those that it had.</summary>
    public static async Task WriteAsync(LedgerContext context, long key, string? before, string words, CancellationToken cancel)
    {
        if (before == words) return;
        if (before is not null) await RemoveAsync(context, key, cancel);
        await context.Database.ExecuteSqlAsync($"INSERT INTO sample_words(rowid, words) VALUES ({key}, {words})", cancel);
    }

    /// <summary>Takes the words of a sample away.</summary>
    public static Task<int> RemoveAsync(LedgerContext context, long key, CancellationToken cancel) => context.Database.ExecuteSqlAsync($"DELETE FROM sample_words WHERE rowid = {key}", cancel);

    /// <summary>Makes a connection look at the words as they are now. SQLite's own check of them goes by what the connection saw last, and would name what others wrote since a damage.</summary>
    public static async Task ReadAnewAsync(LedgerContext context, CancellationToken cancel) =>
        await context.Database.SqlQuery<long>($"SELECT count(*) AS Value FROM sample_words WHERE sample_words MATCH 'x'").ToListAsync(cancel);

    /// <summary>All of the terms have to be there; a term is met by any of its words.</summary>
    public static string Expression(ImmutableArray<SearchTerm> terms) =>
        string.Join(" AND ", terms.Select(term => $"({string.Join(" OR ", term.Words.Select(word => $"\"{word}\"").Concat(term.Beginnings.Select(word => $"\"{word}\" *")))})"));
}

/// <summary>One thing that has to be there.</summary>
/// <param name="Words">Whole words any of which will do. Letters, digits and signs for private use only.</param>
/// <param name="Beginnings">Beginnings of words any of which will do.</param>
internal sealed record SearchTerm(ImmutableArray<string> Words, ImmutableArray<string> Beginnings)
{
    public static SearchTerm Exactly(params ReadOnlySpan<string> words) => new([.. words], []);
}
