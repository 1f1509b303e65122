using System.Collections.Immutable;
using System.Text;
using Abaxial.Samples;
using Abaxial.Weighing;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>Answers what samples are asked for: one question for lists and search on every kind of database (docs/decisions/0017).</summary>
public static class SampleSearch
{
    /// <summary>People of one name whose samples are looked for besides what holds the name as a word.</summary>
    private const int MostPeople = 50;

    /// <summary>A page of samples.</summary>
    /// <exception cref="ArgumentException">The page is longer than <see cref="SampleQuery.MostPerPage"/> or has none, there are too many areas, or the cursor is one of the other order.</exception>
    public static async Task<SamplePage> PageAsync(this LedgerContext context, SampleQuery query, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(query);
        if (query.Limit is < 1 or > SampleQuery.MostPerPage) throw new ArgumentException($"A page of {query.Limit}; accepted: 1 to {SampleQuery.MostPerPage}.", nameof(query));
        if (query.Scope is { Areas.Length: > 50 } scope) throw new ArgumentException($"{scope.Areas.Length} areas; accepted: at most 50.", nameof(query));
        if (query.After is { } after && after.Waiting is null == query.ByWaiting) throw new ArgumentException("The cursor is of a list in another order.", nameof(query));
        if (query.ByWaiting && query.Open is false) return new SamplePage([], null); // nobody waits for a closed one
        if (Values(query).Any(value => !CanBeStored(value))) return new SamplePage([], null);
        var terms = await TermsOfAsync(context, query, cancel);
        if (terms is null) return new SamplePage([], null);

        var sql = new SampleSql(context.Database.IsNpgsql(), terms.Value, query);
        sql.Narrow();
        var rows = await context.Samples.FromSqlRaw(sql.Text(), [.. sql.Values]).AsNoTracking().ToListAsync(cancel);
        bool isMore = rows.Count > query.Limit;
        if (isMore) rows.RemoveAt(query.Limit);
        return new SamplePage([.. rows], isMore ? new SampleCursor(rows[^1].Key, query.ByWaiting ? rows[^1].Waiting : null) : null);
    }

    private static IEnumerable<string> Values(SampleQuery query) => new[] { query.With, query.Host, query.Submitter, query.Scope?.Person }.OfType<string>().Concat(query.Scope?.Areas ?? []);

    /// <summary>Whether a text can be in a database at all: PostgreSQL takes no zero, and none takes half of a surrogate pair.</summary>
    private static bool CanBeStored(string value) => !value.Contains('\0', StringComparison.Ordinal) && !value.EnumerateRunes().Contains(Rune.ReplacementChar);

    /// <summary>What has to be there; null where something that is asked for is nowhere.</summary>
    private static async Task<ImmutableArray<SearchTerm>?> TermsOfAsync(LedgerContext context, SampleQuery query, CancellationToken cancel)
    {
        var terms = ImmutableArray.CreateBuilder<SearchTerm>();
        if (query.Open is true || query.ByWaiting) terms.Add(SearchTerm.Exactly(Facets.Open));
        if (query.Standing is { } standing) terms.Add(SearchTerm.Exactly(Facets.Standing(standing.Word())));
        if (query.With is { } with) terms.Add(SearchTerm.Exactly(Facets.With(with)));
        if (query.Host is { } host) terms.Add(SearchTerm.Exactly(Facets.Host(host)));
        if (query.Submitter is { } submitter) terms.Add(SearchTerm.Exactly(Facets.Own(submitter)));
        if (query.Scope is { } scope) terms.Add(SearchTerm.Exactly([Facets.Own(scope.Person), .. scope.Areas.Select(Facets.Area)]));
        if (string.IsNullOrWhiteSpace(query.Text)) return terms.ToImmutable();
        var words = SearchWords.OfQuery(query.Text, SampleQuery.MostWords);
        if (words.IsEmpty) return null;
        foreach (string word in words)
        {
            var people = await context.PersonWords.Where(row => row.Word.StartsWith(word)).Select(row => row.Person).Distinct().Order().Take(MostPeople).ToListAsync(cancel);
            var term = await WordIndex.TermAsync(context, word, people.SelectMany(person => SearchWords.OfQuery(person, 1)), cancel);
            if (term.IsNothing) return null;
            terms.Add(term);
        }

        return terms.ToImmutable();
    }
}
