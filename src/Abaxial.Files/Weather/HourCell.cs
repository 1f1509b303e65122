namespace Abaxial.Files.Weather;

/// <summary>The rows of one hour while more may come.</summary>
internal sealed class HourCell(int columns)
{
    private int[] seconds = new int[1];
    private double[] values = new double[columns];
    private int last;

    public long Key { get; private set; }

    public int Count { get; private set; }

    /// <summary>Whether a row came for a time that had one already.</summary>
    public bool HasRepeat { get; private set; }

    public void Start(long key)
    {
        Key = key;
        Count = 0;
        HasRepeat = false;
    }

    /// <summary>Takes a row; one for the same second takes the place of the one before it.</summary>
    public void Add(int second, ReadOnlySpan<double> row)
    {
        int at = Count > 0 && second > seconds[Count - 1] ? Count : Find(second);
        if (at == Count)
        {
            if (Count == seconds.Length)
            {
                Array.Resize(ref seconds, 4 * Count);
                Array.Resize(ref values, 4 * Count * columns);
            }

            Count++;
        }
        else
        {
            HasRepeat = true;
        }

        seconds[at] = second;
        row.CopyTo(values.AsSpan(at * columns, columns));
        last = at;
    }

    /// <summary>The row that stands last in the file.</summary>
    public ReadOnlySpan<double> Last => values.AsSpan(last * columns, columns);

    /// <summary>A column's mean over the rows that have it, or its sum, for which every row must have it.</summary>
    public double Together(int column, bool isSum)
    {
        double sum = 0;
        int count = 0;
        for (int row = 0; row < Count; row++)
        {
            double value = values[(row * columns) + column];
            if (double.IsNaN(value))
            {
                if (isSum) return double.NaN;
                continue;
            }

            sum += value;
            count++;
        }

        return count == 0 ? double.NaN : Math.Round(isSum ? sum : sum / count, 9, MidpointRounding.AwayFromZero);
    }

    private int Find(int second)
    {
        int at = seconds.AsSpan(0, Count).IndexOf(second);
        return at < 0 ? Count : at;
    }
}
