using System.Globalization;
using System.Text;
using Abaxial.Files.Weather;
using Abaxial.Tests.Cli;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using CsCheck;

namespace Abaxial.Tests.Weather;

/// <summary>Records that are awkward by their clock, calendar, place or packing, taken through the models and not only read.</summary>
public sealed class HardRecordTests
{
    private static readonly WeatherSettings Settings = new() { Cultivar = CultivarClass.Moderate };

    [Fact]
    public void A_southern_season_goes_on_across_the_new_year()
    {
        var text = new StringBuilder("time,temperature,humidity,rain\n");
        for (var time = new DateTime(2026, 12, 25); time < new DateTime(2027, 1, 8); time = time.AddHours(1)) text.Append(CultureInfo.InvariantCulture, $"{time:yyyy-MM-ddTHH:mm},16,{(time.Hour < 12 ? 95 : 70)},4\n");
        var record = Records.Record(text.ToString(), new StationReadOptions { Zone = "Etc/GMT-10" });
        var season = Season.Of(new SeverityWallin(), new ModelInput(record, Settings with { From = new DateOnly(2026, 12, 28) }));
        Assert.Equal(11, season.Days.Length);
        Assert.Equal(Enumerable.Range(1, 11).Select(day => day * 1.0), season.Days.Select(day => day.Sum)); // twelve humid hours at 16 °C: 1 a day
        Assert.Equal((new DateOnly(2026, 12, 31), new DateOnly(2027, 1, 1)), (season.Days[3].Day.Day, season.Days[4].Day.Day));
        Assert.All(season.Days, day => Assert.Equal(24, day.Day.Inputs.Hours));
        var inSummerTime = Records.Record(text.ToString(), new StationReadOptions { Zone = "Australia/Sydney" });
        Assert.Equal((600, new DateTime(2026, 12, 24, 23, 0, 0)), (inSummerTime.OffsetMinutes, inSummerTime.TimeOf(inSummerTime.First))); // the clock is an hour ahead of the days
    }

    [Theory] // a change of clocks in the middle of the record, in spring and in autumn
    [InlineData("2026-03-26", "Europe/Berlin")]
    [InlineData("2026-10-22", "Europe/Berlin")]
    [InlineData("2026-03-05", "America/New_York")]
    [InlineData("2026-10-01", "Australia/Sydney")]
    public void A_change_of_clocks_changes_no_value_of_any_model(string from, string zone)
    {
        var start = DateTime.Parse(from, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);
        var tz = TimeZoneInfo.FindSystemTimeZoneById(zone);
        StationRecord Of(Func<DateTime, string> timeOf) => Records.Record(
            $"time,temperature,humidity,rain\n{string.Concat(Enumerable.Range(0, 24 * 8).Select(hour => string.Create(CultureInfo.InvariantCulture, $"{timeOf(start.AddHours(hour))},{10 + (hour * 7 % 12)},{70 + (hour * 11 % 30)},{hour % 5}\n")))}",
            new StationReadOptions { Zone = zone });
        var utc = Of(time => time.ToString("yyyy-MM-ddTHH:mmZ", CultureInfo.InvariantCulture));
        var local = Of(time => TimeZoneInfo.ConvertTimeFromUtc(time, tz).ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture));
        Assert.Empty(local.Flags);
        Assert.Equal(Told(utc), Told(local));
    }

    [Fact]
    public void A_period_runs_through_the_leap_day()
    {
        StationRecord Of(int year) => Records.Record($"time,temperature,humidity\n{string.Concat(Enumerable.Range(0, 24 * 4).Select(hour => $"{new DateTime(year, 2, 27).AddHours(hour):yyyy-MM-ddTHH:mm}Z,14,95\n"))}");
        var leap = Of(2028);
        Assert.Equal([new DateOnly(2028, 2, 28), new DateOnly(2028, 2, 29), new DateOnly(2028, 3, 1)], leap.Days[1..]);
        Assert.Equal([null, 1, 1, 1], new Hutton().Values(leap));
        Assert.Equal(new Hutton().Values(Of(2027)), new Hutton().Values(leap));
        Assert.Equal(365.0 + 1, Records.Record("date,tmin,tmax\n2028-01-01,1,2\n2028-12-31,1,2\n").Days.Length);
    }

    [Fact]
    public void A_polar_day_has_24_hours_of_light_and_its_weather_is_told_like_any_other()
    {
        using var run = new CliRun();
        string rows = string.Concat(Enumerable.Range(0, 48).Select(hour => $"{new DateTime(2026, 6, 20).AddHours(hour):yyyy-MM-ddTHH:mm}Z,11,95,0\n"));
        var result = run.Run("weather", run.Write("north.csv", "time,temperature,humidity,rain\n" + rows), "--latitude", "70", "--longitude", "25", "--model", "hutton");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Day length 24 h on 2026-06-20, 24 h on 2026-06-21.", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_that_reports_at_53_past_is_told_as_one_on_the_hour()
    {
        StationRecord Of(int minute) => Records.Record($"time,temperature,humidity,rain\n{string.Concat(Enumerable.Range(0, 24 * 6).Select(hour => $"{Records.FirstDay.ToDateTime(new TimeOnly(0, minute)).AddHours(hour):yyyy-MM-ddTHH:mm}Z,{9 + (hour % 9)},{80 + (hour % 20)},{hour % 4}\n"))}");
        Assert.Equal(Told(Of(0)), Told(Of(53)));
    }

    [Fact]
    public void The_same_clock_times_in_another_zone_change_no_value_but_that_of_days_that_end_by_UTC() =>
        Gen.Select(Gen.Int[60, 250].Array[24 * 6], Gen.Int[-11, 12]).Sample((tenths, east) =>
        {
            StationRecord Of(string offset) => Records.Record($"time,temperature,humidity,rain\n{string.Concat(tenths.Select((celsius, hour) => string.Create(CultureInfo.InvariantCulture, $"{Records.FirstDay.ToDateTime(TimeOnly.MinValue).AddHours(hour):yyyy-MM-ddTHH:mm}{offset},{celsius / 10.0},{70 + (celsius % 30)},{celsius % 3}\n")))}");
            var here = Told(Of("Z"));
            var there = Told(Of(string.Create(CultureInfo.InvariantCulture, $"{(east < 0 ? '-' : '+')}{Math.Abs(east):00}:00")));
            Assert.Equal(here.Where(line => !line.StartsWith("smith", StringComparison.Ordinal)), there.Where(line => !line.StartsWith("smith", StringComparison.Ordinal)));
        }, iter: 30);

    [Fact]
    public void Files_that_were_split_in_two_and_joined_again_tell_the_same() =>
        Gen.Select(Gen.Int[60, 250].Array[24 * 6], Gen.Int[1, (24 * 6) - 1], Gen.Bool).Sample((tenths, cut, isSwapped) =>
        {
            const string Header = "time,temperature,humidity,rain\n";
            string[] rows = [.. tenths.Select((celsius, hour) => string.Create(CultureInfo.InvariantCulture, $"{Records.FirstDay.ToDateTime(TimeOnly.MinValue).AddHours(hour):yyyy-MM-ddTHH:mm}Z,{celsius / 10.0},{70 + (celsius % 30)},{celsius % 3}\n"))];
            string first = string.Concat(rows[..cut]), second = string.Concat(rows[cut..]);
            bool mayBeSwapped = cut <= 48; // no row of the part that comes late is more than 48 hours behind
            if (isSwapped && mayBeSwapped) (first, second) = (string.Concat(rows[cut..Math.Min(48, rows.Length)]), first + string.Concat(rows[Math.Min(48, rows.Length)..]));
            Assert.Equal(Told(Records.Record(Header + string.Concat(rows))), Told(Records.Record(Header + first + second)));
        }, iter: 30);

    [Theory]
    [InlineData("\0")]
    [InlineData("time,temp\0erature\n2026-06-01T00:00Z,1\n")]
    [InlineData("time,temperature\n2026-06-01T00:00Z,1\n\0\0\0\0")]
    [InlineData("date,tmin,tmax\n2026-06-01,1,\0\n")]
    public void Zero_bytes_are_refused_wherever_they_stand(string text) => Assert.True(Records.Read(text).Refusal is { Line: > 0 });

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(9)]
    [InlineData(10)]
    [InlineData(15)]
    public void A_packed_file_of_a_few_bytes_is_refused(int bytes) => Assert.NotNull(Records.Read(StationFilesTests.Packed("time,temperature\n2026-06-01T00:00Z,1\n")[..bytes]).Refusal);

    [Fact]
    public void Marks_of_a_missing_value_are_missing_and_not_minus_999_degrees()
    {
        var mapped = new StationReadOptions { Mapping = Records.Mapping("zone: UTC\nmissing: [\"-999\"]\ntime: t\ncolumns: { temperature: a }") };
        var record = QualityControl.Check(Records.Record("t,a\n2026-06-01T00:00,-999\n2026-06-01T01:00,-999.00\n2026-06-01T02:00,5\n", mapped));
        Assert.Equal((2, 0), (record.Hours.MissingIn(Column.Temperature, record.First, record.Last), record.Flags.Length));
        var plain = QualityControl.Check(Records.Record("time,temperature\n2026-06-01T00:00Z,-999\n2026-06-01T01:00Z,5\n"));
        Assert.Equal(FlagKind.Range, Assert.Single(plain.Flags).Kind); // nobody said that it is a mark: it is flagged, and not used either
        Assert.Equal(1, plain.Hours.MissingIn(Column.Temperature, plain.First, plain.Last));
    }

    [Fact]
    public void Fahrenheit_inches_and_decimal_commas_tell_what_Celsius_and_millimeters_do()
    {
        StationRecord Of(bool isForeign)
        {
            string Cell(double value) => isForeign ? value.ToString("0.0###", CultureInfo.InvariantCulture).Replace('.', ',') : value.ToString(CultureInfo.InvariantCulture);
            var rows = Enumerable.Range(0, 24 * 6).Select(hour =>
            {
                double celsius = 8 + (hour % 13), rain = hour % 7 == 0 ? 2.54 : 0;
                return $"{Records.FirstDay.ToDateTime(TimeOnly.MinValue).AddHours(hour):yyyy-MM-ddTHH:mm};{Cell(isForeign ? (celsius * 1.8) + 32 : celsius)};{Cell(80 + (hour % 20))};{Cell(isForeign ? rain / 25.4 : rain)}\n";
            });
            string map = isForeign
                ? "zone: UTC\nseparator: \";\"\ndecimal: \",\"\ntime: t\ncolumns:\n  temperature: { from: a, unit: F }\n  humidity: b\n  rain: { from: c, unit: in }"
                : "zone: UTC\nseparator: \";\"\ntime: t\ncolumns: { temperature: a, humidity: b, rain: c }";
            return Records.Record("t;a;b;c\n" + string.Concat(rows), new StationReadOptions { Mapping = Records.Mapping(map) });
        }

        Assert.Equal(Told(Of(false)), Told(Of(true)));
    }

    /// <summary>What every model says of every day, a line a model.</summary>
    private static List<string> Told(StationRecord raw)
    {
        var record = QualityControl.Check(raw);
        return [.. WeatherModels.All.Where(model => WeatherModels.Lacking(model, record, Settings, wasAsked: true) is null)
            .Select(model => $"{model.Id}: {string.Join(' ', model.Days(record, Settings).Select(day => string.Create(CultureInfo.InvariantCulture, $"{day.Day:yyyy-MM-dd}={day.Value:0.######}")))}")];
    }
}
