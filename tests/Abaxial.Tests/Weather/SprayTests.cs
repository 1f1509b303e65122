using System.Collections.Immutable;
using Abaxial.Files.Weather;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using Abaxial.Weather.Sprays;

namespace Abaxial.Tests.Weather;

public sealed class SprayTests
{
    private static readonly ImmutableArray<Application> Chlorothalonil = [Tank(0, ("M05", "chlorothalonil"))];

    [Fact]
    public void Units_count_from_the_day_after_the_application_as_in_the_worked_example()
    {
        // Rain of 0, 6, 0, 0 mm on days 1 to 4: 1 + 5 + 1 + 1 = 8 fungicide units. Eleven humid hours at 16 °C: 6, 5 and 4 blight units a day.
        var days = Outlook(5, Chlorothalonil, rain: day => day is 0 or 2 ? 6 : 0).Observed;
        Assert.Equal([0, 1, 2, 3, 4], days.Select(day => day.DaysSince!.Value));
        Assert.Equal([0, 0, 6, 6, 6], days.Select(day => day.Rain.Sum));
        Assert.Equal([0, 1, 6, 7, 8], days.Select(day => day.Fungicide!.Value.Sum));
        Assert.Equal([24, 20, 16], days[^1].Blight.Select(units => units.Sum));
        Assert.All(days, day => Assert.Equal(0, day.Rain.Untold));
    }

    [Theory] // thresholds of 30, 35 and 40 blight units, exceeded
    [InlineData(CultivarClass.Susceptible, 5)]
    [InlineData(CultivarClass.Moderate, 7)]
    [InlineData(CultivarClass.Resistant, 10)]
    public void A_threshold_is_past_when_it_is_exceeded_and_not_when_it_is_met(CultivarClass cultivar, int lastDayWithin)
    {
        var days = Outlook(14, [Tank(0, ("40", "mandipropamid"))]).Observed;
        Assert.False(days[lastDayWithin].IsPast(cultivar));
        Assert.True(days[lastDayWithin + 1].IsPast(cultivar));
    }

    [Fact]
    public void Fungicide_units_exist_for_chlorothalonil_alone()
    {
        var days = Outlook(9, [Tank(0, ("M05", " Chlorothalonil ")), Tank(3, ("M03", "mancozeb")), Tank(6, ("40", "mandipropamid"), ("M05", "chlorothalonil"))]).Observed;
        Assert.Equal([0, 1, 2, null, null, null, 0, 1, 2], days.Select(day => day.Fungicide?.Sum));
        Assert.Equal([0, 1, 2, 0, 1, 2, 0, 1, 2], days.Select(day => day.DaysSince!.Value));
        Assert.False(Tank(0, ("M05", "chlorothalonil plus something")).HasUnits);
    }

    [Fact]
    public void Without_an_application_sums_count_from_the_first_day_shown_and_units_of_a_spray_are_not_told()
    {
        var outlook = Outlook(4, [], settings: new WeatherSettings { From = Records.FirstDay.AddDays(2) });
        Assert.Null(outlook.Last);
        Assert.Equal([6, 12], outlook.Observed.Select(day => day.Blight[0].Sum));
        Assert.All(outlook.Observed, day => Assert.True(day.DaysSince is null && day.Fungicide is null));
    }

    [Fact]
    public void What_is_missing_makes_a_sum_a_least()
    {
        var record = Weather(4, day => 2, hour => hour == 30);
        var days = SprayOutlook.Of(new ModelInput(record, new WeatherSettings()), Chlorothalonil, null).Observed;
        Assert.Equal([0, 1, 1, 1], days.Select(day => day.Rain.Untold));
        Assert.Equal([0, 0, 6, 12], days.Select(day => day.Blight[0].Sum));
        var before = SprayOutlook.Of(new ModelInput(Weather(2), new WeatherSettings()), [Tank(-3, ("M05", "chlorothalonil"))], null).Observed;
        Assert.Equal((3, 2), (before[0].DaysSince!.Value, before[0].Rain.Untold)); // two days before the record are not told
    }

    [Fact]
    public void A_forecast_is_counted_on_from_the_last_observed_day_and_never_mixed_into_it()
    {
        var input = new ModelInput(Weather(5), new WeatherSettings());
        var alone = SprayOutlook.Of(input, Chlorothalonil, null);
        var both = SprayOutlook.Of(input, Chlorothalonil, Forecast.Of(Weather(20, day => 9))); // its first five days lie about what was observed
        Assert.Equal(alone.Observed.Select(Told), both.Observed.Select(Told));
        Assert.Empty(alone.Ahead);
        Assert.Equal(Enumerable.Range(5, Forecast.MostDays).Select(Records.FirstDay.AddDays), both.Ahead.Select(day => day.Day));
        Assert.Equal(30, both.Ahead[0].Blight[0].Sum);
        Assert.Equal((9, 4 + 5), (both.Ahead[0].Rain.Sum, both.Ahead[0].Fungicide!.Value.Sum)); // 9 mm on the fifth day are 5 units
    }

    [Fact]
    public void A_half_observed_day_is_neither_observed_nor_mixed()
    {
        var cut = Weather(5) with { Last = (5 * 24) - 7 };
        var outlook = SprayOutlook.Of(new ModelInput(cut, new WeatherSettings()), Chlorothalonil, Forecast.Of(Weather(7)));
        Assert.Equal(Records.FirstDay.AddDays(3), outlook.Observed[^1].Day);
        Assert.Equal(Records.FirstDay.AddDays(4), outlook.Ahead[0].Day);
    }

    [Fact]
    public void A_forecast_that_begins_late_leaves_the_days_between_untold()
    {
        var late = Weather(9) with { Days = [.. Enumerable.Range(7, 9).Select(Records.FirstDay.AddDays)] };
        var ahead = SprayOutlook.Of(new ModelInput(Weather(5), new WeatherSettings()), Chlorothalonil, Forecast.Of(late)).Ahead;
        Assert.Equal((Records.FirstDay.AddDays(7), 2), (ahead[0].Day, ahead[0].Rain.Untold));
        Assert.Throws<ArgumentException>(() => SprayOutlook.Of(new ModelInput(Weather(5), new WeatherSettings()), [], Forecast.Of(late with { OffsetMinutes = 60 })));
    }

    [Fact]
    public void An_application_to_come_makes_the_days_ahead_begin_anew()
    {
        var outlook = SprayOutlook.Of(new ModelInput(Weather(5), new WeatherSettings()), [.. Chlorothalonil, Tank(6, ("40", "mandipropamid"))], Forecast.Of(Weather(9)));
        Assert.Equal(Records.FirstDay, outlook.Last!.Day);
        Assert.Equal([5, 0, 1, 2], outlook.Ahead.Select(day => day.DaysSince!.Value));
    }

    [Fact]
    public void Uses_on_end_are_counted_and_flagged_where_a_material_acts_at_one_site()
    {
        var uses = CodeUse.Of([Tank(0, ("40", "a"), ("M03", "b")), Tank(7, ("40", "c"), ("M03", "b")), Tank(14, ("21", "d"), ("M03", "b")), Tank(21, ("40", "a"))]).ToDictionary(use => use.Code);
        Assert.Equal(new CodeUse("40", 3, 1, 2), uses["40"]);
        Assert.Equal(new CodeUse("21", 1, 0, 1), uses["21"]);
        Assert.Equal(new CodeUse("M03", 3, 0, 3), uses["M03"]);
        Assert.Equal((true, false, false), (uses["40"].IsFlagged, uses["21"].IsFlagged, uses["M03"].IsFlagged));
        Assert.Equal(["21", "40", "M03"], CodeUse.Of([Tank(0, ("M03", "b"), ("40", "a"), ("21", "c"))]).Select(use => use.Code));
    }

    [Theory]
    [InlineData("11", "11")]
    [InlineData(" m5 ", "M05")]
    [InlineData("M03", "M03")]
    [InlineData("p7", "P07")]
    [InlineData("BM02", "BM02")]
    [InlineData("nc", "NC")]
    [InlineData("07", "7")]
    [InlineData("0", null)]
    [InlineData("", null)]
    [InlineData("M", null)]
    [InlineData("111", null)]
    [InlineData("X1", null)]
    [InlineData("1.5", null)]
    public void A_code_is_a_number_or_letters_and_a_number(string typed, string? code) => Assert.Equal((code is not null, code ?? ""), (FracCode.TryParse(typed, out string read), read));

    [Fact]
    public void Applications_are_read_by_day_and_rows_of_a_day_are_one_tank()
    {
        var reading = Read("ingredient,Date,frac,who\nmancozeb,2026-07-12,m3,x\n\"metalaxyl-M, mancozeb\",2026-07-01,4,\n2 parts of nothing,2026-07-12,40,y\n");
        Assert.Equal(["who"], reading.UnknownColumns);
        Assert.Equal(["2026-07-01 4 metalaxyl-M, mancozeb", "2026-07-12 M03 mancozeb;40 2 parts of nothing"], reading.Applications.Select(one => $"{one.Day:yyyy-MM-dd} {string.Join(';', one.Materials.Select(material => $"{material.Code} {material.Ingredient}"))}"));
    }

    [Theory]
    [InlineData("", 0, null)]
    [InlineData("date,frac,ingredient\n", 0, null)]
    [InlineData("date,frac\n2026-07-01,4\n", 1, "ingredient")]
    [InlineData("date,frac,ingredient\n1 July,4,x\n", 2, "date")]
    [InlineData("date,frac,ingredient\n2026-07-01,4,x\n2026-07-01,fungicide,x\n", 3, "frac")]
    [InlineData("date,frac,ingredient\n2026-07-01,4,\n", 2, "ingredient")]
    [InlineData("date,frac,ingredient\n2026-07-01,4,mancozeb 2.5 kg/ha\n", 2, "ingredient")]
    [InlineData("date,frac,ingredient\n2026-07-01,4,mancozeb 75%\n", 2, "ingredient")]
    [InlineData("date,frac,ingredient\n2026-07-01,4,x,y\n", 2, null)]
    public void Applications_that_make_no_sense_or_name_a_dose_are_refused_with_line_and_column(string text, long line, string? column)
    {
        var refusal = Read(text).Refusal!;
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
        Assert.NotEmpty(refusal.Accepted);
    }

    private static ApplicationReading Read(string text) => ApplicationFiles.Read(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text)), "sprays.csv");

    private static Application Tank(int day, params (string Code, string Ingredient)[] materials) => new(Records.FirstDay.AddDays(day), [.. materials.Select(material => new Material(material.Code, material.Ingredient))]);

    /// <summary>Days with eleven humid hours at 16 °C, and rain in one hour.</summary>
    private static StationRecord Weather(int days, Func<int, double>? rain = null, Func<int, bool>? isMissing = null) => Records.Hourly(
        days * 24,
        (Column.Temperature, hour => isMissing?.Invoke(hour) == true ? double.NaN : 16),
        (Column.Humidity, hour => hour % 24 < 11 ? 95 : 70),
        (Column.Rain, hour => isMissing?.Invoke(hour) == true ? double.NaN : hour % 24 == 3 ? rain?.Invoke(hour / 24) ?? 0 : 0));

    private static SprayOutlook Outlook(int days, ImmutableArray<Application> applications, Func<int, double>? rain = null, WeatherSettings? settings = null) =>
        SprayOutlook.Of(new ModelInput(Weather(days, rain), settings ?? new WeatherSettings()), applications, null);

    private static string Told(SprayDay day) => $"{day.Day} {day.DaysSince} {day.Rain} {string.Join(' ', day.Blight)} {day.Fungicide}";
}
