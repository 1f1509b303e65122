using System.Globalization;
using Abaxial.Weather;
using Abaxial.Weather.Arrival;
using Abaxial.Weather.Models;
using Abaxial.Weather.Priors;
using Abaxial.Weather.Sprays;

namespace Abaxial.Tests.Weather;

/// <summary>What is made of a real Irish season beyond the models, held against a second computation (tests/data/weather/uses.py).</summary>
public sealed class RealUsesTests
{
    private static readonly ModelInput Dunsany = new(Records.Real("dunsany-2017-season.csv", "dunsany.yaml"), new WeatherSettings());
    private static readonly string[][] Expected = [.. File.ReadLines(Records.DataFile("dunsany-2017-uses.csv")).Skip(1).Select(line => line.Split(','))];

    [Fact]
    public void Days_of_infection_by_late_blight_are_what_a_second_computation_says()
    {
        var told = Expected.Where(row => row[1].Length > 0).ToList();
        Assert.Equal(149, told.Count);
        Assert.All(told, row => Assert.Equal(double.Parse(row[1], CultureInfo.InvariantCulture), InfectionDays.Of(Dunsany, Day(row), InfectionResponse.All[0]).Low, 0.000001));
    }

    [Fact]
    public void When_a_lesion_seen_at_noon_began_is_what_a_second_computation_says_on_every_day()
    {
        var lesion = new LesionMeasure(LesionMeasureOf.Millimetres, 4, 6);
        Assert.All(Expected, row =>
        {
            var seen = Day(row).ToDateTime(new TimeOnly(12, 0));
            var answer = ArrivalEstimate.Of(new LesionFinding("A", Dunsany.Record, seen, lesion), Dunsany.Settings);
            string told = answer.Declined is { } why ? why.Key : $"{(seen - answer.Infection.Earliest).TotalHours} {(seen - answer.Infection.Latest).TotalHours}";
            Assert.Equal($"{row[2]} {row[3]}".TrimEnd(), told);
        });
    }

    [Fact]
    public void Units_since_a_spray_are_what_a_second_computation_says()
    {
        Application spray = new(new DateOnly(2017, 6, 1), [new Material("M05", "chlorothalonil")]);
        var days = SprayOutlook.Of(Dunsany, [spray], null).Observed.Where(day => day.DaysSince is not null).ToList();
        Assert.Equal(
            Expected.Where(row => row[4].Length > 0).Select(row => $"{row[0]} {row[4]} {row[5]} {row[6]}"),
            days.Select(day => string.Create(CultureInfo.InvariantCulture, $"{day.Day:yyyy-MM-dd} {day.Rain.Sum:0.0} {day.Blight[0].Sum} {day.Fungicide!.Value.Sum}")));
    }

    private static DateOnly Day(string[] row) => DateOnly.ParseExact(row[0], "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
