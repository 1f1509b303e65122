using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Sprays;

/// <summary>
/// What somebody expects of the weather to come. It has the form of a station's record and is none: a type of its own, so that no model of observed weather can be
/// handed one by mistake.
/// </summary>
public sealed class Forecast
{
    /// <summary>Days ahead that are shown at most.</summary>
    public const int MostDays = 10;

    private readonly StationRecord expected;

    private Forecast(StationRecord expected) => this.expected = expected;

    /// <summary>Minutes that its standard time is ahead of UTC.</summary>
    public int OffsetMinutes => expected.OffsetMinutes;

    /// <summary>What is odd about its values.</summary>
    public ImmutableArray<Flag> Flags => expected.Flags;

    /// <summary>Takes what was read from a file of expected weather; what cannot be is left out of it, as with a record.</summary>
    public static Forecast Of(StationRecord expected)
    {
        ArgumentNullException.ThrowIfNull(expected);
        return new Forecast(Completion.HumidityFromDewPoint(QualityControl.Check(expected)));
    }

    /// <summary>The days that it tells after the last observed one, ten at most.</summary>
    internal ModelInput After(DateOnly lastObserved, WeatherSettings settings, out Func<DateOnly, bool> isAhead)
    {
        isAhead = day => day > lastObserved && day <= lastObserved.AddDays(MostDays);
        return new ModelInput(expected, settings with { From = null, To = null });
    }
}
