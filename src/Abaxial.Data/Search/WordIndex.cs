using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>
/// The table <c>sample_words</c>: an index of SQLite's FTS5, or a <c>tsvector</c> under a GIN index of PostgreSQL. Words are cut and folded before they come here and no
/// dictionary of the database touches them, so that both find the same.
/// </summary>
internal static class WordIndex
{
    /// <summary>Makes the table on SQLite. What is deleted leaves its bytes: an erased person's words must not be read out of the file.</summary>
    public const string CreateSqlite =
        """
        CREATE VIRTUAL TABLE sample_words USING fts5(words, tokenize = 'ascii', detail = none, columnsize = 0, prefix = '2 3');
        INSERT INTO sample_words(sample_words, rank) VALUES ('secure-delete', 1);
        """;

    /// <summary>Makes the table on PostgreSQL.</summary>
    public const string CreatePostgres =
        """
        CREATE TABLE sample_words ("Key" bigint PRIMARY KEY, "Words" tsvector NOT NULL);
        CREATE INDEX "IX_sample_words_Words" ON sample_words USING gin ("Words") WITH (fastupdate = off);
        """;

    public const string Drop = "DROP TABLE sample_words;";

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

    /// <summary>Takes the words of a sample away.</summary>
    public static Task<int> RemoveAsync(LedgerContext context, long key, CancellationToken cancel) => context.Database.IsNpgsql()
        ? context.Database.ExecuteSqlAsync($"DELETE FROM sample_words WHERE \"Key\" = {key}", cancel)
        : context.Database.ExecuteSqlAsync($"DELETE FROM sample_words WHERE rowid = {key}", cancel);

    /// <summary>Makes a connection to SQLite look at the words as they are now. Its check of them goes by what the connection saw last, and would name a damage where others wrote since.</summary>
    public static async Task ReadAnewAsync(LedgerContext context, CancellationToken cancel) =>
        await context.Database.SqlQuery<long>($"SELECT count(*) AS Value FROM sample_words WHERE sample_words MATCH 'x'").ToListAsync(cancel);
}
