namespace Abaxial.Weather;

/// <summary>The columns of a record, a value an hour; <see cref="double.NaN"/> is a value that is missing. A column that the station lacks is not there at all.</summary>
public sealed class HourTable
{
    private readonly double[]?[] values;
    private readonly bool[]?[] estimated;

    private HourTable(int count, double[]?[] values, bool[]?[] estimated)
    {
        Count = count;
        this.values = values;
        this.estimated = estimated;
    }

    /// <summary>How many hours there are.</summary>
    public int Count { get; }

    /// <summary>A table that takes the arrays over: they are not to be changed any more.</summary>
    /// <param name="count">How many hours there are.</param>
    /// <param name="columns">The values of each column that is there, as many as there are hours.</param>
    /// <exception cref="ArgumentException">A column has another length.</exception>
    public static HourTable Of(int count, IReadOnlyDictionary<Column, double[]> columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        var values = new double[]?[Columns.Count];
        foreach (var (column, hours) in columns)
        {
            if (hours.Length != count) throw new ArgumentException($"{column.Word()} has {hours.Length} hours, not {count}.", nameof(columns));
            values[(int)column] = hours;
        }

        return new HourTable(count, values, new bool[]?[Columns.Count]);
    }

    /// <summary>Whether the station has the column, if only for one hour.</summary>
    public bool Has(Column column) => values[(int)column] is not null;

    /// <summary>The values of a column; empty where the station lacks it.</summary>
    public ReadOnlySpan<double> Of(Column column) => values[(int)column];

    /// <summary>Which values of a column are estimates; empty where none is.</summary>
    public ReadOnlySpan<bool> EstimatedOf(Column column) => estimated[(int)column];

    /// <summary>The same table with one column's values changed.</summary>
    /// <param name="column">Which column.</param>
    /// <param name="hours">Its values, taken over.</param>
    /// <param name="areEstimates">Which of them are estimates, taken over; null where none is.</param>
    public HourTable With(Column column, double[] hours, bool[]? areEstimates = null)
    {
        ArgumentNullException.ThrowIfNull(hours);
        if (hours.Length != Count) throw new ArgumentException($"{column.Word()} has {hours.Length} hours, not {Count}.", nameof(hours));
        var newValues = (double[]?[])values.Clone();
        var newEstimated = (bool[]?[])estimated.Clone();
        newValues[(int)column] = hours;
        newEstimated[(int)column] = areEstimates;
        return new HourTable(Count, newValues, newEstimated);
    }

    /// <summary>How many of the hours from one to another, the last included, lack the column's value.</summary>
    public int MissingIn(Column column, int first, int last)
    {
        var hours = Of(column);
        int missing = 0;
        for (int hour = first; hour <= last && hour < hours.Length; hour++)
        {
            if (double.IsNaN(hours[hour])) missing++;
        }

        return missing;
    }
}
