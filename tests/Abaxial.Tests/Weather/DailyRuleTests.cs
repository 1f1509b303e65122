using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Hyre 1954 and Krause, Massie and Hyre 1975, as restated.</summary>
public sealed class DailyRuleTests
{
    private static readonly double[] Means = [24.0, 25.0, 26.0, 25.5, 26.5];
    private static readonly double[] Rains = [0, 5, 0, 12, 0, 0, 3, 8, 0, 2];

    [Fact]
    public void Hyre_the_worked_example_is_favorable_at_its_limits()
    {
        Assert.True(RainFavorableHyre.IsFavorable(Means, Rains, 7.2));
        Assert.False(RainFavorableHyre.IsFavorable(Means, Rains, 7.1));
        Assert.False(RainFavorableHyre.IsFavorable(Means, [0, 5, 0, 12, 0, 0, 3, 8, 0, 1.9], 7.2));
        Assert.False(RainFavorableHyre.IsFavorable([25.5, 25.5, 25.5, 25.5, 25.5], Rains, 7.2));
    }

    [Fact]
    public void Hyre_thirty_millimetres_of_tenths_are_thirty() =>
        Assert.True(RainFavorableHyre.IsFavorable(Means, [2.9, 3.1, 2.9, 3.1, 2.9, 3.1, 2.9, 3.1, 2.9, 3.1], 10));

    [Fact]
    public void Hyre_a_daily_record_uses_half_of_lowest_and_highest_and_is_untold_for_nine_days()
    {
        var record = Records.Daily([.. Enumerable.Repeat((15.0, 25.0, 3.0), 12)]);
        Assert.Equal([.. Enumerable.Repeat((double?)null, 9), 1, 1, 1], new RainFavorableHyre().Values(record));
        Assert.Equal("record-starts", new RainFavorableHyre().Days(record)[8].Notes[0].Key);
    }

    [Fact]
    public void Hyre_a_missing_rain_leaves_ten_days_untold_and_a_missing_temperature_five()
    {
        var days = Enumerable.Repeat((15.0, 25.0, 3.0), 30).ToArray();
        days[12] = (15, 25, double.NaN);
        Assert.Equal([.. Enumerable.Range(12, 10)], Untold(days));
        days[12] = (double.NaN, 25, 3);
        Assert.Equal([.. Enumerable.Range(12, 5)], Untold(days));

        static int[] Untold((double, double, double)[] days) =>
            [.. new RainFavorableHyre().Values(Records.Daily(days)).Index().Where(day => day.Item is null && day.Index > 9).Select(day => day.Index)];
    }

    [Fact]
    public void Hyre_irrigation_counts_as_rain_where_it_is_recorded()
    {
        StationRecord With(double water) => Records.Hourly(240, (Column.Temperature, _ => 20), (Column.Rain, _ => 0), (Column.Irrigation, hour => hour % 24 == 6 ? water : double.NaN));
        Assert.Equal(1, new RainFavorableHyre().Values(With(3))[9]);
        Assert.Equal(0, new RainFavorableHyre().Values(With(2.9))[9]);
    }

    [Theory] // the printed matrix: severity under 3, 3, 4, 5, 6, more than 6
    [InlineData(new[] { 0, 1, 2, 3, 4 }, new[] { -1, -1, 0, 1, 1, 2 })]
    [InlineData(new[] { 5, 6, 7 }, new[] { -1, 0, 1, 2, 2, 2 })]
    public void Krause_every_cell_of_the_matrix_holds(int[] favorableDays, int[] codes)
    {
        foreach (int days in favorableDays)
        {
            for (int severity = 0; severity <= 28; severity++)
            {
                int column = severity < 3 ? 0 : severity > 6 ? 5 : severity - 2;
                Assert.Equal(codes[column], ScheduleKrause.Code(days, severity));
            }
        }
    }

    [Theory] // the reference's worked examples
    [InlineData(3, 5, 1)]
    [InlineData(5, 5, 2)]
    [InlineData(4, 4, 0)]
    [InlineData(5, 3, 0)]
    [InlineData(4, 3, -1)]
    [InlineData(7, 2, -1)]
    [InlineData(0, 7, 2)]
    public void Krause_worked_examples_hold(int favorableDays, int severity, int code) => Assert.Equal(code, ScheduleKrause.Code(favorableDays, severity));

    [Fact]
    public void Krause_is_untold_until_seven_days_can_be_told()
    {
        // Ten wet hours a night at 16 °C, 3 mm of rain: one severity value and one favorable day a day.
        var record = Records.Hourly(24 * 20, (Column.Temperature, _ => 16), (Column.Humidity, hour => hour % 24 < 10 ? 95 : 60), (Column.Rain, hour => hour % 24 == 3 ? 3 : 0));
        var values = new ScheduleKrause().Values(record);
        Assert.All(values[..15], value => Assert.Null(value)); // ten days for the first favorable one, six more
        Assert.All(values[15..], value => Assert.Equal(2, value));
    }
}
