using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Priors;

/// <summary>What the weather before a trouble was noticed says of the causes, as factors on their priors.</summary>
/// <param name="Factors">The factors, in order of causes' ids; a cause that the weather says nothing of is not among them.</param>
/// <param name="Neutral">The other causes that were asked about, and why each has no factor.</param>
public sealed record WeatherPrior(ImmutableArray<WeatherFactor> Factors, ImmutableArray<NoFactor> Neutral)
{
    /// <summary>The share of measured hours below which a record says nothing. The project's judgement.</summary>
    public const double LeastMeasured = 0.95;

    /// <summary>The share of hours that a suspect humidity sensor called dry, above which a record says nothing. The project's judgement.</summary>
    public const double MostSuspect = 0.1;

    /// <summary>Stretches in which a sensor stood still, above which a record says nothing. The project's judgement.</summary>
    public const int MostStill = 3;

    /// <summary>Computes the factors.</summary>
    /// <param name="input">The record, after quality control, and the settings.</param>
    /// <param name="noticed">The day on which the trouble was noticed; the last that counts.</param>
    /// <param name="host">tomato or potato.</param>
    /// <param name="saysLittle">Whether a station says little about the plants (tunnel, greenhouse, store, harvest, overhead watering): then no factor is under one. So too where the record has irrigation in these days.</param>
    public static WeatherPrior Of(ModelInput input, DateOnly noticed, string host, bool saysLittle)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(host);
        saysLittle |= WasWateredFromAbove(input.Record, noticed);
        var factors = ImmutableArray.CreateBuilder<WeatherFactor>();
        var neutral = ImmutableArray.CreateBuilder<NoFactor>();
        foreach (var response in InfectionResponse.All.Where(response => response.Host is null || response.Host == host).OrderBy(response => response.Cause, StringComparer.Ordinal))
        {
            if (Unfit(input, noticed, response) is { } why)
            {
                neutral.Add(new NoFactor(response.Cause, why));
                continue;
            }

            var days = InfectionDays.Of(input, noticed, response);
            double factor = Factor(response, days);
            if (saysLittle && factor < 1) neutral.Add(new NoFactor(response.Cause, DayNote.Of("says-little")));
            else if (factor is < 1 or > 1) factors.Add(new WeatherFactor(response, factor, days));
            else neutral.Add(new NoFactor(response.Cause, DayNote.Of("middling")));
        }

        return new WeatherPrior(factors.ToImmutable(), neutral.ToImmutable());
    }

    /// <summary>Whether a record is good enough for the factor of late blight.</summary>
    public static bool IsGood(ModelInput input, DateOnly noticed) => Unfit(input, noticed, InfectionResponse.All[0]) is null;

    /// <summary>A factor moves off one only as far as it would whatever the hours were that cannot be told.</summary>
    private static double Factor(InfectionResponse response, InfectionDays days)
    {
        double low = Hundredths(response.FactorOf(days.Low)), high = Hundredths(response.FactorOf(days.High));
        return low > 1 ? low : high < 1 ? high : 1;
    }

    private static double Hundredths(double factor) => Math.Round(factor, 2, MidpointRounding.AwayFromZero);

    private static DayNote? Unfit(ModelInput input, DateOnly noticed, InfectionResponse response)
    {
        var record = input.Record;
        Column[] needs = response.WetBy == WetBy.Humidity || !record.Hours.Has(Column.Wetness) ? [Column.Temperature, Column.Humidity] : [Column.Temperature, Column.Wetness];
        if (record.Daily is not null || !needs.All(record.Hours.Has)) return DayNote.Of("no-columns");
        var days = InfectionDays.Of(input, noticed, response);
        int needed = (int)Math.Ceiling(LeastMeasured * days.Hours);
        if (days.Measured < needed) return DayNote.Of("too-few-hours", days.Measured, needed, days.Hours);
        int mostSuspect = (int)Math.Floor(MostSuspect * days.Hours);
        if (days.Suspect > mostSuspect) return DayNote.Of("dry-in-rain", days.Suspect, mostSuspect);
        int still = record.Flags.Count(flag => flag.Kind == FlagKind.Persistence && flag.Column is { } column && needs.Contains(column) && IsIn(record, flag.Hour, noticed));
        return still > MostStill ? DayNote.Of("still", still, MostStill) : null;
    }

    /// <summary>Water from above wets leaves in any weather.</summary>
    private static bool WasWateredFromAbove(StationRecord record, DateOnly noticed)
    {
        var irrigations = record.Hours.Of(Column.Irrigation);
        for (int hour = 0; hour < irrigations.Length; hour++)
        {
            if (irrigations[hour] > 0 && IsIn(record, hour, noticed)) return true;
        }

        return false;
    }

    private static bool IsIn(StationRecord record, int hour, DateOnly noticed)
    {
        var day = record.Days[hour / StationRecord.HoursOfDay];
        return day > noticed.AddDays(-InfectionDays.Days) && day <= noticed;
    }
}

/// <summary>A factor on the prior of one cause.</summary>
/// <param name="Response">What it was computed by.</param>
/// <param name="Factor">The factor, in hundredths; not 1.</param>
/// <param name="Days">The days of infection that it rests on.</param>
public sealed record WeatherFactor(InfectionResponse Response, double Factor, InfectionDays Days);

/// <summary>A cause without a factor.</summary>
/// <param name="Cause">Its id.</param>
/// <param name="Why">Why.</param>
public sealed record NoFactor(string Cause, DayNote Why);
