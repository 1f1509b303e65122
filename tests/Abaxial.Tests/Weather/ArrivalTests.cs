using Abaxial.Weather;
using Abaxial.Weather.Arrival;
using Abaxial.Weather.Models;
using CsCheck;

namespace Abaxial.Tests.Weather;

public sealed class ArrivalTests
{
    private static readonly WeatherSettings Settings = new();
    private static readonly DateTime Start = Records.FirstDay.ToDateTime(TimeOnly.MinValue);

    /// <summary>Lesions seen at the end of the twentieth day of a made record.</summary>
    private static readonly DateTime Seen = Start.AddDays(20);

    [Theory] // by hand from the restated equation (Andrade-Piedra et al. 2005)
    [InlineData(15, 0.711516)]
    [InlineData(20, 0.964276)]
    [InlineData(22, 1.002940)]
    [InlineData(8, 0.252316)]
    [InlineData(7.999999, 0.251278)]
    [InlineData(4.09, 0.000076)]
    [InlineData(4.0899, 0)]
    [InlineData(32.94, 0.001478)]
    [InlineData(32.941, 0)]
    public void Lesions_grow_by_the_restated_response(double celsius, double share) => Assert.Equal(share, LesionGrowth.Response(celsius), 0.000002);

    [Theory] // by hand from the restated equation (Andrade-Piedra et al. 2005)
    [InlineData(10, 2.140673)]
    [InlineData(15, 1.431788)]
    [InlineData(23, 1.000092)]
    public void The_latent_period_lengthens_by_the_restated_curve(double celsius, double times) => Assert.Equal(times, CyclePace.RelativePeriod(celsius), 0.0000005);

    [Fact]
    public void A_lesion_of_five_millimeters_at_22_degrees_is_as_old_as_worked_out_by_hand()
    {
        // Fast: 3 mm at 5 mm/d x 1.00294 take 15 h, then 68 h. Slow: 3 mm at 2.5 mm/d take 29 h, then 93.3 h x 1.006769 = 94 h.
        // A cycle at the mean of 1/68 and 1/93.93 an hour: 79 h. The 40 h from 123 to 83 h before are widened to 79 h, from 143 to 64 h before.
        var answer = Of(Constant(22), Millimetres(5));
        Assert.Null(answer.Declined);
        Assert.Equal((Seen.AddHours(-143), Seen.AddHours(-64)), answer.Infection);
        Assert.Equal((79, true, 0), (answer.CycleHours, answer.IsWidened, answer.MissingHours));
        Assert.Equal(Seen.AddHours(-143 - 24), answer.Spores.Earliest);
        Assert.Equal(answer.Infection.Latest, answer.Spores.Latest);
        Assert.Equal(104 * ((1 / 68.0) + (1 / 93.3 / 1.0067695)) / 2, answer.Cycles, 0.001);
    }

    [Fact]
    public void A_lesion_visible_for_two_days_at_22_degrees_is_as_old_as_worked_out_by_hand()
    {
        // 48 h, and 44 h of incubation at the fast end, 69.3 h x 1.006769 = 70 h at the slow one: from 118 to 92 h before, widened by 53 h.
        var answer = Of(Constant(22), Days(2));
        Assert.Equal((Seen.AddHours(-145), Seen.AddHours(-66)), answer.Infection);
    }

    [Fact]
    public void A_wide_range_of_sizes_makes_a_band_that_needs_no_widening()
    {
        // 2 mm at the fast end: 68 h. 12 mm at the slow one: 10 mm at 2.507 mm/d, 96 h, and 94 h.
        var answer = Of(Constant(22), new LesionMeasure(LesionMeasureOf.Millimetres, 2, 12));
        Assert.Equal((Seen.AddHours(-190), Seen.AddHours(-68)), answer.Infection);
        Assert.False(answer.IsWidened);
    }

    [Theory]
    [InlineData(12, null)]
    [InlineData(13, "third-cycle")]
    [InlineData(40, "third-cycle")]
    [InlineData(40.1, "too-wide")]
    public void Past_the_second_cycle_and_past_the_leaf_there_is_no_answer(double millimetres, string? why)
    {
        var answer = Of(Constant(22), Millimetres(millimetres));
        Assert.Equal(why, answer.Declined?.Key);
        if (why is null) Assert.InRange(answer.Cycles, 1.9, ArrivalEstimate.MostCycles);
        else Assert.Equal((default, 0, 0), (answer.Infection, answer.CycleHours, answer.Periods.Length));
    }

    [Fact]
    public void A_record_that_begins_too_late_has_daily_rows_or_lacks_hours_gives_no_answer()
    {
        Assert.Equal("record-starts", Of(Constant(22), Millimetres(5), Start.AddHours(122)).Declined?.Key);
        Assert.Null(Of(Constant(22), Millimetres(5), Start.AddHours(123)).Declined);
        Assert.Equal("record-starts", Of(Constant(2), Millimetres(5)).Declined?.Key); // nothing grows at 2 °C
        Assert.Equal("no-temperature", Of(Records.Daily((10, 20, 0)), Millimetres(5)).Declined?.Key);
        Assert.Equal("no-temperature", Of(Records.Hourly(480, (Column.Humidity, _ => 95)), Millimetres(5)).Declined?.Key);
        Assert.Equal("missing", Of(Records.Hourly(480, (Column.Temperature, hour => hour % 3 == 0 ? double.NaN : 22)), Millimetres(5)).Declined?.Key);
        var apart = Constant(22);
        Assert.Equal("days-apart", Of(apart with { Days = apart.Days.SetItem(0, Records.FirstDay.AddYears(-3)) }, Millimetres(5)).Declined?.Key);
    }

    [Fact]
    public void Hours_without_temperature_widen_the_band_on_both_sides()
    {
        var whole = Of(Constant(15), new LesionMeasure(LesionMeasureOf.Millimetres, 2, 8));
        var gaps = Of(Records.Hourly(480, (Column.Temperature, hour => hour is >= 420 and < 440 ? double.NaN : 15)), new LesionMeasure(LesionMeasureOf.Millimetres, 2, 8));
        Assert.Equal(20, gaps.MissingHours);
        Assert.True(gaps.Infection.Earliest < whole.Infection.Earliest && gaps.Infection.Latest > whole.Infection.Latest);
    }

    [Fact]
    public void Latent_periods_of_the_user_take_the_place_of_the_curves()
    {
        // 100 h at every temperature from 10 to 30 °C: 5 mm take 15 or 29 h of growth before that; the band of 14 h is widened to 100 h.
        var supplied = Settings with { Pathogen = new PathogenSet("measured") { LatentPeriods = [(10, 100), (30, 100)] } };
        var answer = ArrivalEstimate.Of(new LesionFinding("A", Constant(22), Seen, Millimetres(5)), supplied);
        Assert.Equal((100, Seen.AddHours(-172), Seen.AddHours(-72)), (answer.CycleHours, answer.Infection.Earliest, answer.Infection.Latest));
    }

    [Theory] // two hours, six hours, 6, 13, 23 and 28 °C: Becktell et al. 2005 and the trace at 6 °C
    [InlineData(1, 15, null)]
    [InlineData(2, 15, false)]
    [InlineData(5, 15, false)]
    [InlineData(6, 15, true)]
    [InlineData(6, 12.9, false)]
    [InlineData(6, 13, true)]
    [InlineData(6, 23, true)]
    [InlineData(6, 23.1, false)]
    [InlineData(6, 27.9, false)]
    [InlineData(6, 28, null)]
    [InlineData(6, 6, false)]
    [InlineData(6, 5.9, null)]
    public void A_wet_period_fits_by_its_length_and_temperature(int hours, double celsius, bool? isFavorable)
    {
        bool IsWet(int hour) => hour >= 300 && hour < 300 + hours;
        var record = Records.Hourly(480, (Column.Temperature, hour => IsWet(hour) ? celsius : 22), (Column.Wetness, hour => IsWet(hour) ? 60 : 0));
        var periods = WetPeriod.In(record, "humidity", 290, 320);
        Assert.Equal(isFavorable, periods.SingleOrDefault()?.IsFavorable);
        Assert.Empty(WetPeriod.In(record, "humidity", 300 + hours, 400));
        Assert.Equal(isFavorable is null ? 0 : 1, WetPeriod.In(record, "humidity", 299 + hours, 400).Length);
        Assert.All(periods, period => Assert.Equal((Start.AddHours(300), Start.AddHours(300 + hours), hours, false), (period.From, period.To, period.Hours, period.IsEstimated)));
    }

    [Fact]
    public void The_band_is_never_narrower_than_one_cycle_and_ends_before_the_lesions_were_seen() =>
        Gen.Select(Gen.Int[20, 290].Array[480], Gen.Int[1, 400], Gen.Int[0, 100], Gen.Bool, Gen.Int[0, 479]).Sample((tenths, least, more, isAge, seen) =>
        {
            var record = Records.Hourly(480, (Column.Temperature, hour => tenths[hour] < 25 ? double.NaN : tenths[hour] / 10.0), (Column.Humidity, hour => 80 + (tenths[hour] % 20)));
            var lesion = isAge ? new LesionMeasure(LesionMeasureOf.DaysVisible, least / 100.0, (least + more) / 100.0) : new LesionMeasure(LesionMeasureOf.Millimetres, least / 10.0, (least + more) / 10.0);
            var answer = Of(record, lesion, Start.AddHours(seen));
            if (answer.Declined is not null) return;
            Assert.True((answer.Infection.Latest - answer.Infection.Earliest).TotalHours >= answer.CycleHours);
            Assert.True(answer.CycleHours >= LatentPeriod.ShortestHours);
            Assert.True(answer.Infection.Latest <= Start.AddHours(seen));
            Assert.InRange(answer.Cycles, 0, ArrivalEstimate.MostCycles);
            Assert.All(answer.Periods, period => Assert.True(period.From <= answer.Infection.Latest && period.To > answer.Infection.Earliest));
        }, iter: 400);

    [Fact]
    public void A_larger_lesion_never_began_later() =>
        Gen.Select(Gen.Int[80, 250].Array[480], Gen.Int[20, 100], Gen.Int[0, 30]).Sample((tenths, size, more) =>
        {
            var record = Records.Hourly(480, (Column.Temperature, hour => tenths[hour] / 10.0));
            var (small, large) = (Of(record, Millimetres(size / 10.0)), Of(record, Millimetres((size + more) / 10.0)));
            if (small.Declined is not null || large.Declined is not null) return;
            Assert.True(large.Infection.Latest <= small.Infection.Latest && large.Infection.Earliest <= small.Infection.Earliest);
        }, iter: 100);

    [Fact]
    public void An_Irish_July_has_wet_periods_that_fit()
    {
        var answer = Of(Records.Real("dunsany-2017-season.csv", "dunsany.yaml"), new LesionMeasure(LesionMeasureOf.Millimetres, 4, 7), new DateTime(2017, 7, 28, 9, 0, 0));
        Assert.Null(answer.Declined);
        Assert.NotEmpty(answer.Periods);
        Assert.All(answer.Periods, period => Assert.True(period.IsEstimated));
        Assert.InRange((new DateTime(2017, 7, 28, 9, 0, 0) - answer.Infection.Earliest).TotalDays, 5, 12);
    }

    [Fact]
    public void Fields_share_the_hours_in_which_their_wet_periods_overlap_whatever_the_zone_and_the_order()
    {
        StationRecord Wet(int from, int to, int offset) => Records.Hourly(480, (Column.Temperature, _ => 22), (Column.Wetness, hour => hour >= from && hour < to ? 60 : 0)) with { OffsetMinutes = offset };
        ArrivalEstimate Field(string name, StationRecord record, TimeSpan shift) => ArrivalEstimate.Of(new LesionFinding(name, record, Seen + shift, Millimetres(5)), Settings);
        var a = Field("A", Wet(360, 372, 0), default);
        var b = Field("B", Wet(370, 380, 120), TimeSpan.FromHours(2)); // 368 to 378 UTC
        var c = Field("C", Wet(372, 384, 0), default);
        var d = Field("D", Wet(100, 110, 0), default);
        SharedPeriod[] expected =
        [
            new(Start.AddHours(368), Start.AddHours(372), ["A", "B"]),
            new(Start.AddHours(372), Start.AddHours(378), ["B", "C"]),
        ];
        Assert.Equal(expected.Select(Told), SharedPeriod.Of([a, b, c, d]).Select(Told));
        Assert.Equal(expected.Select(Told), SharedPeriod.Of([d, c, b, a]).Select(Told));
        Assert.Empty(SharedPeriod.Of([a, c]));
        Assert.Empty(SharedPeriod.Of([a]));
    }

    private static string Told(SharedPeriod shared) => $"{shared.FromUtc:s} {shared.ToUtc:s} {string.Join(' ', shared.Fields)}";

    private static StationRecord Constant(double celsius) => Records.Hourly(480, (Column.Temperature, _ => celsius));

    private static LesionMeasure Millimetres(double size) => new(LesionMeasureOf.Millimetres, size, size);

    private static LesionMeasure Days(double age) => new(LesionMeasureOf.DaysVisible, age, age);

    private static ArrivalEstimate Of(StationRecord record, LesionMeasure lesion, DateTime? seen = null) => ArrivalEstimate.Of(new LesionFinding("A", record, seen ?? Seen, lesion), Settings);
}
