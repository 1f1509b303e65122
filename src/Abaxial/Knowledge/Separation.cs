using Abaxial.Statistics;

namespace Abaxial.Knowledge;

/// <summary>How well one look can tell two causes apart.</summary>
/// <param name="One">A cause.</param>
/// <param name="Other">Another cause of the same host.</param>
/// <param name="Best">The look that tells them apart best, with its facet; null where they share no table.</param>
/// <param name="Decibans">What that look is expected to say.</param>
public sealed record PairSeparation(Cause One, Cause Other, Question? Best, double Decibans);

/// <summary>
/// The expected weight of evidence of a look between two causes, in decibans: ten times the base-10 logarithm of the odds that one reading moves, averaged over
/// what the look would show where the one cause is there and where the other is (half the sum of the two Kullback-Leibler divergences; Good 1950 calls it the expected
/// weight of evidence). The look is read without error, in good conditions, with the weight of its redundancy group; it counts only as often as it can be made: as often as
/// the cause attacks that organ, shows the parent's state, or shows that kind of spore.
/// </summary>
public static class Separation
{
    /// <summary>In decibans: under this, no single look moves the odds between two causes threefold on average. They are hard to tell apart.</summary>
    public const double Poor = 5;

    private const int SporesMeasured = 5;
    private const double NatsToDecibans = 4.342944819032518;

    /// <summary>All pairs of causes of a host whose best look says less than a number of decibans, worst first, ties by id.</summary>
    public static IEnumerable<PairSeparation> Poorest(HostTable table, double below = Poor)
    {
        ArgumentNullException.ThrowIfNull(table);
        var pairs = new List<PairSeparation>();
        for (int one = 0; one < table.Causes.Length; one++)
        {
            for (int other = one + 1; other < table.Causes.Length; other++)
            {
                var pair = Of(table, one, other);
                if (pair.Decibans < below) pairs.Add(pair);
            }
        }

        return pairs.OrderBy(pair => pair.Decibans).ThenBy(pair => pair.One.Id, StringComparer.Ordinal).ThenBy(pair => pair.Other.Id, StringComparer.Ordinal);
    }

    /// <summary>The other causes of a host, those hardest to tell from one first; ties by id.</summary>
    /// <param name="table">The tables of one host.</param>
    /// <param name="one">The place of a cause in the table.</param>
    public static IEnumerable<PairSeparation> Nearest(HostTable table, int one)
    {
        ArgumentNullException.ThrowIfNull(table);
        return Enumerable.Range(0, table.Causes.Length).Where(other => other != one).Select(other => Of(table, one, other)).OrderBy(pair => pair.Decibans).ThenBy(pair => pair.Other.Id, StringComparer.Ordinal);
    }

    /// <summary>
    /// The other causes of a host, those that look most like one first: by all that the naked eye and a hand lens are expected to say together, taken as independent. Each with
    /// the best such look. Ties by id.
    /// </summary>
    /// <param name="table">The tables of one host.</param>
    /// <param name="one">The place of a cause in the table.</param>
    public static IEnumerable<PairSeparation> NearestByEye(HostTable table, int one)
    {
        ArgumentNullException.ThrowIfNull(table);
        Question[] seen = [.. table.Questions.Where(question => question.Character.Accepts(Way.NakedEye) || question.Character.Accepts(Way.HandLens))];
        return Enumerable.Range(0, table.Causes.Length).Where(other => other != one)
            .Select(other => (Other: other, Looks: seen.Select(question => (Question: question, Decibans: Between(table, question, one, other))).Where(look => look.Decibans > 0).ToList()))
            .OrderBy(pair => pair.Looks.Sum(look => look.Decibans)).ThenBy(pair => table.Causes[pair.Other].Id, StringComparer.Ordinal)
            .Select(pair => (pair.Other, Best: pair.Looks.OrderByDescending(look => look.Decibans).FirstOrDefault()))
            .Select(pair => new PairSeparation(table.Causes[one], table.Causes[pair.Other], pair.Best.Question, pair.Best.Decibans));
    }

    /// <summary>The looks of a host, those that tell two causes apart best first, each with what it is expected to say in decibans.</summary>
    /// <param name="table">The tables of one host.</param>
    /// <param name="one">The place of a cause in the table.</param>
    /// <param name="other">The place of the other.</param>
    public static IEnumerable<(Question Question, double Decibans)> Looks(HostTable table, int one, int other)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table.Questions.Select(question => (Question: question, Decibans: Between(table, question, one, other))).OrderByDescending(look => look.Decibans);
    }

    /// <summary>The look that tells two causes of a table apart best.</summary>
    /// <param name="table">The tables of one host.</param>
    /// <param name="one">The place of a cause in the table.</param>
    /// <param name="other">The place of the other.</param>
    public static PairSeparation Of(HostTable table, int one, int other)
    {
        ArgumentNullException.ThrowIfNull(table);
        Question? best = null;
        double most = 0;
        foreach (var question in table.Questions)
        {
            double decibans = Between(table, question, one, other);
            if (decibans <= most) continue;
            best = question;
            most = decibans;
        }

        return new PairSeparation(table.Causes[one], table.Causes[other], best, most);
    }

    /// <summary>What one look is expected to say between two causes, in decibans, never negative.</summary>
    public static double Between(HostTable table, Question question, int one, int other)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(question);
        double there = Possible(table, question, one), back = Possible(table, question, other);
        if (question.Character.IsMeasured) return NatsToDecibans * Measured(question, one, other) * Math.Min(there, back);
        return NatsToDecibans * 0.5 * ((there * Divergence(question, one, other)) + (back * Divergence(question, other, one)));
    }

    private static double Divergence(Question question, int from, int to)
    {
        double sum = 0;
        for (int state = 0; state < question.StateCount; state++)
        {
            double p = question.Chance(from, state), q = question.Chance(to, state);
            if (question.Character.IsMany && state == question.Character.EmptyState) continue; // follows from the others
            if (p <= 0 || q <= 0) continue;
            sum += p * PlainMath.Log(p / q);
            if (question.Character.IsMany) sum += (1 - p) * PlainMath.Log((1 - p) / (1 - q));
        }

        return Math.Max(0, sum);
    }

    /// <summary>Two normals with a shared variance: of collections' means, and of as many spores as are usually measured.</summary>
    private static double Measured(Question question, int one, int other)
    {
        if (question.Ranges[one] is not { } a || question.Ranges[other] is not { } b) return 0;
        double apart = a.Mean - b.Mean;
        double variance = 0.5 * ((a.Between * a.Between) + (b.Between * b.Between) + (((a.Within * a.Within) + (b.Within * b.Within)) / SporesMeasured));
        return 0.5 * apart * apart / variance * question.Character.GroupWeight;
    }

    /// <summary>How often the look can be made where a cause is there.</summary>
    private static double Possible(HostTable table, Question question, int cause)
    {
        var character = question.Character;
        double possible = 1;
        if (character.Organ is { } organ)
        {
            var organs = table.Find(table.Knowledge.FindCharacter("organs-affected")!);
            possible *= organs.Chance(cause, organs.Character.StateIndex(organ));
        }

        if (character.WhenParent is { } parent) possible *= AnyOf(table.Find(parent), cause, character.WhenStates);
        if (character.IsMeasured && character.OfCharacter is { } kinds)
        {
            var spores = table.Find(kinds);
            possible *= spores.Chance(cause, kinds.StateIndex(question.Facet ?? character.OfOnly!));
        }

        return possible;
    }

    private static double AnyOf(Question parent, int cause, IEnumerable<int> states)
    {
        if (!parent.Character.IsMany) return states.Sum(state => parent.Chance(cause, state));
        double none = 1;
        foreach (int state in states) none *= 1 - parent.Chance(cause, state);
        return 1 - none;
    }
}
