using System.Globalization;

namespace Abaxial.Web.Hosting.Demo;

/// <summary>Says what moment of the demo's season it is; stands still until it is moved.</summary>
internal sealed class SeasonClock : TimeProvider
{
    public DateTimeOffset Moment { get; set; } = Parse("2026-01-01T08:00:00Z");

    public override DateTimeOffset GetUtcNow() => Moment;

    public static DateTimeOffset Parse(string moment) => DateTimeOffset.Parse(moment, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
