using System.Globalization;

namespace Abaxial.Web.Samples;

/// <summary>How long ago something was, as people say it.</summary>
internal static class Ages
{
    public static string Of(DateTimeOffset moment, DateTimeOffset now) => (now - moment) switch
    {
        { TotalMinutes: < 1 } => "just now",
        { TotalMinutes: < 60 } age => Say((int)age.TotalMinutes, "minute"),
        { TotalHours: < 24 } age => Say((int)age.TotalHours, "hour"),
        { TotalDays: < 14 } age => Say((int)age.TotalDays, "day"),
        _ => moment.UtcDateTime.ToString("d MMMM yyyy", CultureInfo.InvariantCulture),
    };

    /// <summary>A moment as it is read on a page, in UTC.</summary>
    public static string Moment(DateTimeOffset moment) => moment.UtcDateTime.ToString("d MMM yyyy, HH:mm 'UTC'", CultureInfo.InvariantCulture);

    private static string Say(int count, string unit) => count == 1 ? $"1 {unit} ago" : $"{count} {unit}s ago";
}
