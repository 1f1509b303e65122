using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Beaumont 1947, Smith 1956, the criteria of 2017, and Bourke 1953.</summary>
public sealed class PeriodRuleTests
{
    [Theory]
    [InlineData(48, 10.0, 75, 1)]
    [InlineData(47, 10.0, 75, 0)]
    [InlineData(48, 9.9, 75, 0)]
    [InlineData(48, 10.0, 74.9, 0)]
    public void Beaumont_asks_for_48_hours_at_its_limits_or_above(int hours, double celsius, double percent, double third)
    {
        var record = Records.Hourly(96, (Column.Temperature, hour => hour < 48 + 24 && hour >= 72 - hours ? celsius : 5), (Column.Humidity, _ => percent));
        Assert.Equal([null, null, third, 0], new Beaumont().Values(record));
    }

    [Fact]
    public void Beaumont_a_colder_hour_in_sixty_makes_two_runs_of_which_none_is_long_enough() =>
        Assert.Equal([null, null, 0, 0], new Beaumont().Values(Records.Hourly(96, (Column.Temperature, hour => hour == 40 || hour >= 72 ? 9.9 : 12), (Column.Humidity, _ => 80))));

    [Fact]
    public void Beaumont_every_day_with_an_hour_that_closes_48_counts() =>
        Assert.Equal([null, null, 1, 1, 0], new Beaumont().Values(Records.Hourly(120, (Column.Temperature, hour => hour is >= 6 and < 77 ? 12 : 8), (Column.Humidity, _ => 80))));

    [Fact]
    public void Beaumont_is_untold_while_a_missing_hour_is_within_48()
    {
        var record = Records.Hourly(24 * 7, (Column.Temperature, hour => hour == 60 ? double.NaN : 12), (Column.Humidity, _ => 80));
        Assert.Equal([null, null, null, null, null, 1, 1], new Beaumont().Values(record));
    }

    [Fact]
    public void Beaumont_strict_limits_leave_the_limits_out()
    {
        var record = Records.Hourly(96, (Column.Temperature, _ => 10), (Column.Humidity, _ => 75));
        Assert.Equal(1, new Beaumont().Values(record)[2]);
        Assert.Equal(0, new Beaumont().Values(record, Records.With("beaumont.limits", "strict"))[2]);
    }

    [Theory] // the reference's worked examples and both sides of each limit
    [InlineData(10.0, 11, 12.3, 14, 1)]
    [InlineData(10.0, 10, 12.3, 14, 0.5)]
    [InlineData(10.0, 11, 12.3, 10, 0.5)]
    [InlineData(10.0, 10, 12.3, 10, 0.5)]
    [InlineData(10.0, 9, 12.3, 14, 0)]
    [InlineData(9.9, 15, 12, 15, 0)]
    [InlineData(12, 15, 9.9, 15, 0)]
    public void Smith_two_days_are_a_period_a_near_miss_or_neither(double lowBefore, int hoursBefore, double low, int hours, double value) =>
        Assert.Equal(value, Smith.Value(lowBefore, hoursBefore, low, hours));

    [Fact]
    public void Smith_days_run_from_ten_to_nine_and_bear_the_date_of_their_end()
    {
        // Eleven humid hours, 23:00 to 09:00, end two days in a row; the rows at 10:00 belong to the next.
        StationRecord Humid(int until) => Records.Humid(96, 12, hour => hour % 24 >= 23 || hour % 24 < until);
        Assert.Equal([null, null, 1, 1], new Smith().Values(Humid(10)));
        Assert.Equal([null, null, 0.5, 0.5], new Smith().Values(Humid(9)));
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(60, 11)]
    [InlineData(-300, 5)]
    [InlineData(330, 15)] // 15:00 in India is 09:30 UTC, the first row after 09:00
    [InlineData(720, 22)]
    public void Smith_days_open_after_nine_o_clock_UTC_in_every_zone(int offsetMinutes, int opens)
    {
        // Cold until a day opens on the second date, then warm and humid: the first whole day after it completes no period, the second does.
        var record = Records.Hourly(120, (Column.Temperature, hour => hour < 24 + opens ? 5 : 12), (Column.Humidity, _ => 95)) with { OffsetMinutes = offsetMinutes };
        Assert.Equal([null, null, 0, 1, 1], new Smith().Values(record));
    }

    [Fact]
    public void Smith_other_readings_are_settings()
    {
        var tenThenEleven = Records.Humid(72, 12, hour => hour is >= 24 and < 34 or >= 38 and < 49);
        Assert.Equal(0.5, new Smith().Values(tenThenEleven)[2]);
        Assert.Equal(1, new Smith().Values(tenThenEleven, Records.With("smith.hours", "10-then-11"))[2]);
        var ninety = Records.Hourly(72, (Column.Temperature, _ => 12), (Column.Humidity, _ => 90));
        Assert.Equal(1, new Smith().Values(ninety)[2]);
        Assert.Equal(0, new Smith().Values(ninety, Records.With("smith.humidity", "above-90"))[2]);
    }

    [Theory]
    [InlineData(10.0, 6, 1)]
    [InlineData(9.9, 6, 0)]
    [InlineData(10.0, 5, 0)]
    public void Hutton_two_days_at_the_limits_complete_a_period(double celsius, int hours, double value) =>
        Assert.Equal([null, value], new Hutton().Values(Records.Humid(48, celsius, hour => hour % 24 < hours)));

    [Fact]
    public void Hutton_three_days_in_a_row_complete_two_periods_and_a_day_in_between_none()
    {
        Assert.Equal([null, 1, 1], new Hutton().Values(Records.Humid(72, 11, hour => hour % 24 < 8)));
        Assert.Equal([null, 0, 0], new Hutton().Values(Records.Humid(72, 11, hour => hour / 24 != 1 && hour % 24 < 8)));
    }

    [Fact]
    public void Hutton_days_move_with_their_opening_hour()
    {
        var record = Records.Humid(96, 12, hour => hour % 24 is >= 21 or < 3);
        Assert.Equal([null, 1, 1, 1], new Hutton().Values(record));
        Assert.Equal([null, 1, 1, null], new Hutton().Values(record, new WeatherSettings { DayStarts = 12 }));
        var once = Records.Humid(96, 12, hour => hour is >= 45 and < 51 or >= 69 and < 75); // 21:00 to 02:00 on two nights
        Assert.Equal([null, 0, 1, 0], new Hutton().Values(Records.Humid(96, 12, hour => hour is >= 24 and < 30 or >= 48 and < 54)));
        Assert.Equal([null, 0, 1, null], new Hutton().Values(once, new WeatherSettings { DayStarts = 12 }));
    }

    [Theory] // the reference's worked examples
    [InlineData(20, true, 9)]
    [InlineData(20, false, 5)]
    [InlineData(15, false, 0)]
    [InlineData(16, false, 1)]
    [InlineData(12, true, 1)]
    [InlineData(11, true, 0)]
    [InlineData(24, true, 13)]
    [InlineData(24, false, 9)]
    public void Bourke_effective_hours_begin_after_11_or_15(int hours, bool isWetted, int effective) => Assert.Equal(effective, IrishBourke.EffectiveHours(hours, isWetted));

    [Theory]
    [InlineData(0, "any-hour", 9)]
    [InlineData(0, "hours-7-to-15", 5)]
    [InlineData(6, "hours-7-to-15", 9)]
    [InlineData(14, "hours-7-to-15", 9)]
    [InlineData(15, "hours-7-to-15", 5)]
    [InlineData(20, "any-hour", 5)] // after the spell
    public void Bourke_the_hours_whose_rain_counts_are_a_setting(int rainAt, string wetting, double effective)
    {
        var record = Records.Hourly(24, (Column.Temperature, _ => 10), (Column.Humidity, hour => hour < 20 ? 90 : 80), (Column.Rain, hour => hour == rainAt ? 0.1 : 0));
        Assert.Equal([effective], new IrishBourke().Values(record, Records.With("irish-bourke.wetting", wetting)));
    }
}
