using System.Collections.Immutable;

namespace Abaxial.Data.Search;

/// <summary>One thing that has to be there: any of the words, or a word with any of the beginnings. They hold letters, digits and signs for private use only.</summary>
internal sealed record SearchTerm(ImmutableArray<string> Words, ImmutableArray<string> Beginnings)
{
    public bool IsNothing => Words.IsEmpty && Beginnings.IsEmpty;

    public static SearchTerm Exactly(params ReadOnlySpan<string> words) => new([.. words], []);

    /// <summary>All of the terms, as FTS5 is asked.</summary>
    public static string ToSqlite(IEnumerable<SearchTerm> terms) => Join(terms, " AND ", " OR ", word => $"\"{word}\"", beginning => $"\"{beginning}\" *");

    /// <summary>All of the terms, as a <c>tsquery</c>.</summary>
    public static string ToPostgres(IEnumerable<SearchTerm> terms) => Join(terms, " & ", " | ", word => $"'{word}'", beginning => $"'{beginning}':*");

    private static string Join(IEnumerable<SearchTerm> terms, string and, string or, Func<string, string> word, Func<string, string> beginning) =>
        string.Join(and, terms.Select(term => $"({string.Join(or, term.Words.Select(word).Concat(term.Beginnings.Select(beginning)))})"));
}
