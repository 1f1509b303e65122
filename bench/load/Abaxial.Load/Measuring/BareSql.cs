using System.Data.Common;
using Abaxial.Data;
using Abaxial.Data.Search;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Load.Measuring;

/// <summary>The same questions in plain SQL over a plain connection, as one would write them who knows nothing but the tables.</summary>
internal sealed class BareSql(Ledger ledger)
{
    private const string Scratch = "bare_entries";

    private readonly bool isPostgres = ledger.Place.Postgres is not null;

    public Task<int> ListAsync(SampleQuery query)
    {
        string[] words = query.Text?.Split(' ') ?? [];
        string from = words.Length == 0 ? "samples s" : isPostgres ? "samples s JOIN sample_words w ON w.\"Key\" = s.\"Key\"" : "sample_words JOIN samples s ON s.\"Key\" = sample_words.rowid";
        var conditions = new List<string>();
        if (words.Length > 0) conditions.Add(isPostgres ? $"w.\"Words\" @@ '{string.Join(" & ", words.Select(word => word + ":*"))}'::tsquery" : $"sample_words MATCH '{string.Join(' ', words.Select(word => word + "*"))}'");
        if (query.ByWaiting) conditions.Add("s.\"IsOpen\" = TRUE");
        if (query.Scope is { } scope) conditions.Add($"(s.\"Submitter\" = '{scope.Person}' OR s.\"TakenBy\" = '{scope.Person}')");
        string where = conditions.Count == 0 ? "" : $" WHERE {string.Join(" AND ", conditions)}";
        return ReadAsync($"SELECT s.* FROM {from}{where} ORDER BY {(query.ByWaiting ? "s.\"Waiting\" DESC, s.\"Key\" DESC" : "s.\"Key\" DESC")} LIMIT 50");
    }

    public Task<int> EntriesAsync(string sample) => ReadAsync($"SELECT \"Text\" FROM entries WHERE \"Sample\" = '{sample}' ORDER BY \"Row\"");

    /// <summary>A table like that of the entries, so that the chains are left alone.</summary>
    public async Task PrepareAsync()
    {
        await ClearAsync();
        await DoAsync($"CREATE TABLE {Scratch} AS SELECT * FROM entries LIMIT 0; CREATE INDEX {Scratch}_sample ON {Scratch}(\"Sample\"); CREATE UNIQUE INDEX {Scratch}_id ON {Scratch}(\"Id\");");
    }

    public async Task<int> AppendAsync(int i) =>
        await DoAsync($"INSERT INTO {Scratch}(\"Id\", \"Sample\", \"Device\", \"Place\", \"Kind\", \"Text\", \"Hash\") VALUES ('{i}', 's{i % 100}', 'd', {i}, 'look', '{new string('x', 500)}', '{new string('0', 64)}')") < 0 ? 0 : 1;

    public Task ClearAsync() => DoAsync($"DROP TABLE IF EXISTS {Scratch}");

    private async Task<int> ReadAsync(string sql)
    {
        await using var context = ledger.Ask();
        await context.Database.OpenConnectionAsync();
        await using var command = Command(context, sql);
        await using var reader = await command.ExecuteReaderAsync();
        object[] values = new object[reader.FieldCount];
        int count = 0;
        while (await reader.ReadAsync())
        {
            reader.GetValues(values);
            count++;
        }

        return count;
    }

    private async Task<int> DoAsync(string sql)
    {
        await using var context = ledger.Ask();
        await context.Database.OpenConnectionAsync();
        await using var command = Command(context, sql);
        return await command.ExecuteNonQueryAsync();
    }

    private static DbCommand Command(LedgerContext context, string sql)
    {
        var command = context.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // every word in it is this program's own
        command.CommandText = sql;
#pragma warning restore CA2100
        return command;
    }
}
