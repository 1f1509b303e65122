using System.Globalization;
using System.Text;
using System.Text.Json;
using Abaxial.Speaking;
using Abaxial.Tests.Cli;
using Abaxial.Weather.Models;

namespace Abaxial.Tests.Weather;

public sealed class WeatherCommandTests
{
    [Fact]
    public void The_station_comes_first_then_days_in_order_of_day_and_model()
    {
        using var run = new CliRun();
        var result = run.Run("weather", run.Write("thrave.csv", Week()), "--json");
        Assert.Equal(0, result.ExitCode);
        var documents = result.Lines.Select(line => JsonDocument.Parse(line).RootElement).ToList();
        var station = documents[0];
        Assert.Equal(("thrave", "UTC", 168), (station.GetProperty("station").GetString(), station.GetProperty("zone").GetString(), station.GetProperty("rows").GetInt32()));
        Assert.Equal(("2026-06-01T00:00:00Z", "2026-06-07T23:00:00Z"), (station.GetProperty("from").GetString(), station.GetProperty("to").GetString()));
        Assert.Equal("""{"temperature":0,"humidity":0,"rain":0}""", station.GetProperty("missing").GetRawText());
        Assert.Equal("wetness", station.GetProperty("lacking").GetProperty("early-blight-madden").GetString());
        var order = documents.Skip(1).Select(day => $"{day.GetProperty("day").GetString()} {day.GetProperty("model").GetString()}").ToList();
        Assert.Equal(order.Order(StringComparer.Ordinal), order);
        Assert.Equal(WeatherModels.All.Length - station.GetProperty("lacking").EnumerateObject().Count(), order.Count / 7);
    }

    [Fact]
    public void A_day_says_value_sum_inputs_and_note()
    {
        using var run = new CliRun();
        var lines = run.Run("weather", run.Write("thrave.csv", Week()), "--json", "--model", "hutton").Lines;
        Assert.Equal("""{"day":"2026-06-01","model":"hutton","value":null,"sum":0,"inputs":{"hours":24,"estimated":0,"missing":0},"note":"The record does not reach 24 hours back."}""", lines[1]);
        Assert.Equal("""{"day":"2026-06-03","model":"hutton","value":1,"sum":2,"inputs":{"hours":24,"estimated":0,"missing":0},"note":null}""", lines[3]);
        Assert.Equal(8, lines.Length);
    }

    [Fact]
    public void Sums_count_from_the_first_day_asked_for()
    {
        using var run = new CliRun();
        var lines = run.Run("weather", run.Write("thrave.csv", Week()), "--json", "--model", "hutton", "--from", "2026-06-04", "--to", "2026-06-05").Lines;
        Assert.Equal([1, 2], lines.Skip(1).Select(line => JsonDocument.Parse(line).RootElement.GetProperty("sum").GetInt32()));
    }

    [Fact]
    public void Settings_flags_and_what_was_filled_are_said()
    {
        using var run = new CliRun();
        string text = Week().Replace("2026-06-02T05:00Z,14,95,0", "2026-06-02T05:00Z,14,,0", StringComparison.Ordinal).Replace("2026-06-03T05:00Z,14,95,0", "2026-06-03T05:00Z,-999,95,0", StringComparison.Ordinal);
        var lines = run.Run("weather", run.Write("a.csv", text), "--json", "--model", "hutton", "--fill", "1", "--day-starts", "6", "--set", "wetness.way=tree").Lines;
        var station = JsonDocument.Parse(lines[0]).RootElement;
        Assert.Equal((1, 1), (station.GetProperty("missing").GetProperty("temperature").GetInt32(), station.GetProperty("missing").GetProperty("humidity").GetInt32()));
        Assert.Equal(1, station.GetProperty("flags").GetProperty("range").GetInt32());
        var settings = station.GetProperty("settings");
        Assert.Equal(("06:00", "1", "tree"), (settings.GetProperty("day-starts").GetString(), settings.GetProperty("fill").GetString(), settings.GetProperty("wetness.way").GetString()));
        Assert.Equal([1, 1, 0], lines.Skip(1).Take(3).Select(line => JsonDocument.Parse(line).RootElement.GetProperty("inputs").GetProperty("estimated").GetInt32()));
    }

    [Fact]
    public void A_model_asked_for_by_name_gets_wetness_estimated_and_the_hours_counted()
    {
        using var run = new CliRun();
        var lines = run.Run("weather", run.Write("a.csv", Week()), "--json", "--model", "early-blight-madden").Lines;
        var day = JsonDocument.Parse(lines[1]).RootElement;
        Assert.Equal((24, JsonValueKind.Number), (day.GetProperty("inputs").GetProperty("estimated").GetInt32(), day.GetProperty("value").ValueKind));
    }

    [Fact]
    public void A_daily_file_serves_the_models_that_need_no_more()
    {
        using var run = new CliRun();
        string rows = string.Concat(Enumerable.Range(1, 12).Select(day => $"2026-06-{day:00},12,20,4\n"));
        var result = run.Run("weather", run.Write("d.csv", "date,tmin,tmax,rain\n" + rows), "--json");
        Assert.Equal(["fungicide-units-fry", "physiological-days", "rain-favorable-hyre"], result.Lines.Skip(1).Select(line => JsonDocument.Parse(line).RootElement.GetProperty("model").GetString()).Distinct());
        Assert.Contains("\"hutton\":\"hourly temperature, hourly humidity\"", result.Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_refused_record_says_file_line_column_found_and_accepted()
    {
        using var run = new CliRun();
        var result = run.Run("weather", run.Write("bad.csv", "time,temperature\n2026-06-01T00:00Z,warm\n"), "--json");
        Assert.Equal(2, result.ExitCode);
        Assert.Equal("""{"format":"abaxial-record-refusal/1","file":"bad.csv","line":2,"column":"temperature","found":"warm","accepted":["a number","an empty cell where the value is missing"]}""", result.Lines.Single());
        Assert.Contains("line 2, column temperature", result.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Run("weather", "bad.csv").ExitCode);
        run.Write("good.csv", Week());
        Assert.Equal(2, run.Run("weather", "good.csv", "--map", run.Write("map.yaml", "time: t")).ExitCode);
        Assert.Equal(2, run.Run("weather", "good.csv", "--pathogen", run.Write("set.yaml", "name: x")).ExitCode);
    }

    [Theory]
    [InlineData("--model", "oracle")]
    [InlineData("--from", "June")]
    [InlineData("--zone", "Mars/Olympus")]
    [InlineData("--cultivar", "tough")]
    [InlineData("--sprayed", "yesterday")]
    [InlineData("--fill", "25")]
    [InlineData("--day-starts", "24")]
    [InlineData("--latitude", "50")]
    [InlineData("--set", "moon=full")]
    [InlineData("--set", "beaumont.limits=soft")]
    [InlineData("--map", "absent.yaml")]
    public void Usage_that_makes_no_sense_ends_with_64(string option, string value)
    {
        using var run = new CliRun();
        var result = run.Run("weather", run.Write("a.csv", Week()), option, value);
        Assert.Equal((64, ""), (result.ExitCode, result.Out));
        Assert.StartsWith("abaxial: ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_ends_with_64()
    {
        using var run = new CliRun();
        Assert.Equal(64, run.Run("weather", "absent.csv").ExitCode);
        Assert.Equal(64, run.Run("weather").ExitCode);
    }

    [Fact]
    public void People_read_a_table_thresholds_what_lacks_sources_and_cautions()
    {
        using var run = new CliRun();
        var result = run.Run("weather", run.Write("thrave.csv", Week()), "--cultivar", "susceptible", "--latitude", "44", "--longitude", "-31");
        Assert.Equal(0, result.ExitCode);
        string page = string.Join(' ', result.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Weather at thrave", page, StringComparison.Ordinal);
        Assert.Contains("2026-06-07", page, StringComparison.Ordinal);
        Assert.Contains("The Hutton criteria were met on 2026-06-02.", page, StringComparison.Ordinal);
        Assert.Contains("Severity values reached 18 on", page, StringComparison.Ordinal);
        Assert.Contains("early-blight-madden lacks wetness", page, StringComparison.Ordinal);
        Assert.Contains("Wallin 1962", page, StringComparison.Ordinal);
        Assert.Contains("No number here is leave to skip a spray", page, StringComparison.Ordinal);
        Assert.Contains("thresholds for starting are void", page, StringComparison.Ordinal);
        Assert.Contains("label and local law come first", page, StringComparison.Ordinal);
        Assert.DoesNotContain("weather.", page, StringComparison.Ordinal); // a sentence that is not in the texts shows its key
    }

    [Fact]
    public void Every_note_threshold_and_flag_has_its_sentence()
    {
        var speech = new Speech(Abaxial.Knowledge.BuiltIn.Solanum());
        string[] notes = ["missing-hours", "missing-before", "record-starts", "days-untold", "no-spray", "spray-untold"];
        var keys = notes.SelectMany(note => new[] { $"weather.note.{note}", $"weather.untold.{note}" })
            .Concat(((string[])["period-cut", "no-infection", "outside-tested"]).Select(note => $"weather.note.{note}"))
            .Concat(WeatherModels.All.SelectMany(model => new[] { $"weather.short.{model.Id}", $"weather.value.{model.Id}" }))
            .Concat(WeatherModels.All.SelectMany(model => model.Card.Thresholds).Select(threshold => $"weather.threshold.{threshold.Key}"))
            .Concat(Enum.GetValues<Abaxial.Weather.FlagKind>().Select(kind => $"weather.flag.{Abaxial.Weather.FlagWords.Word(kind)}"))
            .Concat(Abaxial.Weather.Columns.All.Select(column => $"weather.column.{Abaxial.Weather.Columns.Word(column)}"));
        Assert.All(keys, key => Assert.NotEqual(key, speech.Say(key)));
    }

    /// <summary>A warm week that is humid from 20:00 to 16:00.</summary>
    private static string Week()
    {
        var text = new StringBuilder("time,temperature,humidity,rain\n");
        for (int hour = 0; hour < 168; hour++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{new DateTime(2026, 6, 1).AddHours(hour):yyyy-MM-ddTHH:mm}Z,{(hour % 24 < 12 ? 14 : 17)},{(hour % 24 is >= 16 and < 20 ? 70 : 95)},{(hour % 24 == 21 ? 3 : 0)}\n");
        }

        return text.ToString();
    }
}
