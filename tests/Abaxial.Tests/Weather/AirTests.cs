using Abaxial.Weather;

namespace Abaxial.Tests.Weather;

/// <summary>Psychrometrics, leaf wetness and the sun, against published and computed check values.</summary>
public sealed class AirTests
{
    [Theory] // hPa over water: WMO-No. 8, Alduchov and Eskridge 1996, FAO-56, Bolton 1980
    [InlineData(-10, 2.8703, 2.8677, 2.8571, 2.8677)]
    [InlineData(0, 6.1120, 6.1094, 6.1080, 6.1120)]
    [InlineData(5, 8.7174, 8.7156, 8.7231, 8.7215)]
    [InlineData(10, 12.2603, 12.2602, 12.2796, 12.2717)]
    [InlineData(15, 17.0167, 17.0198, 17.0535, 17.0405)]
    [InlineData(20, 23.3260, 23.3344, 23.3828, 23.3695)]
    [InlineData(25, 31.6006, 31.6174, 31.6778, 31.6743)]
    [InlineData(30, 42.3372, 42.3665, 42.4307, 42.4558)]
    [InlineData(40, 73.6746, 73.7472, 73.7561, 73.9490)]
    public void Saturation_holds_the_check_values_of_four_formulas(double celsius, double wmo, double alduchov, double fao, double bolton)
    {
        Assert.Equal(wmo, SaturationFormula.Wmo.At(celsius), 0.00006);
        Assert.Equal(alduchov, SaturationFormula.AlduchovEskridge.At(celsius), 0.00006);
        Assert.Equal(fao, SaturationFormula.Fao56.At(celsius), 0.00006);
        Assert.Equal(bolton, SaturationFormula.Bolton.At(celsius), 0.00006);
    }

    [Theory]
    [InlineData(-10, 2.5987)]
    [InlineData(-5, 4.0174)]
    [InlineData(0, 6.1120)]
    public void Saturation_over_ice_holds_its_check_values(double celsius, double hectopascal) => Assert.Equal(hectopascal, SaturationFormula.WmoIce.At(celsius), 0.00006);

    [Theory] // printed in FAO Irrigation and Drainage Paper 56, kPa
    [InlineData(15, 1.705)]
    [InlineData(24.5, 3.075)]
    public void Saturation_holds_the_printed_examples_of_FAO_56(double celsius, double kilopascal) => Assert.Equal(kilopascal, SaturationFormula.Fao56.At(celsius) / 10, 0.0005);

    [Theory]
    [InlineData(20, 90, 18.308)]
    [InlineData(15, 90, 13.372)]
    [InlineData(10, 90, 8.434)]
    [InlineData(25, 60, 16.693)]
    [InlineData(30, 70, 23.927)]
    [InlineData(20, 50, 9.255)]
    public void Dew_point_holds_its_check_values_and_goes_back_to_humidity(double celsius, double percent, double dewPoint)
    {
        Assert.Equal(dewPoint, Psychrometrics.DewPointCelsius(celsius, percent), 0.0006);
        Assert.Equal(percent, Psychrometrics.HumidityPercent(celsius, Psychrometrics.DewPointCelsius(celsius, percent)), 1e-9);
    }

    [Theory]
    [InlineData(20, 15, 72.95)]
    [InlineData(12, 10, 87.58)]
    [InlineData(15, 13, 87.85)]
    public void Humidity_holds_its_check_values(double celsius, double dewPoint, double percent) => Assert.Equal(percent, Psychrometrics.HumidityPercent(celsius, dewPoint), 0.006);

    [Fact]
    public void Psychrometer_holds_its_check_values_and_wet_bulb_goes_back()
    {
        Assert.Equal(1.004719, Psychrometrics.Enhancement(1013.25), 0.0000006);
        Assert.Equal(13.7419, Psychrometrics.VapourHectopascal(20, 15), 0.0001);
        Assert.Equal(15, Psychrometrics.WetBulbCelsius(20, 100 * 13.7419 / (1.004719 * 23.3260)), 0.0005);
        Assert.Equal(20, Psychrometrics.WetBulbCelsius(20, 100), 0.000001);
    }

    [Fact]
    public void Deficit_is_what_saturation_lacks()
    {
        Assert.Equal(23.3260 * 0.4, Psychrometrics.DeficitHectopascal(20, 60), 0.0001);
        Assert.Equal(0, Psychrometrics.DeficitHectopascal(20, 100));
    }

    [Theory] // the reference's worked examples of the tree
    [InlineData(15, 95, 1, 0.8, 16.2206, true)]
    [InlineData(20, 80, 1, 3.5, 13.6624, false)]
    [InlineData(15, 92, 3, 1.3, 37.2196, true)]
    [InlineData(15, 97, 3, 0.5, 39.0194, true)]
    [InlineData(15, 85, 3, 2.5, null, false)]
    [InlineData(18, 70, 2, 5.0, null, false)]
    public void Wetness_by_the_tree_holds_its_worked_examples(double celsius, double percent, double wind, double depression, double? sum, bool isWet)
    {
        Assert.Equal(isWet ? HourState.Yes : HourState.No, LeafWetness.ByTree(celsius, percent, wind, depression));
        if (sum is { } expected) Assert.Equal(expected, wind < 2.5 ? LeafWetness.CalmSum(celsius, percent, wind, depression) : LeafWetness.WindySum(celsius, percent, wind, depression), 0.00006);
    }

    [Fact]
    public void Wetness_by_depression_keeps_its_state_between_the_limits()
    {
        var state = HourState.No;
        var states = new[] { 4.5, 2.4, 1.9, 2.5, 3.5, 3.8, 4.0 }.Select(depression => state = LeafWetness.ByDepression(depression, state));
        Assert.Equal([HourState.No, HourState.No, HourState.Yes, HourState.Yes, HourState.Yes, HourState.No, HourState.No], states);
        Assert.Equal(HourState.Yes, LeafWetness.ByDepression(2.0, HourState.No));
    }

    [Fact]
    public void Wetness_is_measured_where_it_is_and_estimated_where_it_is_missing()
    {
        var record = Records.Hourly(24, (Column.Temperature, _ => 15), (Column.Humidity, hour => hour == 3 ? 90 : 50), (Column.Rain, hour => hour == 5 ? 0.2 : 0), (Column.Wetness, hour => hour switch { 0 => 30, 1 => 29, _ => double.NaN }));
        var (states, estimated) = LeafWetness.Of(record, "humidity");
        Assert.Equal([HourState.Yes, HourState.No, HourState.No, HourState.Yes, HourState.No, HourState.Yes], states[..6]);
        Assert.Equal([false, false, true, true, true, true], estimated[..6]);
    }

    [Theory] // almanac day lengths to a few minutes: Dublin, equator, Sydney
    [InlineData("2026-06-21", 53.35, -6.26, 17.0)]
    [InlineData("2026-12-21", 53.35, -6.26, 7.5)]
    [InlineData("2026-03-20", 0, 0, 12.12)]
    [InlineData("2026-12-21", -33.87, 151.21, 14.41)]
    public void Day_length_is_that_of_the_almanac(string day, double latitude, double longitude, double hours) =>
        Assert.Equal(hours, Sun.Of(DateOnly.Parse(day), latitude, longitude).DayLength, 0.06);

    [Fact]
    public void Sunrise_comes_earlier_further_east_and_noon_lies_between()
    {
        var sun = Sun.Of(new DateOnly(2026, 4, 15), 45, 0); // the equation of time is nearly nothing
        Assert.Equal(12, (sun.RiseHoursUtc + sun.SetHoursUtc) / 2, 0.02);
        Assert.Equal(sun.RiseHoursUtc - 2, Sun.Of(new DateOnly(2026, 4, 15), 45, 30).RiseHoursUtc, 0.02);
    }

    [Fact]
    public void Near_the_pole_the_sun_stays_up_or_down()
    {
        Assert.Equal((DayKind.PolarDay, 24), (Sun.Of(new DateOnly(2026, 6, 21), 70, 25).Kind, Sun.Of(new DateOnly(2026, 6, 21), 70, 25).DayLength));
        Assert.Equal((DayKind.PolarNight, 0), (Sun.Of(new DateOnly(2026, 12, 21), 70, 25).Kind, Sun.Of(new DateOnly(2026, 12, 21), 70, 25).DayLength));
    }
}
