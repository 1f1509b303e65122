using System.Text;
using Abaxial.Files.Weather;
using Abaxial.Weather;

namespace Abaxial.Tests.Weather;

/// <summary>Which hour and day a row belongs to.</summary>
public sealed class StationTimeTests
{
    [Theory]
    [InlineData("2026-06-01T05:00Z", 5)]
    [InlineData("2026-06-01T05:00:00Z", 5)]
    [InlineData("2026-06-01 05:00:00.0+00:00", 5)]
    [InlineData("2026-06-01T05:53Z", 5)]
    [InlineData("2026-06-01T05:00+00", 5)]
    [InlineData("2026-06-01T05:00-0000", 5)]
    public void A_reading_belongs_to_the_clock_hour_that_its_time_falls_in(string time, int hour) => Assert.Equal(hour, Records.Record($"time,temperature\n{time},1\n").First);

    [Fact]
    public void Midnight_opens_a_day()
    {
        var record = Records.Record("time,temperature\n2026-05-31T24:00Z,1\n2026-06-01T23:00Z,2\n");
        Assert.Equal([new DateOnly(2026, 6, 1)], record.Days);
        Assert.Equal((0, 23), (record.First, record.Last));
    }

    [Fact]
    public void Times_in_UTC_are_read_into_the_days_of_the_zone_in_standard_time()
    {
        var record = Records.Record("time,temperature\n2026-06-30T22:00Z,1\n2026-06-30T23:00Z,2\n", new StationReadOptions { Zone = "Europe/Berlin" });
        Assert.Equal([new DateOnly(2026, 6, 30), new DateOnly(2026, 7, 1)], record.Days); // +01:00, also in June
        Assert.Equal(("Europe/Berlin", 60, 23, 24), (record.Zone, record.OffsetMinutes, record.First, record.Last));
    }

    [Theory]
    [InlineData("Europe/Dublin", 0)]         // whose law calls summer time the standard
    [InlineData("America/New_York", -300)]
    [InlineData("Asia/Kolkata", 330)]
    [InlineData("Australia/Sydney", 600)]    // summer in January
    [InlineData("Pacific/Chatham", 765)]
    public void Standard_time_is_the_one_without_daylight_saving(string zone, int minutes) =>
        Assert.Equal(minutes, Records.Record("time,temperature\n2026-06-30T12:00Z,1\n", new StationReadOptions { Zone = zone }).OffsetMinutes);

    [Fact]
    public void A_day_of_local_times_has_24_hours_in_spring_and_in_autumn()
    {
        var spring = Local("2026-03-29T00:00", "2026-03-29T01:00", "2026-03-29T03:00", "2026-03-29T04:00");
        Assert.Equal([0, 1, 2, 3], Hours(spring)); // 03:00 of summer time is 02:00 of standard time
        var autumn = Local("2026-10-25T01:00", "2026-10-25T02:00", "2026-10-25T02:00", "2026-10-25T03:00");
        Assert.Equal([0, 1, 2, 3], Hours(autumn));
        Assert.Empty(autumn.Flags);

        static StationRecord Local(params string[] times) => Records.Record($"time,temperature\n{string.Join('\n', times.Select((time, i) => $"{time},{i}"))}\n", new StationReadOptions { Zone = "Europe/Berlin" });
        static int[] Hours(StationRecord record) => [.. record.Hours.Of(Column.Temperature).ToArray().Index().Where(hour => !double.IsNaN(hour.Item)).Select(hour => hour.Index)];
    }

    [Fact]
    public void A_time_that_the_clocks_skipped_is_refused_with_the_way_out()
    {
        var refusal = Records.Read("time,temperature\n2026-03-29T02:00,1\n", new StationReadOptions { Zone = "Europe/Berlin" }).Refusal!;
        Assert.Equal((2, "time"), (refusal.Line, refusal.Column));
        Assert.Contains(refusal.Accepted, accepted => accepted.Contains("Etc/GMT-1", StringComparison.Ordinal));
    }

    [Fact]
    public void Offsets_that_change_with_summer_time_are_brought_to_the_lesser()
    {
        var record = Records.Record("time,temperature\n2026-03-29T00:00+01:00,0\n2026-03-29T01:00+01:00,1\n2026-03-29T03:00+02:00,2\n");
        Assert.Equal(("+01:00", 60, 0, 2), (record.Zone, record.OffsetMinutes, record.First, record.Last));
        var summerFirst = Records.Record("time,temperature\n2026-10-25T02:00+02:00,0\n2026-10-25T02:00+01:00,1\n");
        Assert.Equal((60, 1, 2), (summerFirst.OffsetMinutes, summerFirst.First, summerFirst.Last));
    }

    [Fact]
    public void Half_hours_of_an_offset_do_not_split_hours()
    {
        var record = Records.Record("time,temperature\n2026-06-01T00:00+05:30,0\n2026-06-01T01:00+05:30,1\n");
        Assert.Equal((330, 0, 1), (record.OffsetMinutes, record.First, record.Last));
        Assert.Equal([new DateOnly(2026, 6, 1)], record.Days);
    }

    [Fact]
    public void Shifting_times_and_zone_together_changes_nothing()
    {
        var utc = Rows("2026-06-01", "Z", null);
        var east = Rows("2026-06-01", "", "Etc/GMT-9");
        Assert.Equal(utc.Days, east.Days);
        Assert.Equal(utc.Hours.Of(Column.Temperature).ToArray(), east.Hours.Of(Column.Temperature).ToArray());

        static StationRecord Rows(string day, string offset, string? zone) =>
            Records.Record($"time,temperature\n{string.Concat(Enumerable.Range(0, 24).Select(hour => $"{day}T{hour:00}:00{offset},{hour}\n"))}", new StationReadOptions { Zone = zone });
    }

    [Fact]
    public void The_leap_day_and_the_turn_of_the_year_are_days_like_others()
    {
        Assert.Equal(3, Records.Record("time,temperature\n2028-02-28T12:00Z,1\n2028-03-01T12:00Z,2\n").Days.Length);
        Assert.Equal([new DateOnly(2026, 12, 31), new DateOnly(2027, 1, 1)], Records.Record("time,temperature\n2026-12-31T23:00Z,1\n2027-01-01T00:00Z,2\n").Days);
    }

    [Fact]
    public void Two_readings_of_one_time_are_flagged_and_the_last_in_the_file_counts()
    {
        var record = Records.Record("time,temperature\n2026-06-01T05:00Z,1\n2026-06-01T06:00Z,2\n2026-06-01T05:00Z,3\n");
        Assert.Equal(3, record.Hours.Of(Column.Temperature)[5]);
        Assert.Equal(5, Assert.Single(record.Flags, flag => flag.Kind == FlagKind.Duplicate).Hour);
    }

    [Fact]
    public void A_special_report_within_an_hour_takes_the_place_of_the_one_before_it()
    {
        var text = new StringBuilder("time,temperature\n");
        for (int hour = 0; hour < 24; hour++) text.Append($"2026-06-01T{hour:00}:53Z,{hour}\n").Append(hour == 7 ? "2026-06-01T07:58Z,70\n" : "");
        var record = Records.Record(text.ToString());
        Assert.Equal([6, 70, 8], record.Hours.Of(Column.Temperature)[6..9].ToArray());
        Assert.Equal(7, Assert.Single(record.Flags).Hour);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(2)]
    public void Rows_within_the_hour_are_their_mean_and_rain_their_sum(int perHour)
    {
        var text = new StringBuilder("time,temperature,rain\n");
        for (int i = 0; i < 24 * perHour; i++) text.Append($"2026-06-01T{i / perHour:00}:{i % perHour * (60 / perHour):00}Z,{i % perHour},0.1\n");
        var record = Records.Record(text.ToString());
        Assert.All(record.Hours.Of(Column.Temperature).ToArray(), celsius => Assert.Equal((perHour - 1) / 2.0, celsius));
        Assert.All(record.Hours.Of(Column.Rain).ToArray(), rain => Assert.Equal(perHour / 10.0, rain));
        Assert.Empty(record.Flags);
    }

    [Fact]
    public void Rows_may_be_48_hours_out_of_order_and_no_more()
    {
        Assert.NotNull(Records.Read("time,temperature\n2026-06-03T05:00Z,1\n2026-06-01T05:00Z,2\n").Record);
        var refusal = Records.Read("time,temperature\n2026-06-03T05:00Z,1\n2026-06-01T04:59Z,2\n").Refusal!;
        Assert.Equal((3, "time"), (refusal.Line, refusal.Column));
    }
}
