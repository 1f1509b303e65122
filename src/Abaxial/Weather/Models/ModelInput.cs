using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>A checked record with the settings, and what several models make of it, computed once. For one thread.</summary>
public sealed class ModelInput
{
    private readonly Lazy<ImmutableArray<DayWindow>> windows;
    private readonly Lazy<ImmutableArray<DaySummary>> summaries;
    private readonly Lazy<(HourState[] States, bool[] Estimated)> wetness;

    /// <param name="record">A record that went through quality control.</param>
    /// <param name="settings">The settings.</param>
    public ModelInput(StationRecord record, WeatherSettings settings)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(settings);
        Record = record;
        Settings = settings;
        windows = new(() => DayWindow.StartingAt(record, record.Daily is null ? settings.DayStarts : 0), false);
        summaries = new(() => DaySummary.Of(record, windows.Value), false);
        wetness = new(() => LeafWetness.Of(record, settings.Value("wetness.way")), false);
    }

    public StationRecord Record { get; }

    public WeatherSettings Settings { get; }

    /// <summary>The days, by the day boundary of the settings.</summary>
    public ImmutableArray<DayWindow> Windows => windows.Value;

    /// <summary>The figures of each of <see cref="Windows"/>.</summary>
    public ImmutableArray<DaySummary> Summaries => summaries.Value;

    /// <summary>Wetness of every hour.</summary>
    public ReadOnlySpan<HourState> Wetness => wetness.Value.States;

    /// <summary>Which hours of <see cref="Wetness"/> are estimates.</summary>
    public ReadOnlySpan<bool> WetnessEstimated => wetness.Value.Estimated;

    public ReadOnlySpan<double> Temperatures => Record.Hours.Of(Column.Temperature);

    public ReadOnlySpan<double> Humidities => Record.Hours.Of(Column.Humidity);

    public ReadOnlySpan<double> Rains => Record.Hours.Of(Column.Rain);

    /// <summary>The mean temperature of a run, °C.</summary>
    public double MeanOf(Run run)
    {
        double sum = 0;
        foreach (double celsius in Temperatures.Slice(run.Start, run.Length)) sum += celsius;
        return Exact.Mean(sum, run.Length);
    }
}
