using System.Globalization;
using Abaxial.Weighing;

namespace Abaxial.Data.Search;

/// <summary>The question to the database. What people wrote is in values, never in the text; what has to be found by words is led by the words, whose order is the list's own.</summary>
/// <param name="expression">What the words are asked for; empty where all samples are walked.</param>
internal sealed class SampleSql(string expression)
{
    private readonly List<string> conditions = [];

    /// <summary>What stands at {0}, {1} and so on in the text.</summary>
    public List<object> Values { get; } = [];

    private bool IsByWords => expression.Length > 0;

    /// <summary>Takes the columns that narrow: they decide, whatever the words let through.</summary>
    public void Narrow(SampleQuery query)
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
    public string Text(SampleQuery query)
    {
        string key = IsByWords ? "sample_words.rowid" : "s.\"Key\"";
        if (IsByWords) conditions.Insert(0, $"sample_words MATCH {Value(expression)}");
        if (query.After is { } after) conditions.Add(after.Waiting is { } cost ? $"(s.\"Waiting\", s.\"Key\") < ({Value(cost)}, {Value(after.Key)})" : $"{key} < {Value(after.Key)}");
        string from = IsByWords ? "sample_words CROSS JOIN samples AS s" : "samples AS s";
        if (IsByWords) conditions.Insert(0, "s.\"Key\" = sample_words.rowid");
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
