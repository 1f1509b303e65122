using System.Collections.Immutable;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.Web.Samples;

/// <summary>
/// What the knowledge of the day would refuse in a sample if something were said of it. The ledger keeps whatever a person saw; but who is still there can put a slip right at once.
/// </summary>
internal static class KnowledgeCheck
{
    /// <summary>Problems that were not there before, with their places in the payload.</summary>
    public static ImmutableArray<CaseProblem> Of(SampleView view, Payload payload, string author, KnowledgeBase knowledge)
    {
        if ((payload is Correction { Replacement: { } replacement } ? replacement : payload) is not (LookMade or PriorFactorStated or TakenIn)) return [];
        var id = EntryId.From(DateTimeOffset.UnixEpoch, new byte[10]);
        var supposed = new Entry
        {
            Id = id,
            Sample = view.Sample,
            Author = author,
            Made = view.Timeline.Max(item => item.Entry.Made),
            Device = "supposed",
            Place = 1,
            Previous = Entry.NothingBefore,
            Kind = payload.Kind,
            Version = payload.Version,
            Payload = payload.ToJson(),
            Heads = view.Heads,
        };
        var after = SampleFold.Of(view.Sample, view.Timeline.Select(item => item.Entry).Append(supposed), knowledge);
        var target = payload is Correction correction ? Root(view, correction.Replaces) : id;
        return [.. after.Cases.SelectMany(part => New(part, view, target)).DistinctBy(problem => (problem.At, problem.Found))];
    }

    /// <summary>What the knowledge refuses in plants or lots that are taken in.</summary>
    /// <param name="taken">What is taken in.</param>
    /// <param name="more">What was seen and stated of each, by its number less one.</param>
    /// <param name="knowledge">The knowledge.</param>
    public static ImmutableArray<CaseProblem> Of(TakenIn taken, IReadOnlyList<ImmutableArray<Payload>> more, KnowledgeBase knowledge)
    {
        var problems = ImmutableArray.CreateBuilder<CaseProblem>();
        for (int i = 0; i < Math.Max(1, more.Count); i++)
        {
            var reading = CaseReader.Read(Encoding.UTF8.GetBytes(SampleFold.CaseOf(taken, more.Count == 0 ? [] : more[i])), knowledge);
            foreach (var problem in reading.Problems) problems.Add(problem.At.StartsWith("/looks", StringComparison.Ordinal) || problem.At.StartsWith("/priorFactors", StringComparison.Ordinal) ? problem with { At = $"/cases/{i}{problem.At}" } : problem);
        }

        return [.. problems.DistinctBy(problem => (problem.At, problem.Found)).Take(CaseLimits.Problems)];
    }

    private static IEnumerable<CaseProblem> New(SampleCase part, SampleView before, EntryId target)
    {
        var known = before.Cases.FirstOrDefault(one => one.Number == part.Number)?.Reading.Problems ?? [];
        foreach (var problem in part.Reading.Problems)
        {
            int index = part.Looks.IndexOf(target);
            string own = $"/looks/{index}";
            if (index >= 0 && (problem.At == own || problem.At.StartsWith(own + "/", StringComparison.Ordinal))) yield return problem with { At = "/payload/observation" + problem.At[own.Length..] };
            else if (!known.Any(old => old.At == problem.At && old.Found == problem.Found)) yield return problem with { At = "/payload" + (problem.At.StartsWith("/looks", StringComparison.Ordinal) ? "" : problem.At) };
        }
    }

    /// <summary>The entry that a chain of corrections leads back to.</summary>
    private static EntryId Root(SampleView view, EntryId replaced)
    {
        while (view.Timeline.FirstOrDefault(item => item.Entry.Id == replaced)?.Said is Correction earlier) replaced = earlier.Replaces;
        return replaced;
    }
}
