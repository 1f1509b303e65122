using System.Data.Common;
using Abaxial.Data;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Abaxial.App.Tests;

/// <summary>Whatever is changed behind the ledger's back, the check names it.</summary>
public abstract class CheckTests(StoreKind kind) : IAsyncLifetime
{
    private readonly TestStore store = new(kind);
    private Ledger ledger = null!;
    private EntryId sample;
    private string photograph = "";

    /// <summary>What a fault in a row of a table is named by.</summary>
    private static readonly Dictionary<Type, string[]> Names = new()
    {
        [typeof(EntryRow)] = ["entry "],
        [typeof(ChainRow)] = ["device "],
        [typeof(SealedRow)] = ["text ", "entry "],
        [typeof(ErasureRow)] = ["person "],
        [typeof(NumberRow)] = ["sample "],
        [typeof(PhotographRow)] = ["photograph ", "entry "],
        [typeof(StoreRow)] = ["the database"],
    };

    public static TheoryData<Type, string> Columns
    {
        get
        {
            using var context = new SqliteLedgerContext(SqliteLedgerContext.OptionsFor("nowhere.db", mayCreate: false));
            var columns = new TheoryData<Type, string>();
            foreach (var table in context.Model.GetEntityTypes().Where(table => Names.ContainsKey(table.ClrType)))
            {
                foreach (var column in table.GetProperties()) columns.Add(table.ClrType, column.Name);
            }

            return columns;
        }
    }

    public async ValueTask InitializeAsync()
    {
        ledger = await store.OpenAsync();
        sample = await TestStore.TakeInAsync(ledger);
        var text = TestStore.Seal("g-11", "Ansel Crakeby, Kestle Bight");
        await TestStore.AppendAsync(ledger, sample, new MessageNoted("in", text.Seal()), text);
        photograph = (await ledger.AddPhotographAsync(new MemoryStream([1, 2, 3]), TestContext.Current.CancellationToken)).Sha256!;
        await TestStore.AppendAsync(ledger, sample, new PhotographAdded(photograph, "image/jpeg", 3));
        await TestStore.AppendAsync(ledger, sample, new HandedOver("d-02"));
        var forgotten = TestStore.Seal("g-10", "Odile Wrenfold");
        await TestStore.AppendAsync(ledger, sample, new MessageNoted("in", forgotten.Seal()), forgotten);
        await ledger.EraseAsync("g-10", "a-01", TestContext.Current.CancellationToken);
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public async Task A_changed_byte_anywhere_in_an_entry_s_text_is_found_by_the_entry_s_name()
    {
        var random = new Random(3);
        foreach (var (row, id, text) in await EntriesAsync())
        {
            for (int attempt = 0; attempt < 6; attempt++)
            {
                int at = random.Next(text.Length);
                string changed = text[..at] + (text[at] == '7' ? '8' : '7') + text[(at + 1)..];
                await ExecuteAsync("""UPDATE entries SET "Text" = @value WHERE "Row" = @row""", ("@value", changed), ("@row", row));
                Assert.Equal($"entry {id}", (await TestStore.CheckAsync(ledger)).Faults[0].What);
            }

            await ExecuteAsync("""UPDATE entries SET "Text" = @value WHERE "Row" = @row""", ("@value", text), ("@row", row));
        }

        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Theory]
    [MemberData(nameof(Columns))]
    public async Task A_changed_value_in_any_column_is_found(Type rows, string column)
    {
        await using var context = ledger.Ask();
        var table = context.Model.FindEntityType(rows)!;
        var (changed, key) = (table.FindProperty(column)!, table.FindPrimaryKey()!.Properties[0]);
        string name = table.GetTableName()!;
        await using (var change = await ChangeAsync(name, key.GetColumnName(), changed)) Assert.Equal(1, await change.ExecuteNonQueryAsync(TestContext.Current.CancellationToken));
        var faults = (await TestStore.CheckAsync(ledger)).Faults;
        Assert.NotEmpty(faults);
        Assert.Contains(faults, fault => Names[rows].Any(known => fault.What.StartsWith(known, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task An_entry_that_was_changed_together_with_all_that_stands_beside_it_is_found_by_the_one_after_it()
    {
        await using var context = ledger.Ask();
        var rows = await context.Entries.AsNoTracking().OrderBy(row => row.Place).ToListAsync(TestContext.Current.CancellationToken);
        string changed = rows[2].Text.Replace("d-01", "d-09", StringComparison.Ordinal);
        var forged = new EntryRow { Row = rows[2].Row, Id = rows[2].Id, Sample = rows[2].Sample, Device = rows[2].Device, Place = rows[2].Place, Kind = rows[2].Kind, Text = changed, Hash = Entry.HashOf(changed), Received = rows[2].Received };
        forged.Receipt = Receipt.Of(forged);
        context.Update(forged);
        await context.SaveChangesAsync(TestContext.Current.CancellationToken);
        Assert.Equal($"entry {rows[3].Id}", (await TestStore.CheckAsync(ledger)).Faults[0].What);
    }

    [Fact]
    public async Task An_entry_that_was_taken_out_is_found_wherever_it_stood()
    {
        await using var context = ledger.Ask();
        foreach (var row in await context.Entries.AsNoTracking().ToListAsync(TestContext.Current.CancellationToken))
        {
            await context.Entries.Where(there => there.Row == row.Row).ExecuteDeleteAsync(TestContext.Current.CancellationToken);
            Assert.NotEmpty((await TestStore.CheckAsync(ledger)).Faults);
            context.Add(row);
            await context.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
    }

    [Theory]
    [InlineData("""UPDATE sealed_texts SET "Text" = 'Odile Wrenfold'""", "text ")]
    [InlineData("""UPDATE sealed_texts SET "Person" = 'g-12'""", "text ")]
    [InlineData("""UPDATE sealed_texts SET "Salt" = "Salt" || "Salt" """, "text ")]
    [InlineData("""DELETE FROM sealed_texts""", "entry ")]
    [InlineData("""DELETE FROM photographs""", "entry ")]
    [InlineData("""UPDATE photographs SET "Bytes" = 4""", "photograph ")]
    [InlineData("""UPDATE chains SET "Place" = 9""", "device ")]
    [InlineData("""UPDATE chains SET "Hash" = 'x'""", "device ")]
    [InlineData("""DELETE FROM chains""", "device ")]
    [InlineData("""DELETE FROM numbers""", "sample ")]
    [InlineData("""UPDATE numbers SET "Running" = 7""", "sample ")]
    [InlineData("INSERT INTO numbers VALUES ('26-0099-X', '01ARZ3NDEKTSV4RRFFQ69G5FAV', 26, 99)", "sample ")]
    [InlineData("INSERT INTO erasures VALUES ('g-11')", "person ")]
    [InlineData("""DELETE FROM store""", "the database")]
    public async Task Whatever_else_was_changed_is_found(string change, string what)
    {
        await ExecuteAsync(change);
        Assert.Contains((await TestStore.CheckAsync(ledger)).Faults, fault => fault.What.StartsWith(what, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_photograph_that_was_changed_or_taken_away_is_found_by_its_name()
    {
        string file = ledger.Photographs.PathOf(photograph);
        await File.WriteAllBytesAsync(file, [1, 2, 4], TestContext.Current.CancellationToken);
        Assert.Equal($"photograph {photograph}", Assert.Single((await TestStore.CheckAsync(ledger)).Faults).What);
        File.Delete(file);
        Assert.Equal($"photograph {photograph}", Assert.Single((await TestStore.CheckAsync(ledger)).Faults).What);
    }

    [Fact]
    public async Task A_photograph_that_only_the_folder_knows_is_no_fault_until_its_bytes_are_changed()
    {
        string unnoted = (await ledger.AddPhotographAsync(new MemoryStream([4, 5, 6]), TestContext.Current.CancellationToken)).Sha256!;
        await ExecuteAsync("""DELETE FROM photographs WHERE "Bytes" = 3 AND "Sha256" = @value""", ("@value", unnoted));
        Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        await File.WriteAllBytesAsync(ledger.Photographs.PathOf(unnoted), [4, 5, 7], TestContext.Current.CancellationToken);
        Assert.Equal($"photograph {unnoted}", Assert.Single((await TestStore.CheckAsync(ledger)).Faults).What);
    }

    [Fact]
    public async Task An_entry_whose_author_had_seen_one_that_is_not_here_is_named()
    {
        var there = await store.OpenAsync("there");
        await TestStore.MergeAsync(there, await TestStore.TextsAsync(ledger));
        var late = await TestStore.AppendAsync(there, sample, new HandedOver("d-03"));
        var later = await TestStore.AppendAsync(there, sample, new HandedOver("d-04"));
        await TestStore.MergeAsync(ledger, [later.Canonical()]);
        Assert.Contains((await TestStore.CheckAsync(ledger)).Faults, fault => fault.What == $"entry {later.Id}" && fault.Found.Contains(late.Id.ToString(), StringComparison.Ordinal));
    }

    private async Task<List<(long Row, string Id, string Text)>> EntriesAsync()
    {
        await using var context = ledger.Ask();
        return [.. (await context.Entries.OrderBy(row => row.Place).ToListAsync(TestContext.Current.CancellationToken)).Select(row => (row.Row, row.Id, row.Text))];
    }

    /// <summary>The command that changes the value of a column in the first row of a table as little as can be.</summary>
    private async Task<DbCommand> ChangeAsync(string table, string key, IProperty column)
    {
        var context = ledger.Ask();
        await context.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"""SELECT "{column.GetColumnName()}", "{key}" FROM "{table}" ORDER BY "{key}" LIMIT 1""";
        object value, row;
        await using (var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken))
        {
            Assert.True(await reader.ReadAsync(TestContext.Current.CancellationToken), table);
            value = column.ClrType == typeof(DateTimeOffset) ? reader.GetDateTime(0) : reader.GetValue(0);
            row = reader.GetValue(1);
        }

        command.CommandText = $"""UPDATE "{table}" SET "{column.GetColumnName()}" = @value WHERE "{key}" = @row""";
        foreach (var (name, bound) in new[] { ("@value", value is DBNull ? Something(column) : Changed(value)), ("@row", row) })
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (name, bound);
            command.Parameters.Add(parameter);
        }

        return command;
    }

    /// <summary>A value where there was none.</summary>
    private static object Something(IProperty column) => column.ClrType == typeof(string) ? "image/png" : 64;

    private static object Changed(object value) => value switch
    {
        string text => text[..^1] + (char)(text[^1] ^ 1),
        byte[] bytes => (byte[])[.. bytes[..^1], (byte)(bytes[^1] ^ 1)],
        int number => number + 64,
        long number => number + 64,
        DateTime moment => moment.AddMicroseconds(1),
        _ => throw new InvalidOperationException($"{value.GetType()} is not known here."),
    };

    private Task ExecuteAsync(string sql, params (string Name, object Value)[] values) => TestStore.ExecuteAsync(ledger, sql, values);
}

public sealed class CheckTests_on_SQLite() : CheckTests(StoreKind.Sqlite);

public sealed class CheckTests_on_PostgreSQL() : CheckTests(StoreKind.Postgres);
