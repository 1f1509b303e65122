using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weather;
using Abaxial.Weather.Models;
using CsCheck;

namespace Abaxial.Tests.Weather;

/// <summary>Laws over made-up records with gaps, ties at the limits and long wet spells.</summary>
public sealed class WeatherLawTests
{
    private static readonly Gen<(double Celsius, double Percent, double Rain)> Hour =
        Gen.Select(Gen.Int[60, 280], Gen.Frequency((6, Gen.Int[88, 100]), (2, Gen.Int[60, 90]), (1, Gen.Const(-1))), Gen.Frequency((5, Gen.Const(0)), (1, Gen.Int[1, 40])), (t, h, r) => (t / 10.0, (double)h, r / 10.0));

    private static readonly WeatherSettings Settings = new() { Cultivar = CultivarClass.Moderate, Sprayed = [Records.FirstDay.AddDays(1)], Pathogen = new PathogenSet("invented") { Infection = new(5, 20, 30, 6, 100, 3) } };

    [Fact]
    public void Reading_a_file_again_in_any_order_within_48_hours_changes_nothing() =>
        Gen.Select(Hour.Array[24 * 6], Gen.Int[1, 47], Gen.Int[0, 1000]).Sample((hours, block, seed) =>
        {
            string[] rows = [.. hours.Select(Row)];
            string[] mixed = [.. rows.Chunk(block).SelectMany(part => part.Index().OrderBy(row => ((row.Index * 7919) + seed) % 101).Select(row => row.Item))];
            Assert.Equal(Told(Read(rows)), Told(Read(mixed)));
        }, iter: 40);

    [Fact]
    public void A_file_split_in_two_and_joined_is_the_file() =>
        Gen.Select(Hour.Array[24 * 6], Gen.Int[1, (24 * 6) - 1]).Sample((hours, cut) =>
        {
            string[] rows = [.. hours.Select(Row)];
            var whole = Read(rows);
            var first = Read(rows[..cut]);
            var second = Read(rows[cut..]);
            foreach (var column in new[] { Column.Temperature, Column.Humidity, Column.Rain })
            {
                double[] joined = [.. first.Hours.Of(column)[first.First..(first.Last + 1)], .. second.Hours.Of(column)[second.First..(second.Last + 1)]];
                Assert.Equal(whole.Hours.Of(column).ToArray(), joined);
            }
        }, iter: 40);

    [Fact]
    public void An_unknown_hour_ends_every_run() =>
        Gen.Enum<HourState>().Array[0, 60].Sample(states =>
        {
            var runs = Run.In(states);
            Assert.All(runs, run => Assert.All(states[run.Start..(run.Last + 1)], state => Assert.Equal(HourState.Yes, state)));
            Assert.Equal(states.Count(state => state == HourState.Yes), runs.Sum(run => run.Length));
            Assert.All(runs, run => Assert.True(run.Last + 1 == states.Length || states[run.Last + 1] != HourState.Yes));
        });

    [Fact]
    public void A_day_with_a_missing_hour_has_no_value_in_any_model_and_says_why() =>
        Hour.Array[24 * 6].Sample(hours =>
        {
            var record = QualityControl.Check(Read([.. hours.Select(Row)]));
            foreach (var model in Told(record).Keys)
            {
                Assert.All(WeatherModels.Find(model)!.Days(record, Settings), day =>
                {
                    if (day.Inputs.Missing > 0 && !(model == "fungicide-units-fry" && day.Value == 0)) Assert.Null(day.Value);
                    if (day.Value is null) Assert.NotEmpty(day.Notes);
                    Assert.Equal(24, day.Inputs.Hours + day.Inputs.Missing);
                });
            }
        }, iter: 40);

    [Fact]
    public void More_humid_hours_of_one_wet_period_never_lower_its_severity() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 10], Gen.Double[0, 35]).Sample((hours, more, celsius) =>
            Assert.True(SeverityWallin.Severity(hours + more, celsius) >= SeverityWallin.Severity(hours, celsius)));

    [Fact]
    public void Where_the_first_day_shown_lies_changes_sums_and_no_value() =>
        Gen.Select(Hour.Array[24 * 6], Gen.Int[0, 5]).Sample((hours, from) =>
        {
            var record = QualityControl.Check(Read([.. hours.Select(Row)]));
            var model = new SeverityWallin();
            var all = Season.Of(model, new ModelInput(record, Settings)).Days;
            var later = Season.Of(model, new ModelInput(record, Settings with { From = Records.FirstDay.AddDays(from) })).Days;
            Assert.Equal(all.Skip(from).Select(day => day.Day.Value), later.Select(day => day.Day.Value));
            Assert.Equal(all[^1].Sum, later[^1].Sum + (from == 0 ? 0 : all[from - 1].Sum));
        }, iter: 40);

    [Fact]
    public void Drier_air_never_makes_a_day_of_blight_worse() =>
        Gen.Select(Hour.Array[24 * 4], Gen.Int[0, (24 * 4) - 1]).Sample((hours, at) =>
        {
            hours = [.. hours.Select(hour => hour with { Percent = Math.Max(hour.Percent, 60) })];
            var before = Read([.. hours.Select(Row)]);
            hours[at].Percent = 50;
            var after = Read([.. hours.Select(Row)]);
            foreach (var model in new IWeatherModel[] { new Hutton(), new Smith(), new Beaumont(), new IrishBourke() })
            {
                double Sum(StationRecord record) => model.Values(record).Sum() ?? 0;
                Assert.True(Sum(after) <= Sum(before), model.Id);
            }
        }, iter: 60);

    private static string Row((double Celsius, double Percent, double Rain) hour, int index) => string.Create(
        CultureInfo.InvariantCulture, $"{Records.FirstDay.ToDateTime(TimeOnly.MinValue).AddHours(index):yyyy-MM-ddTHH:mm}Z,{hour.Celsius},{(hour.Percent < 0 ? "" : $"{hour.Percent}")},{hour.Rain}");

    private static StationRecord Read(IEnumerable<string> rows) => Records.Record($"time,temperature,humidity,rain\n{string.Join('\n', rows)}\n");

    private static Dictionary<string, ImmutableArray<double?>> Told(StationRecord record) => WeatherModels.All
        .Where(model => WeatherModels.Lacking(model, record, Settings, wasAsked: true) is null)
        .ToDictionary(model => model.Id, model => model.Values(record, Settings).ToImmutableArray());
}
