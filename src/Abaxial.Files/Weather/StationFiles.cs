using System.Collections.Immutable;
using Abaxial.Weather;

namespace Abaxial.Files.Weather;

/// <summary>
/// Reads a station's record in the form it has: the project's own table, a daily one, EnergyPlus, ISD-Lite, GHCN-hourly, or any table with a mapping; packed with
/// gzip or not. Memory grows with the hours that the record spans, not with the file.
/// </summary>
public static class StationFiles
{
    private static readonly string[] Ends = [".gz", ".csv", ".epw", ".psv", ".txt", ".tsv"];

    /// <summary>Reads a record.</summary>
    /// <param name="stream">Read forwards; not closed.</param>
    /// <param name="fileName">The file's name, for refusals and for the station where nothing else names it.</param>
    /// <param name="options">What the file does not say.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static StationReading Read(Stream stream, string fileName, StationReadOptions options)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(options);
        GuardedStream? guarded = null;
        try
        {
            guarded = GuardedStream.Open(stream, out string firstLine);
            var record = Read(guarded, firstLine, fileName, options, out var unknown);
            return StationReading.Of(record, unknown);
        }
        catch (RefusedException refused)
        {
            return StationReading.Refused(refused.In(fileName));
        }
        catch (NotSupportedException)
        {
            // The table reader ends rows of more than 16 million characters so: a quote that nobody closes.
            return StationReading.Refused(new RecordRefusal(fileName, guarded?.Line ?? 0, null, "a row without end", ["quotes that are closed"]));
        }
    }

    private static StationRecord Read(GuardedStream stream, string firstLine, string fileName, StationReadOptions options, out ImmutableArray<string> unknown)
    {
        unknown = [];
        var draft = new StationRecord
        {
            Station = options.Mapping?.Station ?? NameOf(fileName),
            Latitude = options.Latitude ?? options.Mapping?.Latitude,
            Longitude = options.Longitude ?? options.Mapping?.Longitude,
            Days = [],
            Hours = HourTable.Of(0, new Dictionary<Column, double[]>()),
        };
        var clock = new StationClock(options.Zone ?? options.Mapping?.Zone);
        if (options.Mapping is { } mapping) return MappedFiles.Read(stream, mapping, clock, draft);
        if (EpwFiles.IsFirstLine(firstLine)) return EpwFiles.Read(stream, draft);
        if (IsdLiteFiles.IsFirstLine(firstLine)) return IsdLiteFiles.Read(stream, clock, draft);
        if (GhcnHourlyFiles.IsFirstLine(firstLine)) return GhcnHourlyFiles.Read(stream, clock, draft);
        bool isDaily = DailyFiles.IsHeader(firstLine.Split(',').Select(name => name.Trim().Trim('"')));
        return isDaily ? DailyFiles.Read(stream, draft, out unknown) : CanonicalFiles.Read(stream, clock, draft, out unknown);
    }

    private static string NameOf(string fileName)
    {
        string name = Path.GetFileName(fileName);
        while (Ends.FirstOrDefault(end => name.Length > end.Length && name.EndsWith(end, StringComparison.OrdinalIgnoreCase)) is { } found) name = name[..^found.Length];
        return name;
    }
}
