using System.Globalization;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Real records (tests/data/weather/README.md), and the same models computed a second time by expected.py.</summary>
public sealed class RealSeasonTests
{
    private static readonly Lazy<StationRecord> Dunsany = new(() => Records.Real("dunsany-2017-season.csv", "dunsany.yaml"));
    private static readonly Lazy<string[][]> Expected = new(() => [.. File.ReadLines(Records.DataFile("dunsany-2017-expected.csv")).Select(line => line.Split(','))]);

    [Theory]
    [InlineData("severity-wallin")]
    [InlineData("rain-favorable-hyre")]
    [InlineData("schedule-krause")]
    [InlineData("beaumont")]
    [InlineData("smith")]
    [InlineData("hutton")]
    [InlineData("irish-bourke")]
    [InlineData("blight-units-fry")]
    [InlineData("physiological-days")]
    public void Every_day_of_an_Irish_season_is_what_a_second_computation_says(string model)
    {
        int column = Array.IndexOf(Expected.Value[0], model);
        var days = WeatherModels.Find(model)!.Days(Dunsany.Value, new WeatherSettings { Cultivar = CultivarClass.Susceptible });
        Assert.Equal(Expected.Value.Length - 1, days.Length);
        foreach (var (row, day) in Expected.Value.Skip(1).Zip(days))
        {
            Assert.Equal(row[0], day.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            if (row[column].Length == 0) Assert.Null(day.Value);
            else Assert.Equal(double.Parse(row[column], CultureInfo.InvariantCulture), day.Value!.Value, 0.0000006);
        }
    }

    [Fact]
    public void The_season_of_every_other_model_is_told_and_stays_in_its_range()
    {
        var settings = new WeatherSettings { Pathogen = new PathogenSet("invented") { Infection = new InfectionParameters(5, 20, 30, 6, 100) } };
        var ranges = new Dictionary<string, double> { ["early-blight-madden"] = 4, ["bacterial-spot-surface"] = 1, ["latent-period"] = 24 / 68.0, ["infection-magarey"] = 100 };
        foreach (var (model, most) in ranges)
        {
            var values = WeatherModels.Find(model)!.Values(Dunsany.Value, settings);
            Assert.All(values, value => Assert.InRange(value!.Value, 0, most));
            Assert.Contains(values, value => value > 0);
        }
    }

    [Fact]
    public void The_known_defects_of_the_Newark_slice_are_found()
    {
        var record = Records.Real("ewr-2013-defects.csv", "ewr.yaml");
        var wind = Assert.Single(record.Flags, flag => flag is { Kind: FlagKind.Range, Column: Column.Wind });
        Assert.Equal(1048.36058 * 0.44704, wind.Value, 0.01);
        Assert.Equal(new DateTime(2013, 2, 12, 8, 0, 0), record.TimeOf(wind.Hour));
        Assert.Contains(record.Flags, flag => flag is { Kind: FlagKind.Consistency, Column: Column.Humidity });
        Assert.DoesNotContain(record.Flags, flag => flag.Kind == FlagKind.Duplicate); // in UTC the hour of 3 November is two
        Assert.True(record.Hours.MissingIn(Column.Temperature, record.First, record.Last) > 0);
    }

    [Fact]
    public void The_same_hour_by_the_local_clock_stands_twice_and_is_told_apart_by_the_zone()
    {
        string map = File.ReadAllText(Records.DataFile("ewr.yaml")).Replace("time: time_hour", "zone: America/New_York\ntime: [year, month, day, hour]", StringComparison.Ordinal);
        using var file = File.OpenRead(Records.DataFile("ewr-2013-defects.csv"));
        var local = Abaxial.Files.Weather.StationFiles.Read(file, "ewr.csv", new Abaxial.Files.Weather.StationReadOptions { Mapping = Records.Mapping(map) }).Record!;
        int at = local.Days.IndexOf(new DateOnly(2013, 11, 3)) * 24;
        Assert.Empty(local.Flags);
        Assert.Equal([51.98, 50.0, 51.08], local.Hours.Of(Column.Temperature).Slice(at, 3).ToArray().Select(celsius => Math.Round((celsius * 1.8) + 32, 2)));
    }
}
