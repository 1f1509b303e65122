namespace Abaxial.Weather.Arrival;

/// <summary>Sums what hours of temperature do, from the hour in which something was seen back into the record.</summary>
internal sealed class BackwardWalk
{
    private readonly StationRecord record;
    private readonly double[] temperatures;

    /// <param name="record">A record of hours, its days without gaps between them.</param>
    /// <param name="end">The place after the last hour that counts; it may lie after the record.</param>
    public BackwardWalk(StationRecord record, int end)
    {
        this.record = record;
        temperatures = record.Hours.Of(Column.Temperature).ToArray();
        End = end;
    }

    /// <summary>The place after the last hour that counts.</summary>
    public int End { get; }

    public DateTime TimeOf(int hour) => record.TimeOf(0).AddHours(hour);

    /// <summary>The latest place from which on what the hours up to another add up to reaches a goal; null where the record begins later.</summary>
    public int? Back(int from, double goal, Func<double, double> shareOf)
    {
        double sum = 0;
        int hour = from;
        while (Exact.Rounded(sum) < goal)
        {
            if (--hour < record.First) return null;
            sum += shareOf(At(hour));
        }

        return hour;
    }

    /// <summary>What the hours from a place to the end add up to.</summary>
    public double Sum(int from, Func<double, double> shareOf)
    {
        double sum = 0;
        for (int hour = from; hour < End; hour++) sum += shareOf(At(hour));
        return sum;
    }

    public int MissingFrom(int from)
    {
        int missing = 0;
        for (int hour = from; hour < End; hour++) missing += double.IsNaN(At(hour)) ? 1 : 0;
        return missing;
    }

    private double At(int hour) => hour >= 0 && hour < temperatures.Length ? temperatures[hour] : double.NaN;
}
