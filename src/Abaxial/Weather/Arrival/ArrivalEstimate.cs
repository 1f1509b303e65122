using System.Collections.Immutable;
using Abaxial.Weather.Models;

namespace Abaxial.Weather.Arrival;

/// <summary>
/// When the lesions of a field may have begun, from their size or age and the station's temperatures. It says when, never from where. The band is never narrower
/// than one cycle, and where more than two cycles have passed there is none.
/// </summary>
public sealed record ArrivalEstimate
{
    /// <summary>Cycles that may have passed at most: later, what is oldest in the field need not be what came first.</summary>
    public const double MostCycles = 2;

    /// <summary>The longest that sporangia lived outdoors in dry air, hours: they may have lain on the leaf so long (Sunseri, Johnson and Dasgupta 2002, abstract seen).</summary>
    public const int SporeHours = 24;

    /// <summary>The share of hours without temperature from which the dates are not worth giving. The project's judgement.</summary>
    public const double MostMissing = 0.25;

    private ArrivalEstimate(LesionFinding finding) => Finding = finding;

    /// <summary>What it was computed from.</summary>
    public LesionFinding Finding { get; }

    /// <summary>Why there is no answer; null where there is one.</summary>
    public DayNote? Declined { get; private init; }

    /// <summary>The first and the last hour in which infection may have happened, in the standard time of the record.</summary>
    public (DateTime Earliest, DateTime Latest) Infection { get; private init; }

    /// <summary>The same for the arrival of the spores.</summary>
    public (DateTime Earliest, DateTime Latest) Spores => (Infection.Earliest.AddHours(-SporeHours), Infection.Latest);

    /// <summary>The length of the last cycle before the lesions were seen, hours: the least width of the band.</summary>
    public int CycleHours { get; private init; }

    /// <summary>Whether the band was widened to one cycle.</summary>
    public bool IsWidened { get; private init; }

    /// <summary>Cycles that passed since the middle of the band.</summary>
    public double Cycles { get; private init; }

    /// <summary>Hours without temperature from the band's beginning until the lesions were seen.</summary>
    public int MissingHours { get; private init; }

    /// <summary>Wet periods in the band that could have served infection, in order.</summary>
    public ImmutableArray<WetPeriod> Periods { get; private init; } = [];

    /// <summary>Estimates when lesions began.</summary>
    /// <param name="finding">The lesions and the record.</param>
    /// <param name="settings">The way of estimating wetness, and latent periods that the user supplied.</param>
    public static ArrivalEstimate Of(LesionFinding finding, WeatherSettings settings)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(settings);
        var refused = new ArrivalEstimate(finding);
        var record = finding.Record;
        if (record.Daily is not null || !record.Hours.Has(Column.Temperature)) return refused with { Declined = DayNote.Of("no-temperature") };
        if (record.Days[^1].DayNumber - record.Days[0].DayNumber != record.Days.Length - 1) return refused with { Declined = DayNote.Of("days-apart") };
        if (finding.Lesion is { Of: LesionMeasureOf.Millimetres, Most: > LesionGrowth.MostMillimetres }) return refused with { Declined = DayNote.Of("too-wide", (int)LesionGrowth.MostMillimetres) };

        var walk = new BackwardWalk(record, (int)Math.Floor((finding.Seen - record.TimeOf(0)).TotalHours));
        var pace = new CyclePace(settings.Pathogen?.LatentPeriods ?? []);
        int? latest = Begin(finding.Lesion, walk, pace, isFast: true), earliest = Begin(finding.Lesion, walk, pace, isFast: false);
        int? cycle = walk.Back(walk.End, 1, pace.Middle) is { } start ? walk.End - start : null;
        if (earliest is null || latest is null || cycle is null) return refused with { Declined = DayNote.Of("record-starts") };

        var (from, to) = Widened(earliest.Value, latest.Value, cycle.Value, walk.End);
        int missing = walk.MissingFrom(from);
        if (missing > MostMissing * (walk.End - from)) return refused with { Declined = DayNote.Of("missing", missing, walk.End - from) };
        double cycles = walk.Sum((from + to) / 2, pace.Middle);
        if (cycles > MostCycles) return refused with { Declined = DayNote.Of("third-cycle"), Cycles = cycles };
        return refused with
        {
            Infection = (walk.TimeOf(from), walk.TimeOf(to)),
            CycleHours = cycle.Value,
            IsWidened = latest - earliest < cycle,
            Cycles = cycles,
            MissingHours = missing,
            Periods = WetPeriod.In(record, settings.Value("wetness.way"), from, to),
        };
    }

    /// <summary>The hour in which infection happened at one end of the band; null where the record does not reach so far back.</summary>
    private static int? Begin(LesionMeasure lesion, BackwardWalk walk, CyclePace pace, bool isFast)
    {
        if (lesion.Of == LesionMeasureOf.DaysVisible)
        {
            int seen = walk.End - (int)Math.Round((isFast ? lesion.Least : lesion.Most) * StationRecord.HoursOfDay, MidpointRounding.AwayFromZero);
            return walk.Back(seen, 1, isFast ? pace.IncubationFast : pace.IncubationSlow);
        }

        double growth = (isFast ? lesion.Least : lesion.Most) - LesionGrowth.FirstMillimetres;
        if (isFast && growth < 0) return walk.Back(walk.End, 1, pace.IncubationFast); // visible, but not yet as wide as one that bears spores
        double perHour = (isFast ? LesionGrowth.FastestPerDay : LesionGrowth.SlowestPerDay) / StationRecord.HoursOfDay;
        double Growth(double celsius) => perHour * (double.IsNaN(celsius) ? isFast ? 1 : 0 : LesionGrowth.Response(celsius));
        return walk.Back(walk.End, Math.Max(0, growth), Growth) is { } first ? walk.Back(first, 1, isFast ? pace.Fast : pace.Slow) : null;
    }

    /// <summary>The band, at least one cycle wide: half of what lacks on either side, but not past the hour in which the lesions were seen.</summary>
    private static (int From, int To) Widened(int earliest, int latest, int cycle, int seen)
    {
        int lacking = Math.Max(0, cycle - (latest - earliest));
        int to = Math.Min(latest + (lacking / 2), seen);
        return (Math.Min(earliest, to - Math.Max(cycle, latest - earliest)), to);
    }
}
