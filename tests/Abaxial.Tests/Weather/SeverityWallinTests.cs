using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Wallin 1962, table as reprinted in an open textbook (°C, hours) and by a university (°F).</summary>
public sealed class SeverityWallinTests
{
    private static readonly SeverityWallin Model = new();

    [Theory]
    [InlineData(7.2, 11.6, 45, 53, "0-15|16-18|19-21|22-24|25+")]
    [InlineData(11.7, 15.0, 54, 59, "0-12|13-15|16-18|19-21|22+")]
    [InlineData(15.1, 26.6, 60, 80, "0-9|10-12|13-15|16-18|19+")]
    public void Every_cell_of_the_printed_table_holds(double lowest, double highest, int lowestFahrenheit, int highestFahrenheit, string row)
    {
        foreach (var (hours, severity) in PrintedTable.Cells(row, 60))
        {
            Assert.Equal(severity, SeverityWallin.Severity(hours, lowest));
            Assert.Equal(severity, SeverityWallin.Severity(hours, highest));
            Assert.Equal(severity, SeverityWallin.Severity(hours, (lowestFahrenheit - 32) / 1.8, inWholeFahrenheit: true));
            Assert.Equal(severity, SeverityWallin.Severity(hours, (highestFahrenheit - 32) / 1.8, inWholeFahrenheit: true));
        }
    }

    [Theory]
    [InlineData(7.199, 0)]
    [InlineData(7.2, 1)]
    [InlineData(11.699, 1)]
    [InlineData(11.7, 2)]
    [InlineData(15.099, 2)]
    [InlineData(15.1, 3)]
    [InlineData(26.699, 3)]
    [InlineData(26.7, 0)]
    public void A_lower_edge_is_in_its_class_and_an_upper_one_is_not(double celsius, int severityOf16Hours) =>
        Assert.Equal(severityOf16Hours, SeverityWallin.Severity(16, celsius));

    [Theory] // the reference's worked examples
    [InlineData(12, 16.0, 1, 1)]
    [InlineData(16, 12.5, 2, 2)]
    [InlineData(16, 11.8, 2, 1)]
    [InlineData(25, 9.0, 4, 4)]
    [InlineData(24, 9.0, 3, 3)]
    [InlineData(30, 27.0, 0, 0)]
    public void Worked_examples_hold_in_both_readings_of_the_edges(int hours, double celsius, int byCelsius, int byFahrenheit)
    {
        Assert.Equal(byCelsius, SeverityWallin.Severity(hours, celsius));
        Assert.Equal(byFahrenheit, SeverityWallin.Severity(hours, celsius, inWholeFahrenheit: true));
    }

    [Theory] // 44.5, 53.5, 59.5 and 80.5 °F, halves up
    [InlineData(6.94, 0)]
    [InlineData(6.945, 1)]
    [InlineData(11.94, 1)]
    [InlineData(11.945, 2)]
    [InlineData(15.27, 2)]
    [InlineData(15.28, 3)]
    [InlineData(26.94, 3)]
    [InlineData(26.95, 0)]
    public void Whole_fahrenheit_puts_the_edges_at_half_degrees(double celsius, int severityOf16Hours) =>
        Assert.Equal(severityOf16Hours, SeverityWallin.Severity(16, celsius, inWholeFahrenheit: true));

    [Fact]
    public void A_period_across_midnight_counts_whole_on_the_day_it_ends() =>
        Assert.Equal([0, 4, 0], Model.Values(Records.Humid(72, 9.0, hour => hour is >= 20 and < 45)));

    [Fact]
    public void A_mean_of_decimals_that_meets_an_edge_is_in_its_class() =>
        Assert.Equal([1.0], Model.Values(Records.Humid(24, 7.2, hour => hour is >= 3 and < 19))); // 16 times 7.2 is not 115.2 in binary

    [Fact]
    public void A_missing_hour_ends_a_period_and_its_day_cannot_be_told()
    {
        var record = Records.Hourly(72, (Column.Temperature, _ => 16), (Column.Humidity, hour => hour == 30 ? double.NaN : 95));
        var days = Model.Days(record);
        Assert.Equal([0.0, null, 4.0], days.Select(day => day.Value));
        Assert.Equal("missing-hours", Assert.Single(days[1].Notes).Key);
        Assert.Equal(new DayInputs(23, 0, 1), days[1].Inputs);
        Assert.Equal("period-cut", Assert.Single(days[2].Notes).Key);
    }

    [Fact]
    public void Humidity_of_ninety_is_humid_and_just_under_is_not()
    {
        StationRecord At(double percent) => Records.Hourly(24, (Column.Temperature, _ => 16), (Column.Humidity, hour => hour < 19 ? percent : 50));
        Assert.Equal([4.0], Model.Values(At(90)));
        Assert.Equal([0.0], Model.Values(At(89.9)));
        Assert.Equal([4.0], Model.Values(At(80), Records.With("severity-wallin.humidity", "80")));
    }

    [Fact]
    public void By_the_day_two_periods_are_taken_together()
    {
        var record = Records.Humid(24, 16, hour => hour is < 6 or (>= 12 and < 18));
        Assert.Equal([0.0], Model.Values(record));
        Assert.Equal([1.0], Model.Values(record, Records.With("severity-wallin.hours", "day")));
    }

    [Fact]
    public void A_long_period_cut_in_two_is_worth_less_and_a_colder_hour_can_make_it_worth_less()
    {
        Assert.Equal([4.0], Model.Values(Records.Humid(24, 16, _ => true)));
        Assert.Equal([2.0], Model.Values(Records.Humid(24, 16, hour => hour != 12))); // 12 and 11 hours: one each
        Assert.Equal(3, SeverityWallin.Severity(16, 15.1));
        Assert.Equal(2, SeverityWallin.Severity(17, ((16 * 15.1) + 14) / 17)); // the table itself is so
    }
}
