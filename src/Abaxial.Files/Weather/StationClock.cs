using System.Globalization;
using NodaTime;
using NodaTime.TimeZones;

namespace Abaxial.Files.Weather;

/// <summary>Turns the times of rows into UTC, and says what the station's standard time is: its zone's time without daylight saving.</summary>
/// <param name="zoneId">The IANA zone that was named; null where none was.</param>
internal sealed class StationClock(string? zoneId)
{
    private static readonly LocalDateTime YearOne = new(1, 1, 1, 0, 0);

    private readonly DateTimeZone? zone = zoneId is null ? null : DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneId) ?? throw new ArgumentException($"There is no zone {zoneId}.", nameof(zoneId));
    private int? firstOffset, leastOffset;
    private long lastUtc = long.MinValue;
    private int? zoneOffset;

    /// <summary>Minutes that standard time is ahead of UTC.</summary>
    /// <remarks>Where no zone was named it is the least offset of all rows: daylight saving only adds.</remarks>
    public int StandardOffset => zoneOffset ?? ((leastOffset - firstOffset) % 60 == 0 ? leastOffset : firstOffset) ?? 0;

    /// <summary>The zone's name: as it was given, <c>UTC</c>, or an offset such as <c>+05:30</c>.</summary>
    public string ZoneName => zoneId ?? (StandardOffset == 0 ? "UTC" : OffsetName(StandardOffset));

    /// <summary>The part of the offset that is no whole hour, minutes; known once the first row was read.</summary>
    public int MinutesPastHour => ((((zoneOffset ?? firstOffset) ?? 0) % 60) + 60) % 60;

    public static string OffsetName(int minutes) =>
        string.Create(CultureInfo.InvariantCulture, $"{(minutes < 0 ? '-' : '+')}{Math.Abs(minutes) / 60:00}:{Math.Abs(minutes) % 60:00}");

    /// <summary>Seconds UTC since the start of the year 1.</summary>
    /// <param name="time">The row's time.</param>
    /// <param name="line">The row's line.</param>
    /// <param name="column">The column of the time.</param>
    /// <exception cref="RefusedException">The time has no offset and no zone was named, or the zone's clocks never showed it.</exception>
    public long UtcOf(RowTime time, long line, string column)
    {
        if (time.OffsetMinutes is { } offset)
        {
            firstOffset ??= offset;
            leastOffset = Math.Min(leastOffset ?? offset, offset);
            long utc = time.ClockSeconds - (offset * 60);
            if (zone is not null) zoneOffset ??= StandardOf(zone, time.ClockSeconds);
            return lastUtc = utc;
        }

        if (zone is null) throw new RefusedException(line, column, "a local time without offset", "a time with an offset or Z", "a zone named with --zone");
        zoneOffset ??= StandardOf(zone, time.ClockSeconds);
        return lastUtc = Local(zone, time.ClockSeconds, line, column);
    }

    private long Local(DateTimeZone zone, long clockSeconds, long line, string column)
    {
        var local = YearOne.PlusSeconds(clockSeconds);
        var mapping = zone.MapLocal(local);
        if (mapping.Count == 0)
        {
            throw new RefusedException(line, column, $"{local:uuuu-MM-dd HH:mm}, which the clocks of {zone.Id} skipped", "times that the clocks showed", "a zone without daylight saving, such as Etc/GMT-1, for a station that keeps standard time");
        }

        long earlier = clockSeconds - mapping.EarlyInterval.WallOffset.Seconds;

        // An hour that the clocks showed twice: the first time it comes it is the first, then the second.
        return mapping.Count == 1 || earlier > lastUtc ? earlier : clockSeconds - mapping.LateInterval.WallOffset.Seconds;
    }

    /// <summary>The lesser of the offsets of January and July: daylight saving adds, also where a law calls summer time the standard.</summary>
    private static int StandardOf(DateTimeZone zone, long clockSeconds)
    {
        int year = YearOne.PlusSeconds(clockSeconds).Year;
        int OffsetIn(int month) => zone.GetUtcOffset(new LocalDateTime(year, month, 1, 12, 0).InZone(zone, Resolvers.LenientResolver).ToInstant()).Seconds / 60;
        return Math.Min(OffsetIn(1), OffsetIn(7));
    }
}

/// <summary>The zones that can be named.</summary>
public static class StationZones
{
    /// <summary>Whether the IANA database has a zone of that name.</summary>
    public static bool Exists(string id) => DateTimeZoneProviders.Tzdb.GetZoneOrNull(id) is not null;
}
