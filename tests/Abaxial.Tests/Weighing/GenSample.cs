using System.Collections.Immutable;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>
/// Generates cases as they come to a clinic: some cause or two are there, most looks see what those show, several people look at the same thing, growth is looked for
/// with surfaces and hours, some looks are nonsense.
/// </summary>
internal static class GenSample
{
    private static readonly KnowledgeBase Knowledge = CaseText.Knowledge;

    private static readonly ImmutableDictionary<string, HostTable> Tables = Knowledge.Document.Hosts.ToImmutableDictionary(host => host, host => new HostTable(Knowledge, host));

    private static readonly string[] Showing = ["leaf-underside-growth", "stem-growth", "fruit-growth", "tuber-growth", "pcr-p-infestans", "culture", "spores-seen"];

    private static readonly double?[] Chambers = [null, 6, 24, 30, 48, 72, 96];

    public static Gen<Case> Any { get; } = Gen.OneOf(GenCase.Of(10), Gen.Int[0, int.MaxValue - 1].Select(seed => Build(new Random(seed))));

    /// <summary>Holds a law against so many cases; the one that breaks it is printed as a case file.</summary>
    public static void Holds(this Gen<Case> cases, int count, Action<Case> law) => cases.Sample(law, iter: count, print: weighed => Encoding.UTF8.GetString(CaseWriter.ToUtf8(weighed)));

    /// <summary>A case that a seed decides.</summary>
    public static Case Build(Random random)
    {
        string host = Pick(random, Knowledge.Document.Hosts);
        var table = Tables[host];
        int[] causes = [.. Enumerable.Range(0, random.Next(1, 3)).Select(_ => random.Next(3) == 0 ? table.IndexOf(Knowledge.Subject) : random.Next(table.Causes.Length))];
        var looks = ImmutableArray.CreateBuilder<Look>();
        if (random.Next(5) > 0) looks.Add(At(random, host, table.Find(Knowledge.FindCharacter("organs-affected")!), causes));
        for (int left = random.Next(1, 6); left > 0; left--)
        {
            var question = random.Next(3) == 0
                ? table.Questions.Where(one => Showing.Contains(one.Character.Id)).ElementAt(random.Next(table.Questions.Count(one => Showing.Contains(one.Character.Id))))
                : table.Questions[random.Next(table.Questions.Length)];
            for (int people = random.Next(1, 4); people > 0; people--) looks.Add(At(random, host, question, causes));
        }

        return new Case
        {
            Knowledge = Knowledge,
            Host = host,
            System = random.Next(3) == 0 ? null : Pick(random, Knowledge.Document.Systems),
            Stage = random.Next(3) == 0 ? null : Pick(random, Knowledge.Document.Stages),
            Purpose = random.Next(2) == 0 ? null : Pick(random, Knowledge.Document.Purposes),
            Noticed = random.Next(3) == 0 ? null : new DateOnly(2026, random.Next(1, 13), 15),
            Place = random.Next(3) == 0 ? null : new Place((random.NextDouble() * 120) - 60, 10, null),
            PriorFactors = random.Next(3) == 0 ? [new PriorFactor(Knowledge.Subject, 0.2 + (random.NextDouble() * 4), "weather")] : [],
            Looks = looks.ToImmutable(),
        };
    }

    private static Look At(Random random, string host, Question question, int[] causes)
    {
        var character = question.Character;
        Way[] ways = [.. character.Ways, .. Enum.GetValues<Way>().Where(other => character.Accepts(other) && !character.Ways.Contains(other))];
        var way = ways[Math.Min(random.Next(ways.Length), random.Next(ways.Length))];
        Surface? surface = character.Surfaces.IsEmpty ? null : way == Way.MoistChamber ? Surface.MoistChamber : character.Surfaces[random.Next(character.Surfaces.Length)];
        return new Look
        {
            Character = character,
            How = way,
            Facet = question.Facet,
            Surface = surface,
            Hours = surface == Surface.MoistChamber ? Chambers[random.Next(Chambers.Length)] : null,
            By = (Observer)random.Next(4),
            Person = random.Next(2) == 0 ? null : "abc"[random.Next(3)].ToString(),
            Values = character.IsMeasured ? [.. Values(random, question, causes)] : [],
            States = character.IsMeasured ? [] : States(random, host, question, causes),
        };
    }

    private static IEnumerable<double> Values(Random random, Question question, int[] causes)
    {
        var range = question.Ranges[causes[random.Next(causes.Length)]] ?? question.BackgroundRange!;
        return Enumerable.Range(0, random.Next(1, 9)).Select(_ => Math.Max(0.5, range.Mean + ((random.NextDouble() - 0.5) * range.Within)));
    }

    private static ImmutableArray<int> States(Random random, string host, Question question, int[] causes)
    {
        var character = question.Character;
        bool isNonsense = random.Next(8) == 0;
        double Chance(int state) => isNonsense ? 0.3 : causes.Max(cause => question.Chance(cause, state));
        if (character.IsMany)
        {
            ImmutableArray<int> seen = [.. question.States.Where(state => random.NextDouble() < Chance(state))];
            return !seen.IsEmpty ? seen : character.EmptyState >= 0 ? [character.EmptyState] : [question.States[random.Next(question.States.Length)]];
        }

        int[] states = [.. Enumerable.Range(0, character.States.Length).Where(state => character.HasState(state, host))];
        double left = random.NextDouble() * states.Sum(Chance);
        foreach (int state in states)
        {
            left -= Chance(state);
            if (left < 0) return [state];
        }

        return [states[^1]];
    }

    private static string Pick(Random random, string[] from) => from[random.Next(from.Length)];
}
