using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Abaxial.Files.Weather;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Cli.Weather;

/// <summary>The arguments of <c>abaxial weather</c>.</summary>
internal sealed class WeatherArguments
{
    private const int MostFill = 24;

    private readonly Argument<string> file = new("FILE") { Description = "One station's record: the project's CSV, a daily one, .epw, ISD-Lite, GHCN-hourly, or any table with --map; packed with gzip or not." };
    private readonly Option<string[]> models = new("--model") { Description = "A model, by its id; may be given several times. Without it, all that the record suffices for.", HelpName = "ID" };
    private readonly Option<string?> from = new("--from") { Description = "The first day; sums count from it.", HelpName = "DATE" };
    private readonly Option<string?> to = new("--to") { Description = "The last day.", HelpName = "DATE" };
    private readonly Option<string?> zone = new("--zone") { Description = "The IANA zone of times without offset, and of the station's days.", HelpName = "ZONE" };
    private readonly Option<double?> latitude = new("--latitude") { Description = "Degrees north.", HelpName = "DEGREES" };
    private readonly Option<double?> longitude = new("--longitude") { Description = "Degrees east.", HelpName = "DEGREES" };
    private readonly Option<string?> cultivar = new("--cultivar") { Description = "susceptible, moderate or resistant.", HelpName = "CLASS" };
    private readonly Option<string[]> sprayed = new("--sprayed") { Description = "A day on which chlorothalonil was sprayed; may be given several times.", HelpName = "DATE" };
    private readonly Option<string?> pathogen = new("--pathogen") { Description = "A file with the parameters of a pathogen.", HelpName = "SET.yaml" };
    private readonly Option<int> fill = new("--fill") { Description = "Fill gaps of up to so many hours, 1 to 24; counted as estimated. Rain is never filled.", HelpName = "HOURS" };
    private readonly Option<int> dayStarts = new("--day-starts") { Description = "The hour of standard time that opens a day, 0 to 23.", HelpName = "HH" };
    private readonly Option<string?> map = new("--map") { Description = "A file that says what the columns of a table are.", HelpName = "FILE" };
    private readonly Option<string[]> set = new("--set") { Description = "A convention that sources disagree on: name=value.", HelpName = "NAME=VALUE" };
    private readonly Option<bool> json = new("--json") { Description = "Print JSON Lines: the station, then a document a model and day." };

    private readonly WeatherUses uses = new();

    public Command Command(Func<WeatherRequest, int> run, Terminal terminal)
    {
        var command = new Command("weather", "Reads a station's record, checks it, and prints what each model says of each day.")
        {
            file, models, from, to, zone, latitude, longitude, cultivar, sprayed, pathogen, fill, dayStarts, map, set, json,
        };
        foreach (var option in uses.All) command.Add(option);
        command.SetAction(parsed => run(Request(parsed, terminal)));
        return command;
    }

    private WeatherRequest Request(ParseResult parsed, Terminal terminal)
    {
        string? zoneId = parsed.GetValue(zone);
        if (zoneId is not null && !StationZones.Exists(zoneId)) throw new UsageException($"there is no zone '{zoneId}'; IANA names one such as Europe/Dublin or UTC.");
        var (north, east) = (parsed.GetValue(latitude), parsed.GetValue(longitude));
        if (north is null != east is null) throw new UsageException("--latitude and --longitude go together.");
        if (north is { } n && !(Math.Abs(n) <= 90)) throw new UsageException("--latitude is from -90 to 90.");
        if (east is { } e && !(Math.Abs(e) <= 180)) throw new UsageException("--longitude is from -180 to 180.");
        return new WeatherRequest
        {
            File = parsed.GetRequiredValue(file),
            Models = [.. (parsed.GetValue(models) ?? []).Distinct().Select(ModelOf).OrderBy(model => model.Id, StringComparer.Ordinal)],
            Zone = zoneId,
            Latitude = north,
            Longitude = east,
            Map = parsed.GetValue(map),
            Pathogen = parsed.GetValue(pathogen),
            Json = parsed.GetValue(json),
            Settings = SettingsOf(parsed),
            Use = uses.Of(parsed, DateOf),
            Terminal = terminal,
        };
    }

    private WeatherSettings SettingsOf(ParseResult parsed)
    {
        DateOnly? first = DateOf("--from", parsed.GetValue(from)), last = DateOf("--to", parsed.GetValue(to));
        if (first > last) throw new UsageException("--from is after --to.");
        int filled = parsed.GetValue(fill), opens = parsed.GetValue(dayStarts);
        if (filled is < 0 or > MostFill) throw new UsageException($"--fill is from 0 to {MostFill} hours.");
        if (opens is < 0 or > 23) throw new UsageException("--day-starts is from 0 to 23.");
        return new WeatherSettings
        {
            From = first,
            To = last,
            FillHours = filled,
            DayStarts = opens,
            Cultivar = CultivarOf(parsed.GetValue(cultivar)),
            Sprayed = [.. (parsed.GetValue(sprayed) ?? []).Select(day => DateOf("--sprayed", day)!.Value).Distinct().Order()],
            Chosen = ChosenOf(parsed.GetValue(set) ?? []),
        };
    }

    private static ImmutableDictionary<string, string> ChosenOf(string[] settings)
    {
        var chosen = ImmutableDictionary.CreateBuilder<string, string>();
        foreach (string setting in settings)
        {
            int sign = setting.IndexOf('=', StringComparison.Ordinal);
            string name = sign < 0 ? setting : setting[..sign];
            var convention = WeatherSettings.Conventions.FirstOrDefault(one => one.Name == name) ?? throw new UsageException($"--set knows no '{name}'; there are {string.Join(", ", WeatherSettings.Conventions.Select(one => one.Name))}.");
            if (sign < 0 || !convention.Accepted.Contains(setting[(sign + 1)..])) throw new UsageException($"--set {name} is one of {string.Join(", ", convention.Accepted)}.");
            chosen[name] = setting[(sign + 1)..];
        }

        return chosen.ToImmutable();
    }

    private static IWeatherModel ModelOf(string id) =>
        WeatherModels.Find(id) ?? throw new UsageException($"there is no model '{id}'; there are {string.Join(", ", WeatherModels.All.Select(model => model.Id))}.");

    private static CultivarClass? CultivarOf(string? word)
    {
        if (word is null) return null;
        foreach (var cultivar in Enum.GetValues<CultivarClass>())
        {
            if (cultivar.Word() == word) return cultivar;
        }

        throw new UsageException("--cultivar is susceptible, moderate or resistant.");
    }

    private static DateOnly? DateOf(string option, string? text) => text is null ? null
        : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new UsageException($"{option} is a date such as 2026-07-14, not '{text}'.");
}

/// <summary>What was asked for.</summary>
internal sealed record WeatherRequest
{
    public required string File { get; init; }

    /// <summary>The models that were named; empty for all that the record suffices for.</summary>
    public required ImmutableArray<IWeatherModel> Models { get; init; }

    public string? Zone { get; init; }

    public double? Latitude { get; init; }

    public double? Longitude { get; init; }

    public string? Map { get; init; }

    public string? Pathogen { get; init; }

    public bool Json { get; init; }

    public required WeatherSettings Settings { get; init; }

    /// <summary>What the record is used for; null for a season of models.</summary>
    public WeatherUse? Use { get; init; }

    public required Terminal Terminal { get; init; }
}
