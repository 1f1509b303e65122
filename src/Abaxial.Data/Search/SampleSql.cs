using System.Collections.Immutable;
using System.Globalization;
using Abaxial.Weighing;

namespace Abaxial.Data.Search;

/// <summary>The question to the database. What people wrote is in values, never in the text; what has to be found by words is led by the words, whose order is the list's own.</summary>
/// <param name="isPostgres">For PostgreSQL; otherwise for SQLite.</param>
/// <param name="terms">What the words are asked for. Without any, and where all open samples are asked for by the cost of waiting, for which there is an index, the rows are walked.</param>
/// <param name="query">The question.</param>
internal sealed class SampleSql(bool isPostgres, ImmutableArray<SearchTerm> terms, SampleQuery query)
{
    private readonly List<string> conditions = [];

    /// <summary>What stands at {0}, {1} and so on in the text.</summary>
    public List<object> Values { get; } = [];

    private bool IsByWords { get; } = terms.Length > (query.ByWaiting ? 1 : 0);

    /// <summary>Takes the columns that narrow: they decide, whatever the words let through.</summary>
    public void Narrow()
    {
        if (query.ByWaiting || query.Open is true) conditions.Add("s.\"IsOpen\" = TRUE");
        else if (query.Open is false) conditions.Add("s.\"IsOpen\" = FALSE");
        if (query.Standing is { } standing) conditions.Add($"s.\"Standing\" = {Value(standing.Word())}");
        if (query.With is { } with) conditions.Add($"s.\"With\" = {Value(with)}");
        if (query.Host is { } host) conditions.Add($"s.\"Host\" = {Value(host)}");
        if (query.Submitter is { } submitter) conditions.Add($"s.\"Submitter\" = {Value(submitter)}");
        if (query.Scope is not { } scope) return;
        string own = $"s.\"Submitter\" = {Value(scope.Person)} OR s.\"TakenBy\" = {Value(scope.Person)}";
        conditions.Add(scope.Areas.IsEmpty ? $"({own})" : $"({own} OR s.\"Area\" IN ({string.Join(", ", scope.Areas.Select(Value))}))");
    }

    /// <summary>The whole text; asks for one sample more than the page has, to see whether there is a next page.</summary>
    public string Text()
    {
        string key = !IsByWords ? "s.\"Key\"" : isPostgres ? "w.\"Key\"" : "sample_words.rowid";
        if (IsByWords) conditions.Insert(0, isPostgres ? $"w.\"Words\" @@ {Value(SearchTerm.ToPostgres(terms))}::tsquery" : $"sample_words MATCH {Value(SearchTerm.ToSqlite(terms))}");
        if (query.After is { } after) conditions.Add(after.Waiting is { } cost ? $"(s.\"Waiting\", s.\"Key\") < ({Value(cost)}, {Value(after.Key)})" : $"{key} < {Value(after.Key)}");
        string from = !IsByWords ? "samples AS s" : isPostgres ? "sample_words AS w JOIN samples AS s ON s.\"Key\" = w.\"Key\"" : "sample_words CROSS JOIN samples AS s";
        if (IsByWords && !isPostgres) conditions.Insert(0, "s.\"Key\" = sample_words.rowid"); // a cross join, which SQLite leaves in this order
        string where = conditions.Count == 0 ? "" : $"\nWHERE {string.Join("\n  AND ", conditions)}";
        string order = query.ByWaiting ? "s.\"Waiting\" DESC, s.\"Key\" DESC" : $"{key} DESC";
        return $"SELECT s.* FROM {from}{where}\nORDER BY {order}\nLIMIT {Value(query.Limit + 1)}";
    }

    private string Value(object value)
    {
        Values.Add(value);
        return string.Create(CultureInfo.InvariantCulture, $"{{{Values.Count - 1}}}");
    }
}
