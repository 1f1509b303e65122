namespace Abaxial.Weather;

/// <summary>Values that follow from others, and gaps that were asked to be filled.</summary>
public static class Completion
{
    private static readonly Column[] Filled = [Column.Temperature, Column.Humidity, Column.DewPoint, Column.Wind];

    /// <summary>Humidity from temperature and dew point wherever it is missing, at most 100 %. It is a conversion of measured values, not an estimate.</summary>
    public static StationRecord HumidityFromDewPoint(StationRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var hours = record.Hours;
        if (!hours.Has(Column.Temperature) || !hours.Has(Column.DewPoint)) return record;
        var temperatures = hours.Of(Column.Temperature);
        var dewPoints = hours.Of(Column.DewPoint);
        var measured = hours.Of(Column.Humidity);
        var humidities = new double[hours.Count];
        for (int hour = 0; hour < humidities.Length; hour++)
        {
            double value = measured.IsEmpty ? double.NaN : measured[hour];
            humidities[hour] = double.IsNaN(value) ? Math.Min(100, Exact.Rounded(Psychrometrics.HumidityPercent(temperatures[hour], dewPoints[hour]))) : value;
        }

        return record with { Hours = hours.With(Column.Humidity, humidities) };
    }

    /// <summary>
    /// Fills gaps of temperature, humidity, dew point and wind by a straight line from the value before to the value after. Rain, wetness and radiation are never
    /// filled: nothing tells what fell in an hour that nobody measured.
    /// </summary>
    /// <param name="record">The record.</param>
    /// <param name="longest">The longest gap that is filled, hours; 0 fills none.</param>
    public static StationRecord Fill(StationRecord record, int longest)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentOutOfRangeException.ThrowIfNegative(longest);
        var hours = record.Hours;
        foreach (var column in Filled.Where(column => longest > 0 && hours.Has(column))) hours = Fill(hours, column, longest);
        return record with { Hours = hours };
    }

    private static HourTable Fill(HourTable hours, Column column, int longest)
    {
        double[] values = [.. hours.Of(column)];
        bool[]? estimated = null;
        int before = -1;
        for (int hour = 0; hour < values.Length; hour++)
        {
            if (double.IsNaN(values[hour])) continue;
            int gap = hour - before - 1;
            if (before >= 0 && gap > 0 && gap <= longest)
            {
                estimated ??= new bool[values.Length];
                for (int i = before + 1; i < hour; i++)
                {
                    values[i] = Exact.Rounded(values[before] + ((values[hour] - values[before]) * (i - before) / (hour - before)));
                    estimated[i] = true;
                }
            }

            before = hour;
        }

        return estimated is null ? hours : hours.With(column, values, estimated);
    }
}
