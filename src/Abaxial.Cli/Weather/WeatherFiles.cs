using Abaxial.Files.Weather;
using Abaxial.Speaking;
using Abaxial.Weather;
using Abaxial.Weather.Models;

namespace Abaxial.Cli.Weather;

/// <summary>Reads the files that a weather command names.</summary>
internal static class WeatherFiles
{
    /// <exception cref="RecordRefusedException">The mapping cannot be read.</exception>
    public static StationMapping? Mapping(WeatherRequest request) => request.Map is not { } map ? null
        : Text(request.Terminal, map, text => StationMapping.Read(text, map, out var refusal) ?? throw new RecordRefusedException(refusal!));

    /// <exception cref="RecordRefusedException">The set cannot be read.</exception>
    public static PathogenSet? Pathogen(WeatherRequest request) => request.Pathogen is not { } set ? null
        : Text(request.Terminal, set, text => PathogenFiles.Read(text, set, out var refusal) ?? throw new RecordRefusedException(refusal!));

    /// <summary>A record as it was read, before quality control; columns that are not known are named to the person at the terminal.</summary>
    /// <exception cref="RecordRefusedException">The record cannot be read.</exception>
    public static StationRecord Record(WeatherRequest request, string name, StationMapping? mapping, Speech speech)
    {
        var options = new StationReadOptions { Zone = request.Zone, Latitude = request.Latitude, Longitude = request.Longitude, Mapping = mapping };
        var reading = Opened(request.Terminal, name, file => StationFiles.Read(file, name, options));
        if (reading.Record is null) throw new RecordRefusedException(reading.Refusal!);
        NameUnknown(request.Terminal, reading.UnknownColumns, speech);
        return reading.Record;
    }

    public static void NameUnknown(Terminal terminal, IReadOnlyCollection<string> columns, Speech speech)
    {
        if (columns.Count > 0) terminal.Error.WriteLine(speech.Say("weather.unknown-columns", string.Join(speech.Word("list.comma"), columns)));
    }

    /// <summary>A record after quality control, with what was asked to be filled.</summary>
    public static StationRecord Checked(StationRecord raw, WeatherSettings settings) => Completion.Fill(Completion.HumidityFromDewPoint(QualityControl.Check(raw)), settings.FillHours);

    public static T Text<T>(Terminal terminal, string name, Func<TextReader, T> read) => Opened(terminal, name, file =>
    {
        using var reader = new StreamReader(file);
        return read(reader);
    });

    /// <exception cref="UsageException">There is no such file, or it cannot be read.</exception>
    public static T Opened<T>(Terminal terminal, string name, Func<Stream, T> read)
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
}

/// <summary>Leaves a weather command at a file that was refused.</summary>
internal sealed class RecordRefusedException(RecordRefusal refusal) : Exception
{
    public RecordRefusal Refusal => refusal;
}
