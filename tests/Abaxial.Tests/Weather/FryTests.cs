using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Fry, Apple and Bruhn 1983; tables from memory of the trade.</summary>
public sealed class FryTests
{
    [Theory]
    [InlineData(23, 27, CultivarClass.Susceptible, "0-6|7-9|10-12|13-15|16-18|19-24")]
    [InlineData(23, 27, CultivarClass.Moderate, "0-9|10-18|19-24")]
    [InlineData(23, 27, CultivarClass.Resistant, "0-15|16-24")]
    [InlineData(13, 22, CultivarClass.Susceptible, "0-6|-|-|-|-|7-9|10-12|13-24")]
    [InlineData(13, 22, CultivarClass.Moderate, "0-6|7|8|9|10|11-12|13-24")]
    [InlineData(13, 22, CultivarClass.Resistant, "0-6|7|8|9|10-12|13-24")]
    [InlineData(8, 12, CultivarClass.Susceptible, "0-6|7|8-9|10|11-12|13-15|16-24")]
    [InlineData(8, 12, CultivarClass.Moderate, "0-6|7-9|10-12|13-15|16-18|19-24")]
    [InlineData(8, 12, CultivarClass.Resistant, "0-9|10-12|13-15|16-24")]
    [InlineData(3, 7, CultivarClass.Susceptible, "0-9|10-12|13-15|16-18|19-24")]
    [InlineData(3, 7, CultivarClass.Moderate, "0-12|13-24")]
    [InlineData(3, 7, CultivarClass.Resistant, "0-18|19-24")]
    [InlineData(28, 40, CultivarClass.Susceptible, "0-24")]
    [InlineData(-5, 2, CultivarClass.Susceptible, "0-24")]
    public void Blight_units_every_cell_of_the_table_holds_to_the_rounded_edges(int from, int to, CultivarClass cultivar, string row)
    {
        foreach (var (hours, units) in PrintedTable.Cells(row, 24))
        {
            Assert.Equal(units, BlightUnitsFry.Units(hours, from - 0.5, cultivar)); // halves are rounded up into the class
            Assert.Equal(units, BlightUnitsFry.Units(hours, from, cultivar));
            Assert.Equal(units, BlightUnitsFry.Units(hours, to + 0.49, cultivar));
        }
    }

    [Theory] // the reference's worked examples
    [InlineData(16, 11, 6, 5, 4)]
    [InlineData(9, 14, 5, 3, 2)]
    [InlineData(25, 20, 5, 2, 1)]
    public void Blight_units_worked_examples_hold(double celsius, int hours, int susceptible, int moderate, int resistant)
    {
        var cultivars = Enum.GetValues<CultivarClass>();
        Assert.Equal([susceptible, moderate, resistant], cultivars.Select(cultivar => BlightUnitsFry.Units(hours, celsius, cultivar)));
    }

    [Fact]
    public void Blight_units_pool_a_day_or_take_each_period_on_its_own()
    {
        var record = Records.Humid(48, 16, hour => hour is >= 20 and < 34);
        var settings = new WeatherSettings { Cultivar = CultivarClass.Susceptible };
        Assert.Equal([0.0, 6], new BlightUnitsFry().Values(record, settings)); // 4 hours and 10 hours
        Assert.Equal([0.0, 7], new BlightUnitsFry().Values(record, settings with { Chosen = Records.With("blight-units-fry.hours", "period").Chosen }));
    }

    [Theory]
    [InlineData(1, 1, "|<1|||1|2-4|5-8|>8")]
    [InlineData(2, 2, "|<1||1|2-4|5-8|>8")]
    [InlineData(3, 3, "|<1||1-2|3-5|>5")]
    [InlineData(4, 5, "|<1||1-3|4-8|>8")]
    [InlineData(6, 9, "|<1||1-4|>4")]
    [InlineData(10, 14, "|<1|1|2-8|>8")]
    [InlineData(15, 60, "|<1|1-8|>8")]
    public void Fungicide_units_every_cell_of_the_table_holds_to_the_rounded_edges(int from, int to, string row)
    {
        foreach (var (millimetres, units) in PrintedTable.Cells(row, 40))
        {
            Assert.Equal(units, FungicideUnitsFry.Units(from, millimetres));
            Assert.Equal(units, FungicideUnitsFry.Units(to, millimetres + 0.49));
            if (millimetres > 0) Assert.Equal(units, FungicideUnitsFry.Units(to, millimetres - 0.5));
        }
    }

    [Fact]
    public void Fungicide_units_add_up_since_the_spray_as_in_the_worked_example()
    {
        var record = Records.Daily([.. new[] { 9.0, 9, 0, 6, 0, 0 }.Select(rain => (10.0, 20.0, rain))]);
        var settings = new WeatherSettings { Sprayed = [Records.FirstDay.AddDays(1)] };
        Assert.Equal([null, 0, 1, 6, 7, 8], new FungicideUnitsFry().Values(record, settings));
        Assert.Equal(8, Season.Of(new FungicideUnitsFry(), new ModelInput(record, settings)).Days[^1].Sum);
    }

    [Fact]
    public void Fungicide_units_begin_anew_with_each_spray_and_are_never_told_without_one()
    {
        var record = Records.Daily([.. Enumerable.Repeat((10.0, 20.0, 0.0), 5)]);
        Assert.All(new FungicideUnitsFry().Values(record), value => Assert.Null(value));
        Assert.Equal([0, 1, 2, 0, 1], new FungicideUnitsFry().Values(record, new WeatherSettings { Sprayed = [Records.FirstDay, Records.FirstDay.AddDays(3)] }));
    }

    [Fact]
    public void Fungicide_units_are_untold_from_a_missing_rain_to_the_next_spray()
    {
        var days = Enumerable.Repeat((10.0, 20.0, 0.0), 6).ToArray();
        days[2].Item3 = double.NaN;
        Assert.Equal([0, 1, null, null, 0, 1], new FungicideUnitsFry().Values(Records.Daily(days), new WeatherSettings { Sprayed = [Records.FirstDay, Records.FirstDay.AddDays(4)] }));
    }

    [Theory]
    [InlineData(CultivarClass.Susceptible, 5)] // 7 units a day: 35 is the first above 30
    [InlineData(CultivarClass.Moderate, 6)]    // 6 units a day: 36 above 35
    [InlineData(CultivarClass.Resistant, 9)]   // 5 units a day: 45 above 40
    public void Blight_units_since_the_spray_cross_the_threshold_of_their_class_when_they_exceed_it(CultivarClass cultivar, int day)
    {
        var season = Season.Of(new BlightUnitsFry(), new ModelInput(Records.Humid(24 * 12, 16, _ => true), new WeatherSettings { Cultivar = cultivar }));
        Assert.Equal(Records.FirstDay.AddDays(day - 1), Assert.Single(season.Crossings).Day);
    }
}
