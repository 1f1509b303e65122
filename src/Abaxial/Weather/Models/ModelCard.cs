using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>How sure a published number is.</summary>
public enum Confidence
{
    /// <summary>Read in the source itself.</summary>
    Seen,

    /// <summary>Read where somebody else restates it.</summary>
    Restated,

    /// <summary>From memory of the trade; no print was seen.</summary>
    Memory,

    /// <summary>The project's own judgement, on what was seen.</summary>
    Judgement,
}

/// <summary>Where a model comes from.</summary>
/// <param name="Citation">The publication.</param>
/// <param name="Table">How sure its table or equation is.</param>
/// <param name="Thresholds">What sums or values are held against.</param>
public sealed record ModelCard(string Citation, Confidence Table, ImmutableArray<Threshold> Thresholds);

/// <summary>What is held against a threshold.</summary>
public enum ThresholdOf
{
    /// <summary>The season's running total reaches it.</summary>
    Sum,

    /// <summary>The value of a day reaches it.</summary>
    Value,

    /// <summary>So many days in a row have a value of 1 or more.</summary>
    DaysInARow,

    /// <summary>The total since the last spray exceeds it.</summary>
    SinceSpray,
}

/// <summary>A value that the source acts upon.</summary>
/// <param name="Key">The last part of the key of the sentence that says what it means.</param>
/// <param name="Of">What is held against it.</param>
/// <param name="Limit">The limit.</param>
/// <param name="Source">Whose limit, and how sure.</param>
public sealed record Threshold(string Key, ThresholdOf Of, double Limit, Confidence Source)
{
    /// <summary>The published range of days until late blight is first seen after the threshold; null where there is none.</summary>
    public (int Earliest, int Latest)? FirstSeen { get; init; }

    /// <summary>The cultivar class that it is for; null for all.</summary>
    public CultivarClass? Cultivar { get; init; }

    /// <summary>The convention, and the value of it, that it belongs to; null where it belongs to all.</summary>
    public (string Name, string Value)? Convention { get; init; }

    /// <summary>Whether it is meant under these settings.</summary>
    public bool Holds(WeatherSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return (Cultivar is null || Cultivar == settings.Cultivar) && (Convention is not { } convention || settings.Is(convention.Name, convention.Value));
    }
}

/// <summary>The words of confidence.</summary>
public static class ConfidenceWords
{
    /// <summary>The word of a confidence.</summary>
    public static string Word(this Confidence confidence) => confidence switch
    {
        Confidence.Seen => "seen",
        Confidence.Restated => "restated",
        Confidence.Memory => "memory",
        _ => "judgement",
    };
}
