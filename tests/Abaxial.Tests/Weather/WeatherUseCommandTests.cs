using System.Collections.Immutable;
using System.Text.Json;
using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Tests.Cli;
using Abaxial.Weather.Priors;

namespace Abaxial.Tests.Weather;

/// <summary>The uses of a record beyond a season of models, on the invented station of the demo island and on a real Irish season.</summary>
public sealed class WeatherUseCommandTests
{
    private static readonly string Lesions = File.ReadAllText(Repository.PathOf("demo", "stations", "lesions.yaml"));

    private static readonly string Sprays = File.ReadAllText(Repository.PathOf("demo", "stations", "sprays.csv"));

    private static readonly string[] Demo = ["--zone", "Etc/GMT+2"];

    [Fact]
    public void When_it_came_is_told_to_the_clinic_field_by_field()
    {
        using var run = new CliRun();
        var result = run.Run(["weather", Station(run), .. Demo, "--arrival", run.Write("lesions.yaml", Lesions)]);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        ExpectedText.Check("arrival.txt", result.Out);
    }

    [Fact]
    public void When_it_came_is_written_as_JSON_Lines_in_UTC()
    {
        using var run = new CliRun();
        var lines = run.Run(["weather", Station(run), .. Demo, "--json", "--arrival", run.Write("lesions.yaml", Lesions)]).Lines;
        var first = JsonDocument.Parse(lines[0]).RootElement;
        Assert.Equal("Upper Thrave", first.GetProperty("field").GetString());
        Assert.Equal(["2026-07-05T14:00Z", "2026-07-10T00:00Z"], first.GetProperty("infection").EnumerateArray().Select(time => time.GetString()));
        Assert.Equal(5, first.GetProperty("wetPeriods").GetArrayLength());
        var third = JsonDocument.Parse(lines[2]).RootElement;
        Assert.StartsWith("No answer: more than two cycles", third.GetProperty("declined").GetString(), StringComparison.Ordinal);
        Assert.False(third.TryGetProperty("infection", out _));
        Assert.StartsWith("""{"shared":[{"from":"2026-07-09T02:00Z","to":"2026-07-09T06:00Z","fields":["Nether Thrave","Upper Thrave"]}],"caution":""", lines[3], StringComparison.Ordinal);
        Assert.Contains("nothing here may name a field as a source", lines[3], StringComparison.Ordinal);
    }

    [Fact]
    public void A_field_may_have_a_record_of_its_own()
    {
        using var run = new CliRun();
        string text = "fields:\n  - { field: A, seen: 2026-07-14, lesion-mm: 5, record: other.csv }\n  - { field: B, seen: 2026-07-14, lesion-mm: 5 }\n";
        run.Write("other.csv", File.ReadAllText(Repository.PathOf("demo", "stations", "sallowmere.csv")).Replace("T00:00,", "T00:01,", StringComparison.Ordinal));
        var lines = run.Run(["weather", Station(run), .. Demo, "--json", "--arrival", run.Write("lesions.yaml", text)]).Lines;
        Assert.Equal(["other", "sallowmere"], lines.Take(2).Select(line => JsonDocument.Parse(line).RootElement.GetProperty("station").GetString()));
        Assert.Equal(64, run.Run(["weather", "sallowmere.csv", .. Demo, "--arrival", run.Write("lost.yaml", text.Replace("other", "lost", StringComparison.Ordinal))]).ExitCode);
    }

    [Theory]
    [InlineData("fields: []", "fields")]
    [InlineData("seen: 2026-07-14", "seen")]
    [InlineData("fields: [{ seen: 2026-07-14, lesion-mm: 5 }]", "field")]
    [InlineData("fields: [{ field: A, lesion-mm: 5 }]", "seen")]
    [InlineData("fields: [{ field: A, seen: yesterday, lesion-mm: 5 }]", "seen")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14 }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: 5, lesion-days: 1 }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: [9, 5] }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: [1, 2, 3] }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: 0 }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-days: 61 }]", "lesion-days")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-days: -1 }]", "lesion-days")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: wide }]", "lesion-mm")]
    [InlineData("fields: [{ field: A, seen: 2026-07-14, lesion-mm: 5, farm: B }]", "farm")]
    public void Lesions_that_make_no_sense_are_refused_with_the_place(string yaml, string at)
    {
        using var run = new CliRun();
        var result = run.Run(["weather", Hour(run), .. Demo, "--json", "--arrival", run.Write("lesions.yaml", yaml)]);
        Assert.Equal(2, result.ExitCode);
        Assert.Equal(("lesions.yaml", at), (JsonDocument.Parse(result.Lines[0]).RootElement.GetProperty("file").GetString(), JsonDocument.Parse(result.Lines[0]).RootElement.GetProperty("column").GetString()));
    }

    [Fact]
    public void How_protection_stands_is_told_with_the_forecast_apart()
    {
        using var run = new CliRun();
        string[] rows = File.ReadAllLines(Repository.PathOf("demo", "stations", "sallowmere.csv"));
        int end = Array.FindIndex(rows, row => row.StartsWith("2026-08-02T00", StringComparison.Ordinal));
        run.Write("observed.csv", string.Join('\n', rows[..end]) + "\n");
        run.Write("forecast.csv", string.Join('\n', [rows[0], .. rows[end..]]) + "\n");
        string[] args = ["weather", "observed.csv", .. Demo, "--sprays", run.Write("sprays.csv", Sprays), "--forecast", "forecast.csv"];
        var result = run.Run(args);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        ExpectedText.Check("sprays.txt", result.Out);

        var days = run.Run([.. args, "--json", "--from", "2026-07-20"]).Lines.Skip(1).Select(line => JsonDocument.Parse(line).RootElement).ToList();
        Assert.Equal("2026-07-20", days[0].GetProperty("day").GetString());
        Assert.Equal(10, days.Count(day => day.GetProperty("forecast").GetBoolean()));
        Assert.Equal("2026-08-02", days.First(day => day.GetProperty("forecast").GetBoolean()).GetProperty("day").GetString());
    }

    [Fact]
    public void Once_late_blight_is_confirmed_in_the_area_thresholds_are_void_and_no_word_gives_leave()
    {
        using var run = new CliRun();
        string none = run.Write("none.csv", "date,frac,ingredient\n2027-01-01,M05,chlorothalonil\n");
        string[] args = ["weather", Station(run), .. Demo, "--sprays", none, "--to", "2026-06-30"];
        string confirmed = run.Run([.. args, "--confirmed"]).Out, open = run.Run(args).Out;
        ExpectedText.Check("sprays-confirmed.txt", confirmed);
        Assert.Contains("thresholds for starting are void", confirmed, StringComparison.Ordinal);
        Assert.DoesNotContain("By this rule protection starts", Joined(confirmed), StringComparison.Ordinal);
        Assert.Contains("By this rule protection starts", Joined(open), StringComparison.Ordinal);
        Assert.All((string[])[confirmed, open], page => Assert.Contains("No number here is leave to skip a spray", Joined(page), StringComparison.Ordinal));
        Assert.All((string[])[confirmed, open], page => Assert.DoesNotContain("since the last application on", Joined(page), StringComparison.Ordinal));
        Assert.Contains("\"thresholdsVoid\":true", run.Run([.. args, "--confirmed", "--json"]).Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_cultivar_that_is_named_is_the_only_one_that_the_rule_is_read_for()
    {
        using var run = new CliRun();
        string[] args = ["weather", Station(run), .. Demo, "--sprays", run.Write("sprays.csv", Sprays), "--to", "2026-08-01"];
        Assert.Contains("Susceptible cultivars: more than 30 blight units", Joined(run.Run(args).Out), StringComparison.Ordinal);
        string resistant = run.Run([.. args, "--cultivar", "resistant"]).Out;
        Assert.DoesNotContain("Susceptible cultivars", resistant, StringComparison.Ordinal);
        Assert.Contains("That is no leave to skip or to wait", Joined(resistant), StringComparison.Ordinal);
    }

    [Fact]
    public void Sprays_or_forecasts_that_cannot_be_used_are_refused()
    {
        using var run = new CliRun();
        string sprays = run.Write("sprays.csv", Sprays);
        string short1 = run.Write("short.csv", "time,temperature\n2026-06-01T00:00Z,12\n");
        Assert.Equal(2, run.Run(["weather", Hour(run), .. Demo, "--sprays", run.Write("bad.csv", "date,frac\n")]).ExitCode);
        Assert.Equal(2, run.Run("weather", short1, "--sprays", sprays).ExitCode);
        Assert.Equal(2, run.Run(["weather", "hour.csv", .. Demo, "--sprays", sprays, "--forecast", short1]).ExitCode);
        string utc = run.Write("utc.csv", "time,temperature,humidity,rain\n2026-09-01T00:00Z,12,90,0\n");
        var other = run.Run("weather", run.Write("east.csv", "time,temperature,humidity,rain\n2026-08-01T00:00+03:00,12,90,0\n"), "--sprays", sprays, "--forecast", utc, "--json");
        Assert.Equal(2, other.ExitCode);
        Assert.Contains("another standard time", other.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Factors_on_the_prior_are_ready_for_a_case_file()
    {
        using var run = new CliRun();
        var result = run.Run(["weather", Station(run), .. Demo, "--prior", "--host", "tomato", "--noticed", "2026-06-25"]);
        Assert.Equal(0, result.ExitCode);
        var factors = JsonDocument.Parse(result.Out).RootElement.GetProperty("priorFactors");
        Assert.Contains(factors.EnumerateArray(), factor => factor.GetProperty("cause").GetString() == "late-blight" && factor.GetProperty("factor").GetDouble() > 1);
        Assert.Contains("sallowmere, 21 days up to 2026-06-25", factors[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        string looks = """[{"character":"onset","state":"about-a-week","how":"asked"}]""";
        double LateBlight(string more)
        {
            string name = run.Write("case.json", $$"""{"format":"abaxial-case/1","host":"tomato","system":"field"{{more}},"looks":{{looks}}}""");
            var answer = run.Run("weigh", name, "--json");
            Assert.Equal(0, answer.ExitCode);
            return JsonDocument.Parse(answer.Out).RootElement.GetProperty("lateBlight").GetProperty("probability").GetDouble();
        }

        Assert.True(LateBlight($",\"priorFactors\":{factors.GetRawText()}") > LateBlight(""));
    }

    [Theory]
    [InlineData("--system", "greenhouse")]
    [InlineData("--system", "high-tunnel")]
    [InlineData("--system", "storage")]
    [InlineData("--stage", "harvested")]
    [InlineData("--watering", "overhead")]
    public void Where_a_station_says_little_nothing_is_taken_off_and_it_says_why(string option, string value)
    {
        using var run = new CliRun();
        string[] args = ["weather", Station(run), .. Demo, "--prior", "--host", "tomato", "--noticed", "2026-05-22"];
        Assert.Contains("\"factor\":0.", run.Run(args).Out, StringComparison.Ordinal);
        var result = run.Run([.. args, option, value]);
        Assert.Equal("{\"priorFactors\":[]}\n", result.Out);
        Assert.Contains("nothing is taken off", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_is_not_good_enough_gives_no_factor_and_says_what_is_needed()
    {
        using var run = new CliRun();
        var result = run.Run(["weather", Station(run), .. Demo, "--prior", "--host", "potato", "--noticed", "2026-05-10"]);
        Assert.Equal((0, "{\"priorFactors\":[]}\n"), (result.ExitCode, result.Out));
        Assert.Contains("240 hours of the 504 were measured; 479 are needed", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--prior")]
    [InlineData("--prior", "--host", "cabbage")]
    [InlineData("--prior", "--host", "tomato", "--system", "moon")]
    [InlineData("--prior", "--host", "tomato", "--noticed", "June")]
    [InlineData("--prior", "--host", "tomato", "--arrival", "x.yaml")]
    [InlineData("--arrival", "x.yaml", "--sprays", "y.csv")]
    [InlineData("--arrival", "absent.yaml")]
    [InlineData("--sprays", "absent.csv")]
    [InlineData("--forecast", "x.csv")]
    [InlineData("--confirmed")]
    [InlineData("--host", "tomato")]
    public void Options_that_do_not_go_together_end_with_64(params string[] options)
    {
        using var run = new CliRun();
        var result = run.Run(["weather", Hour(run), .. Demo, .. options]);
        Assert.Equal((64, ""), (result.ExitCode, result.Out));
        Assert.StartsWith("abaxial: ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_sentence_of_the_uses_is_in_the_texts()
    {
        var speech = new Speech(BuiltIn.Solanum());
        ImmutableArray<string> keys =
        [
            .. InfectionResponse.All.Select(response => $"prior.reason.{response.Cause}"),
            .. ((string[])["no-columns", "too-few-hours", "dry-in-rain", "still", "says-little", "middling"]).Select(why => $"prior.why.{why}"),
            .. ((string[])["no-temperature", "days-apart", "too-wide", "record-starts", "missing", "third-cycle"]).Select(why => $"arrival.declined.{why}"),
            .. ((string[])["susceptible", "moderate", "resistant"]).SelectMany(cultivar => new[] { $"sprays.class.{cultivar}", $"sprays.column.{cultivar}" }),
            "arrival.millimetres", "arrival.days-visible", "arrival.missing", "arrival.no-period", "arrival.none-shared", "arrival.rests.table",
            "sprays.forecast-empty", "sprays.no-forecast", "sprays.past-ahead", "sprays.not-started", "sprays.none-past",
        ];
        Assert.All(keys, key => Assert.NotEqual(key, speech.Say(key)));
    }

    private static string Hour(CliRun run) => run.Write("hour.csv", "time,temperature,humidity,rain\n2026-08-01T00:00,12,90,0\n");

    private static string Station(CliRun run) => run.Write("sallowmere.csv", File.ReadAllText(Repository.PathOf("demo", "stations", "sallowmere.csv")));

    private static string Joined(string page) => string.Join(' ', page.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
