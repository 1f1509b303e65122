using System.Collections.Immutable;
using Abaxial.Files.Weather;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

/// <summary>Records made for a test: days from 2026-06-01, UTC, unless said otherwise.</summary>
internal static class Records
{
    public static readonly DateOnly FirstDay = new(2026, 6, 1);

    /// <summary>A record whose columns are given hour by hour.</summary>
    public static StationRecord Hourly(int hours, params (Column Column, Func<int, double> Of)[] columns)
    {
        int days = (hours + 23) / 24;
        double[] Values(Func<int, double> of) => [.. Enumerable.Range(0, days * 24).Select(hour => hour < hours ? of(hour) : double.NaN)];
        return new StationRecord
        {
            Station = "made",
            Days = [.. Enumerable.Range(0, days).Select(FirstDay.AddDays)],
            Hours = HourTable.Of(days * 24, columns.ToDictionary(column => column.Column, column => Values(column.Of))),
            First = 0,
            Last = hours - 1,
            Rows = hours,
        };
    }

    /// <summary>A record of temperature and humidity that is humid in some hours and dry in the others.</summary>
    public static StationRecord Humid(int hours, double celsius, Func<int, bool> isHumid) =>
        Hourly(hours, (Column.Temperature, _ => celsius), (Column.Humidity, hour => isHumid(hour) ? 95 : 60), (Column.Rain, _ => 0));

    public static StationRecord Daily(params (double Low, double High, double Rain)[] days) => new()
    {
        Station = "made",
        Days = [.. Enumerable.Range(0, days.Length).Select(FirstDay.AddDays)],
        Hours = HourTable.Of(days.Length * 24, new Dictionary<Column, double[]>()),
        Daily = new DailyTable([.. days.Select(day => day.Low)], [.. days.Select(day => day.High)], [.. days.Select(day => day.Rain)]),
        Last = (days.Length * 24) - 1,
        Rows = days.Length,
    };

    public static WeatherSettings With(string convention, string value) => new() { Chosen = ImmutableDictionary<string, string>.Empty.Add(convention, value) };

    public static ImmutableArray<ModelDay> Days(this IWeatherModel model, StationRecord record, WeatherSettings? settings = null) => model.Days(new ModelInput(record, settings ?? new WeatherSettings()));

    public static double?[] Values(this IWeatherModel model, StationRecord record, WeatherSettings? settings = null) => [.. model.Days(record, settings).Select(day => day.Value)];

    public static StationReading Read(string text, StationReadOptions? options = null) => Read(System.Text.Encoding.UTF8.GetBytes(text), options);

    public static StationReading Read(byte[] bytes, StationReadOptions? options = null) => StationFiles.Read(new MemoryStream(bytes), "made.csv", options ?? new StationReadOptions());

    public static StationRecord Record(string text, StationReadOptions? options = null)
    {
        var reading = Read(text, options);
        Assert.Null(reading.Refusal);
        return reading.Record!;
    }

    public static StationMapping Mapping(string yaml)
    {
        var mapping = StationMapping.Read(new StringReader(yaml), "map.yaml", out var refusal);
        Assert.Null(refusal);
        return mapping!;
    }

    public static string DataFile(string name) => Repository.PathOf("tests", "data", "weather", name);

    public static StationRecord Real(string table, string map)
    {
        using var file = File.OpenRead(DataFile(table));
        var reading = StationFiles.Read(file, table, new StationReadOptions { Mapping = Mapping(File.ReadAllText(DataFile(map))) });
        Assert.Null(reading.Refusal);
        return Completion.HumidityFromDewPoint(QualityControl.Check(reading.Record!));
    }
}
