using System.Globalization;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.App.Tests;

/// <summary>What holds of a store on SQLite alone.</summary>
public sealed class SqliteTests : IAsyncDisposable
{
    private readonly TestStore store = new(StoreKind.Sqlite);

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_commit_is_on_the_disk_before_it_is_acknowledged_and_what_is_deleted_is_written_over()
    {
        await using var context = (await store.OpenAsync()).Ask();
        await context.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        foreach (var (pragma, value) in new[] { ("journal_mode", "wal"), ("synchronous", "2"), ("secure_delete", "1"), ("foreign_keys", "1"), ("busy_timeout", "60000") })
        {
            command.CommandText = $"PRAGMA {pragma}";
            Assert.Equal(value, Convert.ToString(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken), CultureInfo.InvariantCulture));
        }
    }
}
