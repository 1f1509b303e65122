using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace Abaxial.Data;

/// <summary>
/// Copies every table of the model from one database into another of any kind: whatever the model comes to hold goes along. Both connections are open, each in a transaction of
/// its own; the tables that are written to are there and empty.
/// </summary>
internal sealed class TableCopy
{
    private const int MostParameters = 1_000; // of one statement; both kinds of database take more

    private readonly LedgerContext from;
    private readonly LedgerContext to;
    private readonly IProgress<StoreProgress>? progress;
    private long done;
    private long total;

    private TableCopy(LedgerContext from, LedgerContext to, IProgress<StoreProgress>? progress)
    {
        this.from = from;
        this.to = to;
        this.progress = progress;
    }

    /// <summary>Copies all rows of all tables that cannot be made anew from others.</summary>
    public static async Task RunAsync(LedgerContext from, LedgerContext to, IProgress<StoreProgress>? progress, CancellationToken cancel)
    {
        var copy = new TableCopy(from, to, progress);
        var tables = Tables(from);
        foreach (var table in tables) copy.total += await copy.CountAsync(table, cancel);
        foreach (var table in tables) await copy.CopyAsync(table, cancel);
    }

    /// <summary>The first table that holds something; null where all are empty.</summary>
    public static async Task<string?> FirstWithRowsAsync(LedgerContext context, CancellationToken cancel)
    {
        var copy = new TableCopy(context, context, null);
        foreach (var table in Tables(context).Where(table => table.ClrType != typeof(StoreRow)))
        {
            if (await copy.CountAsync(table, cancel) > 0) return table.GetTableName();
        }

        return null;
    }

    /// <summary>The tables, each after those that its rows point at.</summary>
    private static List<IEntityType> Tables(LedgerContext context)
    {
        var left = context.Model.GetEntityTypes().Where(type => type.GetTableName() is not null && !type.IsMadeAnew()).OrderBy(type => type.GetTableName(), StringComparer.Ordinal).ToList();
        var sorted = new List<IEntityType>();
        while (left.Count > 0)
        {
            var next = left.FirstOrDefault(type => type.GetForeignKeys().All(key => key.PrincipalEntityType == type || !left.Contains(key.PrincipalEntityType))) ?? throw new InvalidOperationException("Tables of the model point at each other in a circle.");
            left.Remove(next);
            sorted.Add(next);
        }

        return sorted;
    }

    private async Task<long> CountAsync(IEntityType table, CancellationToken cancel)
    {
        await using var command = Command(from, $"SELECT count(*) FROM {Quoted(from, table.GetTableName()!)}");
        return Convert.ToInt64(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture);
    }

    private async Task CopyAsync(IEntityType table, CancellationToken cancel)
    {
        var target = to.Model.FindEntityType(table.Name)!;
        var columns = table.GetProperties().Where(property => property.GetComputedColumnSql() is null && target.FindProperty(property.Name) is { } other && other.GetComputedColumnSql() is null).ToList();
        var written = columns.ConvertAll(column => target.FindProperty(column.Name)!);
        int atOnce = Math.Max(1, MostParameters / columns.Count);
        await using var asking = Command(from, $"SELECT {Names(from, columns)} FROM {Quoted(from, table.GetTableName()!)} ORDER BY {Names(from, table.FindPrimaryKey()!.Properties)}");
        await using var reader = await asking.ExecuteReaderAsync(cancel);
        await using var many = Insert(target, written, atOnce);
        var waiting = new List<object?[]>(atOnce);
        while (await reader.ReadAsync(cancel))
        {
            waiting.Add(Row(reader, columns));
            if (waiting.Count < atOnce) continue;
            await WriteAsync(many, written, waiting, cancel);
        }

        if (waiting.Count > 0)
        {
            await using var rest = Insert(target, written, waiting.Count);
            await WriteAsync(rest, written, waiting, cancel);
        }

        await reader.DisposeAsync();
        foreach (var column in written.Where(column => to.Database.IsNpgsql() && column.ValueGenerated == ValueGenerated.OnAdd && column.ClrType is { } type && (type == typeof(int) || type == typeof(long)))) await CountOnAsync(target, column, cancel);
    }

    private async Task WriteAsync(DbCommand command, List<IProperty> columns, List<object?[]> rows, CancellationToken cancel)
    {
        command.Parameters.Clear();
        for (int row = 0; row < rows.Count; row++)
        {
            for (int column = 0; column < columns.Count; column++) command.Parameters.Add(columns[column].GetRelationalTypeMapping().CreateParameter(command, Parameter(row, column), rows[row][column], columns[column].IsNullable));
        }

        await command.ExecuteNonQueryAsync(cancel);
        done += rows.Count;
        rows.Clear();
        progress?.Report(new StoreProgress("database", done, total));
    }

    /// <summary>Numbers that the database gives go on after the highest that was copied.</summary>
    private async Task CountOnAsync(IEntityType table, IProperty column, CancellationToken cancel)
    {
        string name = Quoted(to, table.GetTableName()!), counted = Quoted(to, column.GetColumnName());
        await using var command = Command(to, $"SELECT setval(pg_get_serial_sequence('{name}', '{column.GetColumnName()}'), coalesce(max({counted}), 1), max({counted}) IS NOT NULL) FROM {name}");
        await command.ExecuteNonQueryAsync(cancel);
    }

    /// <summary>The values of a row as the model has them, whatever the database keeps them as.</summary>
    private static object?[] Row(DbDataReader reader, List<IProperty> columns)
    {
        var values = new object?[columns.Count];
        for (int i = 0; i < values.Length; i++)
        {
            if (reader.IsDBNull(i)) continue;
            var mapping = columns[i].GetRelationalTypeMapping();
            object? kept = mapping.GetDataReaderMethod().Invoke(reader, [i]);
            values[i] = mapping.Converter is { } converter ? converter.ConvertFromProvider(kept) : kept;
        }

        return values;
    }

    private DbCommand Insert(IEntityType table, List<IProperty> columns, int rows)
    {
        var places = Enumerable.Range(0, rows).Select(row => $"({string.Join(", ", columns.Select((_, column) => Parameter(row, column)))})");
        return Command(to, $"INSERT INTO {Quoted(to, table.GetTableName()!)} ({Names(to, columns)}) VALUES {string.Join(", ", places)}");
    }

    private static string Parameter(int row, int column) => string.Create(CultureInfo.InvariantCulture, $"@p{row}_{column}");

    private static string Names(LedgerContext context, IEnumerable<IProperty> columns) => string.Join(", ", columns.Select(column => Quoted(context, column.GetColumnName())));

    private static string Quoted(LedgerContext context, string name) => context.GetService<ISqlGenerationHelper>().DelimitIdentifier(name);

    private static DbCommand Command(LedgerContext context, string sql)
    {
        var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.CommandTimeout = 0;
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        return command;
    }
}
