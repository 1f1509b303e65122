using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weather.Models;

namespace Abaxial.Weather;

/// <summary>How resistant the cultivar is to late blight of the foliage.</summary>
public enum CultivarClass
{
    /// <summary>Susceptible.</summary>
    Susceptible,

    /// <summary>Moderately susceptible, moderately resistant: the middle class.</summary>
    Moderate,

    /// <summary>The most resistant of the three classes.</summary>
    Resistant,
}

/// <summary>
/// What a season is computed with. Every convention that sources disagree on is a setting with a name; the first of its accepted values is what the project
/// holds for the printed one.
/// </summary>
public sealed record WeatherSettings
{
    /// <summary>The settings that stand in words: name, accepted values, the default first.</summary>
    public static ImmutableArray<Convention> Conventions { get; } =
    [
        new("severity-wallin.edges", ["celsius", "fahrenheit"]),
        new("severity-wallin.humidity", ["90", "80"]),
        new("severity-wallin.hours", ["period", "day"]),
        new("rain-favorable-hyre.ten-days", ["consecutive", "accumulated"]),
        new("beaumont.limits", ["inclusive", "strict"]),
        new("smith.hours", ["11-and-11", "10-then-11"]),
        new("smith.humidity", ["at-least-90", "above-90"]),
        new("irish-bourke.wetting", ["any-hour", "hours-7-to-15"]),
        new("blight-units-fry.hours", ["day", "period"]),
        new("early-blight-madden.temperature", ["midrange", "mean"]),
        new("physiological-days.points", ["celsius", "fahrenheit"]),
        new("infection-magarey.at-d50", ["joined", "apart"]),
        new("wetness.way", ["humidity", "depression", "tree"]),
    ];

    /// <summary>The clock hour of standard time that opens a day, 0 to 23.</summary>
    public int DayStarts { get; init; }

    /// <summary>The first day that is shown and that sums count from; null for the record's first.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last day that is shown; null for the record's last.</summary>
    public DateOnly? To { get; init; }

    /// <summary>The cultivar's class; null where it was not said.</summary>
    public CultivarClass? Cultivar { get; init; }

    /// <summary>Days on which chlorothalonil was sprayed, in order.</summary>
    public ImmutableArray<DateOnly> Sprayed { get; init; } = [];

    /// <summary>The parameters of a pathogen that the user supplied; null where none were.</summary>
    public PathogenSet? Pathogen { get; init; }

    /// <summary>The longest gap that was asked to be filled, hours; 0 for none.</summary>
    public int FillHours { get; init; }

    /// <summary>The conventions that were chosen other than the default.</summary>
    public ImmutableDictionary<string, string> Chosen { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The value of a convention.</summary>
    public string Value(string convention) => Chosen.GetValueOrDefault(convention) ?? Conventions.First(one => one.Name == convention).Accepted[0];

    /// <summary>Whether a convention stands other than by default.</summary>
    public bool Is(string convention, string value) => Value(convention) == value;

    /// <summary>Everything that the results depend on, name and value, in a fixed order.</summary>
    public IEnumerable<KeyValuePair<string, string>> Named()
    {
        yield return new("day-starts", Invariant($"{DayStarts:00}:00"));
        yield return new("fill", Invariant($"{FillHours}"));
        if (Cultivar is { } cultivar) yield return new("cultivar", cultivar.Word());
        if (Sprayed.Length > 0) yield return new("sprayed", string.Join(' ', Sprayed.Select(day => Invariant($"{day:yyyy-MM-dd}"))));
        if (Pathogen is { } pathogen) yield return new("pathogen", pathogen.Name);
        foreach (var convention in Conventions) yield return new(convention.Name, Value(convention.Name));
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A convention that sources disagree on.</summary>
/// <param name="Name">Its name, with the model's id before the dot.</param>
/// <param name="Accepted">What it may be set to; the default first.</param>
public sealed record Convention(string Name, ImmutableArray<string> Accepted);

/// <summary>The words of the cultivar classes.</summary>
public static class CultivarWords
{
    /// <summary>The word of a class.</summary>
    public static string Word(this CultivarClass cultivar) => cultivar switch
    {
        CultivarClass.Susceptible => "susceptible",
        CultivarClass.Moderate => "moderate",
        _ => "resistant",
    };
}
