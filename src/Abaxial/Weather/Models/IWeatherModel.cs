using System.Collections.Immutable;

namespace Abaxial.Weather.Models;

/// <summary>A published rule that says something of each day.</summary>
public interface IWeatherModel
{
    /// <summary>Its id, as commands and answers write it.</summary>
    string Id { get; }

    /// <summary>Where it comes from, how sure its numbers are, and what its values mean.</summary>
    ModelCard Card { get; }

    /// <summary>The hourly columns that it reads.</summary>
    ImmutableArray<Column> Needs { get; }

    /// <summary>Whether a daily record (lowest and highest temperature, rain) will do.</summary>
    bool ReadsDaily { get; }

    /// <summary>What the settings lack that it cannot do without: <c>cultivar</c>, <c>pathogen</c>; null where nothing is.</summary>
    string? LacksOf(WeatherSettings settings);

    /// <summary>Its value for every day of the record, in order.</summary>
    ImmutableArray<ModelDay> Days(ModelInput input);
}

/// <summary>What a model says of a day.</summary>
/// <param name="Day">The day.</param>
/// <param name="Value">The value; null where the day cannot be told.</param>
/// <param name="Inputs">What it rests on.</param>
public sealed record ModelDay(DateOnly Day, double? Value, DayInputs Inputs)
{
    /// <summary>What the day adds to the season's running total where that is not the value itself.</summary>
    public double? Added { get; init; }

    /// <summary>The band of the value, where the model has one.</summary>
    public (double Low, double High)? Band { get; init; }

    /// <summary>Why there is no value, or what to keep in mind with it.</summary>
    public ImmutableArray<DayNote> Notes { get; init; } = [];
}

/// <summary>The hours that a day's value rests on.</summary>
/// <param name="Hours">Hours with every value that the model reads.</param>
/// <param name="Estimated">How many of these hours have an estimate among their values.</param>
/// <param name="Missing">Hours that lack a value.</param>
public readonly record struct DayInputs(int Hours, int Estimated, int Missing);

/// <summary>A remark on a day: the key of a sentence and what stands in its places.</summary>
/// <param name="Key">The last part of the sentence's key.</param>
/// <param name="Values">What is filled in.</param>
public sealed record DayNote(string Key, ImmutableArray<string> Values)
{
    /// <summary>A remark with whole numbers.</summary>
    public static DayNote Of(string key, params ReadOnlySpan<int> numbers)
    {
        var values = ImmutableArray.CreateBuilder<string>(numbers.Length);
        foreach (int number in numbers) values.Add(number.ToString(System.Globalization.CultureInfo.InvariantCulture));
        return new DayNote(key, values.ToImmutable());
    }
}
