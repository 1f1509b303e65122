using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>
/// The table <c>sample_words</c>: an index of SQLite's FTS5, or a <c>tsvector</c> under a GIN index of PostgreSQL. Words are cut and folded before they come here and no
/// dictionary of the database touches them, so that both find the same.
/// </summary>
internal static class WordIndex
{
    /// <summary>Makes the table on SQLite.</summary>
    public const string CreateSqlite =
        """
        CREATE VIRTUAL TABLE sample_words USING fts5(words, tokenize = 'ascii', detail = none, columnsize = 0, prefix = '2 3');
        CREATE VIRTUAL TABLE sample_vocabulary USING fts5vocab('sample_words', 'row');
        """;

    /// <summary>Letters of the longest beginning that SQLite's index holds by itself.</summary>
    private const int IndexedBeginning = 3;
    private const int MostWords = 64;

    /// <summary>Makes the table on PostgreSQL.</summary>
    public const string CreatePostgres =
        """
        CREATE TABLE sample_words ("Key" bigint PRIMARY KEY, "Words" tsvector NOT NULL);
        CREATE INDEX "IX_sample_words_Words" ON sample_words USING gin ("Words") WITH (fastupdate = off);
        """;

    public const string DropSqlite = "DROP TABLE sample_vocabulary; DROP TABLE sample_words;";

    public const string DropPostgres = "DROP TABLE sample_words;";

    /// <summary>Puts the words of a sample, one space between, in the place of those that it had.</summary>
    public static async Task WriteAsync(LedgerContext context, long key, string words, CancellationToken cancel)
    {
        if (context.Database.IsNpgsql())
        {
            string[] all = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            await context.Database.ExecuteSqlAsync(
                $"""
                INSERT INTO sample_words AS w ("Key", "Words") VALUES ({key}, array_to_tsvector({all}))
                ON CONFLICT ("Key") DO UPDATE SET "Words" = EXCLUDED."Words" WHERE w."Words" <> EXCLUDED."Words"
                """, cancel);
            return;
        }

        var before = await context.Database.SqlQuery<string>($"SELECT words AS Value FROM sample_words WHERE rowid = {key}").ToListAsync(cancel);
        if (before.Count == 1 && before[0] == words) return;
        if (before.Count == 1) await RemoveAsync(context, key, cancel);
        await context.Database.ExecuteSqlAsync($"INSERT INTO sample_words(rowid, words) VALUES ({key}, {words})", cancel);
    }

    /// <summary>
    /// The term for a beginning, or any of the words. FTS5 puts all samples of a long beginning together before it gives the first, which is slow for what most samples hold; word by word it
    /// reads no more than is asked for. So a long beginning becomes the words that there are, where they are few.
    /// </summary>
    public static async Task<SearchTerm> TermAsync(LedgerContext context, string beginning, IEnumerable<string> orWords, CancellationToken cancel)
    {
        var asked = new SearchTerm([.. orWords], [beginning]);
        if (context.Database.IsNpgsql() || beginning.Length <= IndexedBeginning) return asked;
        string end = beginning + "\U0010FFFF";
        var words = await context.Database.SqlQuery<string>($"SELECT term AS Value FROM sample_vocabulary WHERE term >= {beginning} AND term <= {end} LIMIT {MostWords + 1}").ToListAsync(cancel);
        return words.Count > MostWords ? asked : new SearchTerm([.. asked.Words, .. words], []);
    }

    /// <summary>Takes the words of a sample away.</summary>
    public static Task<int> RemoveAsync(LedgerContext context, long key, CancellationToken cancel) => context.Database.IsNpgsql()
        ? context.Database.ExecuteSqlAsync($"DELETE FROM sample_words WHERE \"Key\" = {key}", cancel)
        : context.Database.ExecuteSqlAsync($"DELETE FROM sample_words WHERE rowid = {key}", cancel);

    /// <summary>
    /// Drops what was deleted from the bytes of the index, in the transaction that erased a person. FTS5 only marks words as deleted until their part of the index is written anew; its own
    /// way to delete at once makes every write of a sample seventeen times as dear.
    /// </summary>
    public static async Task PurgeAsync(LedgerContext context, CancellationToken cancel)
    {
        if (!context.Database.IsNpgsql()) await context.Database.ExecuteSqlAsync($"INSERT INTO sample_words(sample_words) VALUES ('optimize')", cancel);
    }

    /// <summary>Makes a connection to SQLite look at the words as they are now. Its check of them goes by what the connection saw last, and would name a damage where others wrote since.</summary>
    public static async Task ReadAnewAsync(LedgerContext context, CancellationToken cancel) =>
        await context.Database.SqlQuery<long>($"SELECT count(*) AS Value FROM sample_words WHERE sample_words MATCH 'x'").ToListAsync(cancel);
}
