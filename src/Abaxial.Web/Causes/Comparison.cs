using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Web.Causes;

/// <summary>A look at which causes are compared.</summary>
/// <param name="Question">What is looked at.</param>
/// <param name="Decibans">What it is expected to say between the two causes that it tells apart best.</param>
public sealed record ComparedLook(Question Question, double Decibans);

/// <summary>Causes of one host side by side: what tells them apart first, then what they share.</summary>
/// <param name="Table">The tables of the host.</param>
/// <param name="Causes">The causes, in the order asked for.</param>
/// <param name="Differences">Looks that tell some two of them apart, the best first.</param>
/// <param name="Alike">Looks at which at least two of them say something, and much the same.</param>
public sealed record Comparison(HostTable Table, ImmutableArray<Cause> Causes, ImmutableArray<ComparedLook> Differences, ImmutableArray<ComparedLook> Alike)
{
    /// <summary>In decibans: a look that says less moves the odds by less than a quarter.</summary>
    public const double Noticeable = 1;

    /// <summary>Compares two or more causes that all live on the host of a table.</summary>
    public static Comparison Of(HostTable table, ImmutableArray<Cause> causes)
    {
        ArgumentNullException.ThrowIfNull(table);
        int[] places = [.. causes.Select(table.IndexOf)];
        var looks = table.Questions
            .Where(question => places.Count(place => question.Rows[place] is not null) > 1 || (question.Facet is null && places.Any(place => question.Rows[place] is not null)))
            .Select(question => new ComparedLook(question, Most(table, question, places)))
            .OrderByDescending(look => look.Decibans)
            .ToList();
        return new Comparison(
            table,
            causes,
            [.. looks.Where(look => look.Decibans >= Noticeable)],
            [.. looks.Where(look => look.Decibans < Noticeable && places.Count(place => look.Question.Rows[place] is not null) > 1)]);
    }

    private static double Most(HostTable table, Question question, int[] places)
    {
        double most = 0;
        for (int one = 0; one < places.Length; one++)
        {
            for (int other = one + 1; other < places.Length; other++) most = Math.Max(most, Separation.Between(table, question, places[one], places[other]));
        }

        return most;
    }
}
