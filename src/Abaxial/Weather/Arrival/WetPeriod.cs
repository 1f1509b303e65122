using System.Collections.Immutable;

namespace Abaxial.Weather.Arrival;

/// <summary>A wet period in which infection was possible, with the limits of Becktell, Daughtrey and Fry 2005, Plant Disease 89:975-985 (abstract seen).</summary>
/// <param name="From">Its first hour, standard time of the record.</param>
/// <param name="To">The end of its last hour.</param>
/// <param name="Hours">Wet hours.</param>
/// <param name="MeanCelsius">Their mean temperature, °C.</param>
/// <param name="IsFavorable">Long enough for most infections, at a temperature that is good for them.</param>
/// <param name="IsEstimated">Its wetness rests on estimates, not on a sensor.</param>
public sealed record WetPeriod(DateTime From, DateTime To, int Hours, double MeanCelsius, bool IsFavorable, bool IsEstimated)
{
    /// <summary>The shortest wet period in which infection was seen, hours.</summary>
    public const int LeastHours = 2;

    /// <summary>Most infections are made within so many wet hours.</summary>
    public const int FavorableHours = 6;

    /// <summary>Infection is good from here on, °C.</summary>
    public const double FavorableFromCelsius = 13;

    /// <summary>And up to here, °C.</summary>
    public const double FavorableToCelsius = 23;

    /// <summary>A trace of infection was seen here, °C (work of the James Hutton Institute, in a grower report that was seen).</summary>
    public const double LeastCelsius = 6;

    /// <summary>Very little infection from here on, °C.</summary>
    public const double MostCelsius = 28;

    /// <summary>The wet periods with an hour in a band of hours, that are long and mild enough.</summary>
    /// <param name="record">The record.</param>
    /// <param name="way">The way of estimating wetness where it was not measured.</param>
    /// <param name="from">The first hour of the band.</param>
    /// <param name="to">The last hour of the band.</param>
    public static ImmutableArray<WetPeriod> In(StationRecord record, string way, int from, int to)
    {
        ArgumentNullException.ThrowIfNull(record);
        var (states, estimated) = LeafWetness.Of(record, way);
        var temperatures = record.Hours.Of(Column.Temperature);
        var periods = ImmutableArray.CreateBuilder<WetPeriod>();
        foreach (var run in Run.In(states))
        {
            if (run.Last < from || run.Start > to || run.Length < LeastHours) continue;
            double sum = 0;
            foreach (double celsius in temperatures.Slice(run.Start, run.Length)) sum += celsius;
            double mean = Exact.Mean(sum, run.Length);
            if (!(mean >= LeastCelsius && mean < MostCelsius)) continue;
            bool isFavorable = run.Length >= FavorableHours && mean is >= FavorableFromCelsius and <= FavorableToCelsius;
            var begin = record.TimeOf(run.Start);
            periods.Add(new WetPeriod(begin, begin.AddHours(run.Length), run.Length, mean, isFavorable, estimated.AsSpan(run.Start, run.Length).Contains(true)));
        }

        return periods.ToImmutable();
    }
}
