using System.Collections.Immutable;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Early blight, physiological days, the generic infection model, bacterial spot, and the latent period.</summary>
public sealed class OtherModelTests
{
    private static readonly InfectionParameters Invented = new(5, 20, 30, 6, 100);

    [Theory] // Madden, Pennypacker and MacNab 1978, table from memory
    [InlineData(13, 17, "0-6|7-15|16-20|21+")]
    [InlineData(18, 20, "0-3|4-8|9-15|16-22|23+")]
    [InlineData(21, 25, "0-2|3-5|6-12|13-20|21+")]
    [InlineData(26, 29, "0-3|4-8|9-15|16-22|23+")]
    [InlineData(30, 40, "0-24")]
    [InlineData(-5, 12, "0-24")]
    public void Early_blight_every_cell_of_the_table_holds_to_the_rounded_edges(int from, int to, string row)
    {
        foreach (var (hours, severity) in PrintedTable.Cells(row, 24))
        {
            Assert.Equal(severity, EarlyBlightMadden.Severity(hours, from - 0.5));
            Assert.Equal(severity, EarlyBlightMadden.Severity(hours, to + 0.49));
        }
    }

    [Theory] // the reference's worked examples
    [InlineData(10, 19, 2)]
    [InlineData(7, 23, 2)]
    [InlineData(22, 15, 3)]
    [InlineData(2, 24, 0)]
    [InlineData(21, 21, 4)]
    [InlineData(23, 30, 0)]
    public void Early_blight_worked_examples_hold(int hours, double celsius, int severity) => Assert.Equal(severity, EarlyBlightMadden.Severity(hours, celsius));

    [Fact]
    public void Early_blight_takes_the_middle_of_the_wet_hours_or_their_mean()
    {
        // Six wet hours, five at 17 and one at 25: the middle is 21 (severity 2), the mean 18.3 (severity 1).
        var record = Records.Hourly(24, (Column.Temperature, hour => hour == 5 ? 25 : 17), (Column.Wetness, hour => hour < 6 ? 60 : 0));
        Assert.Equal([2.0], new EarlyBlightMadden().Values(record));
        Assert.Equal([1.0], new EarlyBlightMadden().Values(record, Records.With("early-blight-madden.temperature", "mean")));
    }

    [Theory] // Sands, Hackett and Nix 1979, check values of the reference
    [InlineData(10, 24, 7.8456)]
    [InlineData(5, 20, 5.2402)]
    [InlineData(15, 33, 6.8859)]
    [InlineData(7, 30, 5.9113)]
    [InlineData(12, 18, 7.8231)]
    [InlineData(18, 28, 8.5903)]
    [InlineData(21, 21, 10)]
    [InlineData(2, 6, 0)]
    public void P_days_check_values_hold(double low, double high, double days) => Assert.Equal(days, PhysiologicalDays.Of(low, high), 0.00005);

    [Theory]
    [InlineData(10, 24, 7.7624)]
    [InlineData(15, 33, 6.8834)]
    public void P_days_at_the_fahrenheit_points_are_others(double low, double high, double days) => Assert.Equal(days, PhysiologicalDays.Of(low, high, atFahrenheitPoints: true), 0.00005);

    [Fact]
    public void P_days_of_a_day_of_hours_and_of_a_daily_row_are_the_same()
    {
        var hours = Records.Hourly(24, (Column.Temperature, hour => hour == 4 ? 10 : hour == 14 ? 24 : 15));
        Assert.Equal(new PhysiologicalDays().Values(Records.Daily((10, 24, 0))), new PhysiologicalDays().Values(hours));
    }

    [Theory] // the reference's check values for made-up cardinals
    [InlineData(5, 0, double.PositiveInfinity)]
    [InlineData(10, 0.3849, 15.588)]
    [InlineData(15, 0.8165, 7.348)]
    [InlineData(20, 1, 6.000)]
    [InlineData(25, 0.7698, 7.794)]
    [InlineData(28, 0.3797, 15.800)]
    [InlineData(30, 0, double.PositiveInfinity)]
    public void Infection_response_and_hours_needed_hold_their_check_values(double celsius, double response, double hours)
    {
        Assert.Equal(response, Invented.Response(celsius), 0.00005);
        if (double.IsFinite(hours)) Assert.Equal(hours, Invented.HoursNeeded(celsius), 0.001);
        else Assert.Equal(double.PositiveInfinity, Invented.HoursNeeded(celsius));
        bool isPossible = (Invented with { MostHours = 12 }).HoursNeeded(celsius) <= 12;
        Assert.Equal(hours <= 12, isPossible);
    }

    [Theory]
    [InlineData(3, "joined", 1.0)]
    [InlineData(4, "joined", 1.0)]
    [InlineData(4, "apart", 0.5)]
    [InlineData(5, "joined", 0.5)]
    public void Infection_short_dry_breaks_join_wet_spells(int dryHours, string atLimit, double share)
    {
        var record = Records.Hourly(24, (Column.Temperature, _ => 20), (Column.Wetness, hour => hour is >= 2 and < 5 || (hour >= 5 + dryHours && hour < 8 + dryHours) ? 60 : 0));
        var settings = Records.With("infection-magarey.at-d50", atLimit) with { Pathogen = new PathogenSet("invented") { Infection = Invented with { JoiningHours = 4 } } };
        Assert.Equal([share], new InfectionMagarey().Values(record, settings));
    }

    [Fact]
    public void Infection_waits_for_parameters_that_the_user_supplies() =>
        Assert.Equal("pathogen", WeatherModels.Lacking(new InfectionMagarey(), Records.Hourly(24, (Column.Temperature, _ => 20), (Column.Wetness, _ => 60)), new WeatherSettings()));

    [Theory] // check values of the reference, 6, 12, 24 and 48 h
    [InlineData(15, new[] { 0.00839, 0.01608, 0.04479, 0.08816 })]
    [InlineData(20, new[] { 0.02501, 0.04795, 0.13359, 0.26292 })]
    [InlineData(25, new[] { 0.04057, 0.07776, 0.21664, 0.42638 })]
    [InlineData(30, new[] { 0.03167, 0.06071, 0.16912, 0.33286 })]
    public void Bacterial_spot_surface_holds_its_check_values(double celsius, double[] severities)
    {
        foreach (var (hours, severity) in new[] { 6, 12, 24, 48 }.Zip(severities)) Assert.Equal(severity, BacterialSpotSurface.Severity(celsius, hours), 0.000006);
    }

    [Fact]
    public void Bacterial_spot_is_nothing_at_the_ends_of_the_curve_and_says_where_nobody_tested()
    {
        Assert.Equal(0, BacterialSpotSurface.Severity(8, 24));
        Assert.Equal(0, BacterialSpotSurface.Severity(32, 24));
        var record = Records.Hourly(24, (Column.Temperature, _ => 25), (Column.Wetness, hour => hour is >= 2 and < 7 ? 60 : 0));
        Assert.Equal("outside-tested", Assert.Single(new BacterialSpotSurface().Days(record)[0].Notes).Key);
    }

    [Fact]
    public void Latent_period_at_22_degrees_takes_the_published_hours()
    {
        var day = new LatentPeriod().Days(Records.Hourly(24, (Column.Temperature, _ => 22)))[0];
        Assert.Equal(24 / 93.3, day.Band!.Value.Low, 1e-12);
        Assert.Equal(24 / 68.0, day.Band.Value.High, 1e-12);
        Assert.Equal(24 / 80.65, day.Value!.Value, 1e-12);
    }

    [Fact]
    public void Latent_period_passes_fastest_at_22_degrees_and_not_at_the_ends()
    {
        Assert.Equal(1, LatentPeriod.Pace(22), 1e-12);
        Assert.Equal(0, LatentPeriod.Pace(3));
        Assert.Equal(0, LatentPeriod.Pace(30));
        for (int celsius = 4; celsius <= 22; celsius++) Assert.True(LatentPeriod.Pace(celsius) > LatentPeriod.Pace(celsius - 1));
        for (int celsius = 23; celsius <= 30; celsius++) Assert.True(LatentPeriod.Pace(celsius) < LatentPeriod.Pace(celsius - 1));
    }

    [Fact]
    public void Latent_period_follows_a_table_that_the_user_supplies()
    {
        ImmutableArray<(double, double)> table = [(10, 200), (20, 100)];
        Assert.Equal(1 / 200.0, LatentPeriod.ShareByTable(10, table), 1e-12);
        Assert.Equal(0.0075, LatentPeriod.ShareByTable(15, table), 1e-12);
        Assert.Equal(0, LatentPeriod.ShareByTable(9.9, table));
        var settings = new WeatherSettings { Pathogen = new PathogenSet("invented") { LatentPeriods = table } };
        Assert.Equal(0.24, new LatentPeriod().Values(Records.Hourly(24, (Column.Temperature, _ => 20)), settings)[0]!.Value, 1e-12);
    }
}
