using Abaxial.Samples;

namespace Abaxial.Data.Search;

/// <summary>
/// What lists are narrowed by, as words beside those of a sample's texts, so that a rare person and a common word are found together at once. They only narrow: the columns of the row
/// decide. Each begins with a sign for private use, which no word of a text holds.
/// </summary>
internal static class Facets
{
    public const string Open = "\uE000o";

    public static string Host(string host) => "\uE000h" + Plain(host);

    public static string Standing(string standing) => "\uE000s" + Plain(standing);

    public static string With(string person) => "\uE000w" + Plain(person);

    /// <summary>Who sent the sample or took it in.</summary>
    public static string Own(string person) => "\uE000p" + Plain(person);

    public static string Area(string name) => "\uE000a" + Plain(name);

    public static IEnumerable<string> Of(SampleSummary summary)
    {
        if (summary.IsOpen) yield return Open;
        if (summary.Host is { } host) yield return Host(host);
        if (summary.Standing is { } standing) yield return Standing(Weighing.AnswerWords.Word(standing));
        if (summary.With is { } with) yield return With(with);
        if (summary.Submitter is { } submitter) yield return Own(submitter);
        if (summary.TakenBy is { } by && by != summary.Submitter) yield return Own(by);
        if (summary.Area is { } area) yield return Area(area);
    }

    /// <summary>Letters and digits stay, everything else is one sign for private use; what is long is cut.</summary>
    private static string Plain(string value) => string.Concat(value.Take(64).Select(letter => char.IsAsciiLetterOrDigit(letter) ? char.ToLowerInvariant(letter) : '\uE001'));
}
