using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Priors;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weather;

public sealed class WeatherPriorTests
{
    private const int Hours = InfectionDays.Days * 24;
    private static readonly DateOnly Noticed = Records.FirstDay.AddDays(InfectionDays.Days - 1);

    private static readonly Gen<(double Celsius, double Percent)> Hour =
        Gen.Select(Gen.Int[50, 280], Gen.Frequency((6, Gen.Int[70, 100]), (4, Gen.Int[30, 89]), (1, Gen.Const(-1))), (t, h) => (t / 10.0, h < 0 ? double.NaN : h));

    [Theory] // hours needed by Wallin's table: 10 at 16 °C, 13 at 12 °C, 16 at 8 °C; at most one day a day
    [InlineData(16, 5, 10.5, 1.63)]
    [InlineData(16, 10, 21, 3)]
    [InlineData(16, 24, 21, 3)]
    [InlineData(12, 6, 9.692307693, 1.42)]
    [InlineData(8, 8, 10.5, 1.63)]
    [InlineData(16, 1, 2.1, 0.76)]
    [InlineData(16, 0, 0, 0.5)]
    [InlineData(7.2, 8, 10.5, 1.63)]
    [InlineData(7.1, 8, 0, 0.5)]
    [InlineData(26.6, 5, 10.5, 1.63)]
    [InlineData(26.7, 5, 0, 0.5)]
    public void Late_blight_counts_humid_hours_over_the_hours_that_are_needed(double celsius, int humidHours, double days, double factor)
    {
        var input = Input(Records.Humid(Hours, celsius, hour => hour % 24 < humidHours));
        Assert.Equal(days, InfectionDays.Of(input, Noticed, InfectionResponse.All[0]).Low, 0.000001);
        Assert.Equal(factor, Factor(input, "late-blight"));
    }

    [Fact]
    public void Between_four_and_eight_days_of_infection_there_is_no_factor()
    {
        ModelInput Days(int days) => Input(Records.Humid(Hours, 16, hour => hour < days * 24 && hour % 24 < 10));
        Assert.Equal([0.88, 1, 1, 1.25], ((int[])[3, 4, 8, 9]).Select(days => Factor(Days(days), "late-blight")));
        Assert.Equal("middling", Prior(Days(4), "potato").Neutral.Single().Why.Key);
    }

    [Fact]
    public void Rivals_are_those_whose_response_is_published_and_only_on_the_host_it_was_made_for()
    {
        var wet = Input(Records.Hourly(Hours, (Column.Temperature, _ => 25), (Column.Humidity, _ => 95), (Column.Wetness, _ => 60)));
        Assert.Equal(["bacterial-spot 2", "early-blight 2", "late-blight 3"], Prior(wet, "tomato").Factors.Select(factor => $"{factor.Response.Cause} {factor.Factor}"));
        Assert.Equal(["late-blight"], Prior(wet, "potato").Factors.Select(factor => factor.Response.Cause));
    }

    [Theory] // early blight: six wet hours at 21 to 25 °C by the table of Madden et al.; bacterial spot: 24 h at 26.67 °C by its equation
    [InlineData("early-blight", 23, 3, 10.5)]
    [InlineData("early-blight", 15, 8, 10.5)]
    [InlineData("early-blight", 12.4, 8, 0)]
    [InlineData("bacterial-spot", 26.67, 12, 10.5)]
    [InlineData("bacterial-spot", 8, 12, 0)]
    public void Days_of_the_rivals_follow_their_models(string cause, double celsius, int wetHours, double days)
    {
        var input = Input(Records.Hourly(Hours, (Column.Temperature, _ => celsius), (Column.Wetness, hour => hour % 24 < wetHours ? 60 : 0)));
        Assert.Equal(days, InfectionDays.Of(input, Noticed, InfectionResponse.All.First(response => response.Cause == cause)).Low, 0.0001);
    }

    [Fact]
    public void Only_the_21_days_up_to_the_day_it_was_noticed_count()
    {
        var record = Records.Humid(Hours + 48, 16, hour => hour is < 24 or >= Hours + 24);
        var days = InfectionDays.Of(Input(record), Noticed.AddDays(1), InfectionResponse.All[0]);
        Assert.Equal((0, 0, Hours), (days.Low, days.High, days.Measured));
        Assert.Equal(1, InfectionDays.Of(Input(record), Noticed, InfectionResponse.All[0]).Low);
        Assert.Equal(1, InfectionDays.Of(Input(record), Noticed.AddDays(2), InfectionResponse.All[0]).Low);
    }

    [Theory] // 95 % of 504 hours: 479
    [InlineData(479, true)]
    [InlineData(478, false)]
    public void A_record_with_too_few_measured_hours_gives_no_factor_and_says_how_many_are_needed(int measured, bool isGood)
    {
        var input = Input(Records.Hourly(Hours, (Column.Temperature, hour => hour < measured ? 16 : double.NaN), (Column.Humidity, _ => 95)));
        Assert.Equal(isGood, WeatherPrior.IsGood(input, Noticed));
        var prior = Prior(input, "potato");
        Assert.Equal(isGood ? 1 : 0, prior.Factors.Length);
        if (!isGood) Assert.Equal(["478", "479", "504"], prior.Neutral.Single().Why.Values);
    }

    [Fact]
    public void Hours_that_were_filled_in_do_not_make_a_record_good()
    {
        var raw = Records.Hourly(Hours, (Column.Temperature, hour => hour % 12 == 5 ? double.NaN : 16), (Column.Humidity, _ => 95));
        Assert.False(WeatherPrior.IsGood(Input(Completion.Fill(raw, 1)), Noticed));
    }

    [Fact]
    public void Daily_records_records_without_humidity_and_old_ones_give_none()
    {
        Assert.Equal("no-columns", Prior(Input(Records.Daily((10, 20, 0))), "potato").Neutral.Single().Why.Key);
        Assert.Equal("no-columns", Prior(Input(Records.Hourly(Hours, (Column.Temperature, _ => 16))), "potato").Neutral.Single().Why.Key);
        Assert.Equal("too-few-hours", WeatherPrior.Of(Input(Records.Humid(Hours, 16, _ => true)), Noticed.AddYears(1), "potato", false).Neutral.Single().Why.Key);
    }

    [Theory]
    [InlineData(50, null)]
    [InlineData(51, "dry-in-rain")]
    public void A_suspect_humidity_sensor_takes_nothing_off_and_too_much_of_it_says_nothing(int suspect, string? why)
    {
        var dry = Records.Humid(Hours, 16, _ => false);
        Assert.Equal(0.5, Factor(Input(dry), "late-blight"));
        var flagged = dry with { Flags = [.. Enumerable.Range(0, suspect).Select(hour => new Flag(FlagKind.DryInRain, Column.Humidity, hour * 10, 60))] };
        Assert.Equal(why ?? "middling", Prior(Input(flagged), "potato").Neutral.Single().Why.Key);
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(4, false)]
    public void A_sensor_that_stands_still_too_often_says_nothing(int stretches, bool isGood)
    {
        var record = Records.Humid(Hours, 16, _ => true) with { Flags = [.. Enumerable.Range(0, stretches).Select(i => new Flag(FlagKind.Persistence, Column.Humidity, 40 * i, 60))] };
        Assert.Equal(isGood, WeatherPrior.IsGood(Input(record), Noticed));
    }

    [Theory] // irrigation is water given from above; the record begins a day before the 21 days
    [InlineData(23, 0.5)]
    [InlineData(24, 1)]
    [InlineData(Hours + 23, 1)]
    public void Recorded_watering_from_above_keeps_a_factor_from_falling_under_one(int hourOfWater, double factor)
    {
        var record = Records.Hourly(Hours + 24, (Column.Temperature, _ => 16), (Column.Humidity, _ => 60), (Column.Irrigation, hour => hour == hourOfWater ? 5 : 0));
        Assert.Equal(factor, WeatherPrior.Of(Input(record), Noticed.AddDays(1), "potato", false).Factors.FirstOrDefault()?.Factor ?? 1);
    }

    [Fact]
    public void Factors_are_bounded_and_never_under_one_where_a_station_says_little() =>
        Hour.Array[Hours].Sample(hours =>
        {
            var input = Input(Of(hours));
            Assert.All(WeatherPrior.Of(input, Noticed, "tomato", false).Factors, factor => Assert.InRange(factor.Factor, factor.Response.Curve[0].Factor, factor.Response.Curve[^1].Factor));
            Assert.All(WeatherPrior.Of(input, Noticed, "tomato", true).Factors, factor => Assert.True(factor.Factor > 1));
        }, iter: 60);

    [Fact]
    public void A_wet_favorable_hour_more_never_lowers_a_factor() =>
        Gen.Select(Hour.Array[Hours], Gen.Int[0, 2], Gen.Int[0, Hours - 60], Gen.Int[1, 60], Gen.Int[152, 266]).Sample((hours, density, at, more, tenths) =>
        {
            hours = [.. hours.Select((hour, i) => hour with { Percent = i % 6 < density * 2 ? 95 : 50 })];
            double[] Factors() => [.. InfectionResponse.All.Select(response => Factor(Input(Of(hours)), response.Cause))];
            double[] before = Factors();
            for (int i = at; i < at + more; i++) hours[i] = hours[i].Percent < 90 ? (tenths / 10.0, 95) : hours[i];
            Assert.All(before.Zip(Factors()), pair => Assert.True(pair.Second >= pair.First));
        }, iter: 60);

    [Fact]
    public void Hours_that_go_missing_move_a_factor_towards_one_and_never_past_it() =>
        Gen.Select(Hour.Array[Hours], Gen.Int[0, 2], Gen.Int[0, Hours - 25]).Sample((hours, density, at) =>
        {
            hours = [.. hours.Select((hour, i) => hour with { Percent = i % 6 < density * 2 ? 95 : 50 })];
            double before = Factor(Input(Of(hours)), "late-blight");
            for (int i = at; i < at + 25; i++) hours[i].Percent = double.NaN;
            double after = Factor(Input(Of(hours)), "late-blight");
            Assert.InRange(after, Math.Min(1, before), Math.Max(1, before));
        }, iter: 60);

    [Fact]
    public void Every_curve_rises_through_one_and_stays_within_what_a_case_may_state()
    {
        var range = BuiltIn.Solanum().Document.PriorFactors.Each;
        Assert.All(InfectionResponse.All, response =>
        {
            Assert.NotNull(BuiltIn.Solanum().FindCause(response.Cause));
            Assert.All(response.Curve, point => Assert.InRange(point.Factor, range.From, range.To));
            Assert.All(response.Curve.Zip(response.Curve.Skip(1)), pair => Assert.True(pair.First.Days < pair.Second.Days && pair.First.Factor <= pair.Second.Factor));
            Assert.True(response.Curve[0].Factor >= 0.5 && response.FactorOf(-1) == response.Curve[0].Factor && response.FactorOf(99) == response.Curve[^1].Factor);
            Assert.Contains(response.Curve, point => point.Factor == 1);
        });
    }

    [Fact]
    public void A_case_weighed_with_the_factors_moves_as_they_say_and_not_without_them()
    {
        var knowledge = BuiltIn.Solanum();
        var weigher = new Weigher(knowledge);
        double Probability(StationRecord? record, bool saysLittle = false)
        {
            ImmutableArray<PriorFactor> factors = record is null ? [] : [.. WeatherPrior.Of(Input(record), Noticed, "tomato", saysLittle).Factors.Select(one => new PriorFactor(knowledge.FindCause(one.Response.Cause)!, one.Factor, "weather"))];
            return weigher.Weigh(new Case { Knowledge = knowledge, Host = "tomato", System = saysLittle ? "greenhouse" : "field", PriorFactors = factors }).LateBlight.Probability;
        }

        StationRecord wet = Records.Humid(Hours, 16, _ => true), dry = Records.Humid(Hours, 16, _ => false), middling = Records.Humid(Hours, 16, hour => hour % 24 < 3);
        Assert.True(Probability(dry) < Probability(null) && Probability(null) < Probability(wet));
        Assert.Equal(Probability(null), Probability(Records.Hourly(Hours, (Column.Temperature, _ => 16))));
        Assert.Equal(1, Factor(Input(middling), "late-blight"));
        Assert.Equal(weigher.Weigh(new Case { Knowledge = knowledge, Host = "tomato", System = "greenhouse" }).LateBlight.Probability, Probability(dry, saysLittle: true));
    }

    [Fact]
    public void The_nearest_station_is_the_nearest_with_a_good_record()
    {
        StationRecord At(string name, double north, double east, int hours) => Records.Humid(hours, 16, _ => true) with { Station = name, Latitude = north, Longitude = east };
        ModelInput[] stations = [Input(At("far", 44.3, -31, Hours)), Input(At("near but short", 44.05, -31, 100)), Input(At("next", 44, -31.2, Hours)), Input(At("nowhere", 44, -31, Hours) with { Latitude = null })];
        var nearest = NearestStation.Of(44, -31, stations, Noticed)!;
        Assert.Equal(("next", 1), (nearest.Input.Record.Station, nearest.PassedOver));
        Assert.Equal(16.0, nearest.Kilometres, 0.05); // 0.2° of longitude at 44° north: 111.19 km x 0.2 x cos 44°
        Assert.Null(NearestStation.Of(45, -31, stations, Noticed));
        Assert.Equal(44.5, NearestStation.KilometresBetween(0, 179.8, 0, -179.8), 0.05);
    }

    [Fact]
    public void An_Irish_summer_favors_late_blight_and_its_dry_April_does_not()
    {
        var input = Input(Records.Real("dunsany-2017-season.csv", "dunsany.yaml"));
        double On(int month, int day) => WeatherPrior.Of(input, new DateOnly(2017, month, day), "potato", false).Factors.FirstOrDefault()?.Factor ?? 1;
        Assert.InRange(On(8, 31), 2, 3);
        Assert.InRange(On(5, 8), 0.5, 1);
        Assert.Equal("too-few-hours", WeatherPrior.Of(input, new DateOnly(2017, 4, 30), "potato", false).Neutral.Single().Why.Key); // the record begins on 15 April
    }

    private static ModelInput Input(StationRecord record) => new(record, new WeatherSettings());

    private static WeatherPrior Prior(ModelInput input, string host) => WeatherPrior.Of(input, Noticed, host, false);

    private static double Factor(ModelInput input, string cause) => Prior(input, "tomato").Factors.FirstOrDefault(factor => factor.Response.Cause == cause)?.Factor ?? 1;

    private static StationRecord Of((double Celsius, double Percent)[] hours) => Records.Hourly(Hours, (Column.Temperature, hour => hours[hour].Celsius), (Column.Humidity, hour => hours[hour].Percent));
}
