namespace Abaxial.Files.Weather;

/// <summary>What a file does not say itself.</summary>
public sealed record StationReadOptions
{
    /// <summary>The IANA zone of times without offset, and of the station's days; null where none was named.</summary>
    public string? Zone { get; init; }

    /// <summary>Degrees north; null where the file says it, or nobody.</summary>
    public double? Latitude { get; init; }

    /// <summary>Degrees east; null where the file says it, or nobody.</summary>
    public double? Longitude { get; init; }

    /// <summary>How a table's own columns are to be read; null for the known formats.</summary>
    public StationMapping? Mapping { get; init; }
}
