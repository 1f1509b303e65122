using Abaxial.Weather;

namespace Abaxial.Tests.Weather;

/// <summary>Limits of the WMO guidance and of the practice named in <see cref="QualityLimits"/>.</summary>
public sealed class QualityControlTests
{
    [Theory]
    [InlineData(Column.Temperature, -80, 60)]
    [InlineData(Column.DewPoint, -80, 35)]
    [InlineData(Column.Humidity, 0, 104)]
    [InlineData(Column.Rain, 0, 508)]
    [InlineData(Column.Wetness, 0, 60)]
    [InlineData(Column.Radiation, 0, 1600)]
    [InlineData(Column.Wind, 0, 75)]
    public void A_value_outside_what_can_be_is_flagged_and_not_used(Column column, double least, double most)
    {
        Assert.DoesNotContain(Flags(column, least), flag => flag.Kind == FlagKind.Range);
        Assert.DoesNotContain(Flags(column, most), flag => flag.Kind == FlagKind.Range);
        foreach (double value in new[] { least - 0.1, most + 0.1, -999 })
        {
            var record = QualityControl.Check(Records.Hourly(24, (column, hour => hour == 5 ? value : least)));
            Assert.Equal(new Flag(FlagKind.Range, column, 5, value), Assert.Single(record.Flags, flag => flag.Kind == FlagKind.Range));
            Assert.True(double.IsNaN(record.Hours.Of(column)[5]));
        }
    }

    [Fact]
    public void Humidity_a_little_above_saturation_is_read_as_saturated_and_said()
    {
        var record = QualityControl.Check(Records.Hourly(24, (Column.Humidity, hour => hour == 5 ? 103 : 97)));
        Assert.Equal(new Flag(FlagKind.Capped, Column.Humidity, 5, 103), Assert.Single(record.Flags));
        Assert.Equal(100, record.Hours.Of(Column.Humidity)[5]);
    }

    [Theory] // WMO-No. 305: hours between, allowed change; exceeded strictly
    [InlineData(1, 4)]
    [InlineData(2, 7)]
    [InlineData(3, 9)]
    [InlineData(6, 15)]
    [InlineData(12, 25)]
    public void A_step_is_held_against_the_limit_for_the_hours_between(int hours, double most)
    {
        Assert.DoesNotContain(FlagKind.Step, KindsOf(Step(most)));
        Assert.Contains(FlagKind.Step, KindsOf(Step(most + 0.1)));

        StationRecord Step(double by) => Records.Hourly(24, (Column.Temperature, hour => hour == 0 ? 10 : hour < hours ? double.NaN : 10 + by));
    }

    [Fact]
    public void The_reference_example_of_a_step_fails_four_degrees_and_is_still_used()
    {
        var record = QualityControl.Check(Records.Hourly(24, (Column.Temperature, hour => hour < 12 ? 18.0 : 22.5)));
        Assert.Equal(12, Assert.Single(record.Flags, flag => flag.Kind == FlagKind.Step).Hour);
        Assert.Equal(22.5, record.Hours.Of(Column.Temperature)[12]);
    }

    [Fact]
    public void Twelve_hours_within_half_a_degree_stand_still_and_eleven_do_not()
    {
        StationRecord Still(int hours, double by) => Records.Hourly(24, (Column.Temperature, hour => hour < hours ? 10 + (hour % 2 * by) : 10 + hour));
        Assert.Contains(FlagKind.Persistence, KindsOf(Still(12, 0.5)));
        Assert.DoesNotContain(FlagKind.Persistence, KindsOf(Still(11, 0.5)));
        Assert.DoesNotContain(FlagKind.Persistence, KindsOf(Still(12, 0.6)));
    }

    [Theory]
    [InlineData(100, false)]
    [InlineData(95, false)]
    [InlineData(94, true)]
    public void Humidity_may_stand_still_near_saturation_only(double percent, bool isFlagged) =>
        Assert.Equal(isFlagged, KindsOf(Records.Hourly(24, (Column.Humidity, _ => percent))).Contains(FlagKind.Persistence));

    [Fact]
    public void A_calm_may_last_and_a_wind_that_never_changes_may_not()
    {
        Assert.Empty(KindsOf(Records.Hourly(24, (Column.Wind, _ => 0))));
        Assert.Contains(FlagKind.Persistence, KindsOf(Records.Hourly(24, (Column.Wind, _ => 3))));
    }

    [Fact]
    public void A_dew_point_above_the_temperature_and_a_humidity_that_it_contradicts_are_flagged()
    {
        var above = QualityControl.Check(Records.Hourly(1, (Column.Temperature, _ => 10), (Column.DewPoint, _ => 10.1)));
        Assert.Equal(new Flag(FlagKind.Consistency, Column.DewPoint, 0, 10.1), Assert.Single(above.Flags));
        StationRecord With(double percent) => Records.Hourly(1, (Column.Temperature, _ => 20), (Column.DewPoint, _ => 15), (Column.Humidity, _ => percent)); // 72.95 %
        Assert.Empty(KindsOf(With(74.9)));
        Assert.Equal([FlagKind.Consistency], KindsOf(With(75.0)));
    }

    [Theory]
    [InlineData(3, 94.9, 3)]
    [InlineData(2, 94.9, 0)]
    [InlineData(5, 94.9, 5)]
    [InlineData(3, 95, 0)]
    public void A_sensor_that_stays_dry_through_three_hours_of_rain_is_suspect(int hours, double percent, int flagged)
    {
        var record = Records.Hourly(24, (Column.Humidity, hour => percent - (hour % 3 * (percent < 95 ? 5 : 0))), (Column.Rain, hour => hour is >= 6 && hour < 6 + hours ? 0.1 : 0));
        Assert.Equal(flagged, QualityControl.Check(record).Flags.Count(flag => flag.Kind == FlagKind.DryInRain));
    }

    [Fact]
    public void One_humid_hour_of_the_rain_clears_the_sensor() =>
        Assert.DoesNotContain(FlagKind.DryInRain, KindsOf(Records.Hourly(24, (Column.Humidity, hour => hour == 8 ? 95 : 80 + (hour % 3)), (Column.Rain, hour => hour is >= 6 and < 10 ? 1 : 0))));

    [Fact]
    public void A_daily_row_whose_lowest_is_above_its_highest_is_not_used()
    {
        var record = QualityControl.Check(Records.Daily((12, 10, 0), (10, 12, -1)));
        Assert.Equal([FlagKind.Range, FlagKind.Consistency], record.Flags.Select(flag => flag.Kind));
        Assert.True(double.IsNaN(record.Daily!.LowestCelsius[0]) && double.IsNaN(record.Daily.HighestCelsius[0]) && double.IsNaN(record.Daily.RainMillimetres[1]));
    }

    [Fact]
    public void Nothing_is_filled_unless_asked_and_what_is_filled_counts_as_estimated()
    {
        var record = Records.Hourly(48, (Column.Temperature, hour => hour is 30 or 31 ? double.NaN : hour), (Column.Humidity, _ => 95), (Column.Rain, hour => hour == 30 ? double.NaN : 0));
        Assert.True(double.IsNaN(Completion.Fill(record, 0).Hours.Of(Column.Temperature)[30]));
        Assert.True(double.IsNaN(Completion.Fill(record, 1).Hours.Of(Column.Temperature)[30]));
        var filled = Completion.Fill(record, 2);
        Assert.Equal([29, 30, 31, 32], filled.Hours.Of(Column.Temperature)[29..33].ToArray());
        Assert.True(double.IsNaN(filled.Hours.Of(Column.Rain)[30]));
        Assert.Equal(new Abaxial.Weather.Models.DayInputs(24, 2, 0), new Abaxial.Weather.Models.Hutton().Days(filled)[1].Inputs);
    }

    [Fact]
    public void Humidity_comes_from_the_dew_point_only_where_it_is_missing()
    {
        var record = Completion.HumidityFromDewPoint(Records.Hourly(24, (Column.Temperature, _ => 20), (Column.DewPoint, hour => hour == 2 ? 21 : 15), (Column.Humidity, hour => hour == 0 ? 80 : double.NaN)));
        Assert.Equal(80, record.Hours.Of(Column.Humidity)[0]);
        Assert.Equal(72.95, record.Hours.Of(Column.Humidity)[1], 0.006);
        Assert.Equal(100, record.Hours.Of(Column.Humidity)[2]);
    }

    private static IEnumerable<FlagKind> KindsOf(StationRecord record) => QualityControl.Check(record).Flags.Select(flag => flag.Kind).Distinct();

    private static IEnumerable<Flag> Flags(Column column, double value) => QualityControl.Check(Records.Hourly(24, (column, _ => value))).Flags;
}
