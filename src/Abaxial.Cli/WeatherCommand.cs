using System.Collections.Immutable;
using System.CommandLine;
using Abaxial.Cli.Pages;
using Abaxial.Cli.Weather;
using Abaxial.Files.Weather;
using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Cli;

/// <summary><c>abaxial weather</c>: what the models say of a station's record.</summary>
internal static class WeatherCommand
{
    public static Command Create(Terminal terminal) => new WeatherArguments().Command(Run, terminal);

    private static int Run(WeatherRequest request)
    {
        var terminal = request.Terminal;
        var speech = new Speech(BuiltIn.Solanum());
        RecordRefusal? refusal = null;
        StationMapping? mapping = request.Map is { } map ? Text(terminal, map, text => StationMapping.Read(text, map, out refusal)) : null;
        if (refusal is not null) return Refuse(request, refusal, speech);
        PathogenSet? pathogen = request.Pathogen is { } set ? Text(terminal, set, text => PathogenFiles.Read(text, set, out refusal)) : null;
        if (refusal is not null) return Refuse(request, refusal, speech);

        var reading = Read(request, mapping);
        if (reading.Record is null) return Refuse(request, reading.Refusal!, speech);
        if (reading.UnknownColumns.Length > 0) terminal.Error.WriteLine(speech.Say("weather.unknown-columns", string.Join(speech.Word("list.comma"), reading.UnknownColumns)));

        var view = WeatherView.Of(reading.Record, request.Models, request.Settings with { Pathogen = pathogen });
        if (request.Json)
        {
            WeatherJson.Write(view, speech, terminal.Out);
        }
        else
        {
            using var writer = terminal.Writer();
            WeatherPage.Write(new Page(writer, terminal), view, speech);
        }

        return ExitCode.Done;
    }

    private static StationReading Read(WeatherRequest request, StationMapping? mapping)
    {
        var options = new StationReadOptions { Zone = request.Zone, Latitude = request.Latitude, Longitude = request.Longitude, Mapping = mapping };
        return Opened(request.Terminal, request.File, file => StationFiles.Read(file, request.File, options));
    }

    private static T Text<T>(Terminal terminal, string name, Func<TextReader, T> read) => Opened(terminal, name, file =>
    {
        using var reader = new StreamReader(file);
        return read(reader);
    });

    private static T Opened<T>(Terminal terminal, string name, Func<Stream, T> read)
    {
        string path = terminal.PathOf(name);
        if (!File.Exists(path)) throw new UsageException(Directory.Exists(path) ? $"'{name}' is a folder, not a file." : $"There is no file '{name}'.");
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, bufferSize: 0);
            return read(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"'{name}' cannot be read: {problem.Message}");
        }
    }

    private static int Refuse(WeatherRequest request, RecordRefusal refusal, Speech speech)
    {
        if (request.Json) WeatherJson.Write(refusal, request.Terminal.Out);
        WeatherRefusalPage.Write(new Page(request.Terminal.Error, request.Terminal with { Colour = false }), refusal, speech);
        return ExitCode.SomeRefused;
    }
}

/// <summary>A checked record and the seasons of the models that it suffices for.</summary>
/// <param name="Record">The record after quality control and completion.</param>
/// <param name="Settings">What the seasons were computed with.</param>
/// <param name="Seasons">A season a model, in order of ids.</param>
/// <param name="Lacking">The other models, and what they lack.</param>
/// <param name="Missing">Hours (days in a daily record) between the first and the last row that lack a column's value, before anything was filled.</param>
internal sealed record WeatherView(
    StationRecord Record, WeatherSettings Settings, ImmutableArray<Season> Seasons, ImmutableArray<KeyValuePair<string, string>> Lacking, ImmutableArray<KeyValuePair<string, int>> Missing)
{
    public static WeatherView Of(StationRecord raw, ImmutableArray<IWeatherModel> asked, WeatherSettings settings)
    {
        var checkedRecord = QualityControl.Check(raw);
        var record = Completion.Fill(Completion.HumidityFromDewPoint(checkedRecord), settings.FillHours);
        var input = new ModelInput(record, settings);
        var models = asked.IsEmpty ? WeatherModels.All : asked;
        var lacking = models.Select(model => KeyValuePair.Create(model.Id, WeatherModels.Lacking(model, record, settings, wasAsked: !asked.IsEmpty))).Where(pair => pair.Value is not null);
        var missing = record.Daily is { } daily
            ? [.. MissingIn(daily)]
            : Columns.All.Where(checkedRecord.Hours.Has).Select(column => KeyValuePair.Create(column.Word(), checkedRecord.Hours.MissingIn(column, record.First, record.Last))).ToImmutableArray();
        return new WeatherView(
            record,
            settings,
            [.. models.Where(model => WeatherModels.Lacking(model, record, settings, wasAsked: !asked.IsEmpty) is null).Select(model => Season.Of(model, input))],
            [.. lacking.Select(pair => KeyValuePair.Create(pair.Key, pair.Value!))],
            missing);
    }

    /// <summary>All days of all models, in order of day, then model id.</summary>
    public IEnumerable<(Season Season, SeasonDay Day)> Days()
    {
        var places = new Dictionary<DateOnly, int>();
        for (int i = 0; i < Record.Days.Length; i++) places.TryAdd(Record.Days[i], i);
        return Seasons.SelectMany(season => season.Days.Select(day => (season, day)))
            .OrderBy(pair => places[pair.day.Day.Day]).ThenBy(pair => pair.season.Model.Id, StringComparer.Ordinal);
    }

    private static IEnumerable<KeyValuePair<string, int>> MissingIn(DailyTable daily)
    {
        yield return new("tmin", daily.LowestCelsius.Count(double.IsNaN));
        yield return new("tmax", daily.HighestCelsius.Count(double.IsNaN));
        if (!daily.RainMillimetres.IsEmpty) yield return new("rain", daily.RainMillimetres.Count(double.IsNaN));
    }
}
