using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// Works out the worth of every look not yet made, in every way it can be made: what it would save of the expected loss, less its cost. One look ahead.
/// Measured characters are not offered: their readings are not a handful of outcomes.
/// </summary>
internal sealed class NextLookSearch
{
    private const int Offered = 10;

    private readonly Posterior posterior;
    private readonly Hypotheses hypotheses;
    private readonly KnowledgeBase knowledge;
    private readonly ReadingModel model;
    private readonly Losses losses;
    private readonly Advice today;
    private readonly int leading;
    private readonly int[] active;
    private readonly double[] mass;
    private readonly double[] ones;
    private readonly OutcomeSums sums;
    private readonly string? onlyOrgan;

    public NextLookSearch(Posterior posterior, ActiveHypotheses kept, ReadingModel model, Losses losses, Advice today, int leading)
    {
        this.posterior = posterior;
        this.model = model;
        this.losses = losses;
        this.today = today;
        this.leading = leading;
        hypotheses = posterior.Hypotheses;
        knowledge = hypotheses.Table.Knowledge;
        onlyOrgan = OrganBlocks.OnlyOrgan(posterior.Readings.Weighed, knowledge.Document.OnlyOrgan);
        sums = new OutcomeSums(hypotheses.CauseCount);
        active = kept.Numbers;
        mass = kept.Mass;
        ones = new double[hypotheses.Count];
        ones.AsSpan().Fill(1);
    }

    /// <summary>The looks worth most, best first, ties by character, then way; with those held back because they would multiply a regulated organism.</summary>
    public (ImmutableArray<NextLook> Looks, ImmutableArray<Character> HeldBack) Run(ReadOnlySpan<double> marginals)
    {
        bool hold = false;
        for (int cause = 0; cause < marginals.Length; cause++) hold |= hypotheses.Table.Causes[cause].Regulated && marginals[cause] >= knowledge.Document.Regulated.Chance;
        var found = new List<NextLook>();
        var heldBack = ImmutableArray.CreateBuilder<Character>();
        foreach (var character in knowledge.Characters.Where(CanBeMade))
        {
            if (hold && knowledge.Document.Regulated.HeldBack.Contains(character.Id, StringComparer.Ordinal))
            {
                heldBack.Add(character);
                continue;
            }

            foreach (var way in character.Ways.Where(way => !IsMade(character, way))) found.Add(Weigh(character, way));
        }

        var best = found.OrderByDescending(look => look.Worth).ThenBy(look => look.Character.Id, StringComparer.Ordinal).ThenBy(look => look.How.Word(), StringComparer.Ordinal);
        return ([.. best.Take(Offered)], heldBack.ToImmutable());
    }

    private bool CanBeMade(Character character)
    {
        if (character.IsMeasured || !character.AppliesTo(hypotheses.Table.Host)) return false;
        bool hasOneOrgan = onlyOrgan is not null;
        if (hasOneOrgan && character.Id == CaseReadings.OrgansAffected) return false;
        var looks = posterior.Readings.Counted;
        if (character.WhenParent is { } parent && !looks.Exists(look => look.Look.Character == parent && look.Look.States.Any(state => character.WhenStates.Contains(state)))) return false;
        if (character.Organ is null) return true;
        var block = posterior.Blocks.Find(other => other.Organ == character.Organ);
        if (block is null) return false;
        if (block.IsAffected) return true;
        bool isElsewhere = hasOneOrgan && onlyOrgan != character.Organ;
        bool isNotYet = posterior.Readings.Weighed.Stage is { } stage && knowledge.Document.NotYet.GetValueOrDefault(stage)?.Contains(character.Organ) == true;
        return !isElsewhere && !isNotYet && character.EmptyState >= 0; // of an organ not known to be ill, only whether it is
    }

    private bool IsMade(Character character, Way way) => posterior.Readings.Counted.Exists(
        look => look.Look.Character == character && look.Look.How == way && (way == Way.Asked || look.Look.By >= Observer.Diagnostician));

    private Question QuestionOf(Character character)
    {
        if (character.Facets.IsEmpty) return hypotheses.Table.Find(character);
        string? from = null;
        foreach (var (organ, facet) in new[] { ("tuber", "tuber-ring"), ("leaf", "leaf-spot"), ("stem", "stem-vascular") })
        {
            if (posterior.Blocks.Exists(block => block.Organ == organ && block.IsAffected) && character.Facets.Contains(facet)) from = facet;
        }

        return hypotheses.Table.Find(character, from);
    }

    private NextLook Weigh(Character character, Way way)
    {
        var question = QuestionOf(character);
        var before = posterior.Readings.Find(character.Id)?.Readings.Find(readings => readings.Question == question);
        Surface? surface = character.Surfaces.IsEmpty ? null : way == Way.MoistChamber ? Surface.MoistChamber : Surface.DryDay;
        var prediction = new Prediction(question, way, surface, before, posterior.Readings, model);
        int outcomes = prediction.Outcomes.Length;
        var sums = Accumulate(prediction, question, outcomes);

        double worth = 0;
        var list = ImmutableArray.CreateBuilder<Outcome>(outcomes);
        for (int r = 0; r < outcomes; r++)
        {
            if (sums.All[r] <= 0) continue;
            var byCause = sums.Of(r);
            double best = 0;
            foreach (double share in byCause) best = Math.Max(best, share);
            var then = new Masses(sums.All[r], sums.Subject[r], best);
            double kept = losses.Of(today, then with { Leading = byCause[leading] });
            worth += Math.Max(0, kept - Math.Min(losses.Act(then), Math.Min(losses.Advise(then), losses.SendOn(then))));
            list.Add(new Outcome(prediction.Outcomes[r], then.All, then.Subject / then.All));
        }

        double wait = way == Way.MoistChamber ? Math.Max(24, character.WaitHours) : character.WaitHours;
        var costs = knowledge.Document.Costs;
        double cost = (character.Minutes * costs.Minute) + (wait * costs.WaitHour) + costs.Ways.GetValueOrDefault(way.Word()) + costs.Characters.GetValueOrDefault(character.Id);
        return new NextLook(character, way, worth - cost, character.Minutes, wait, [.. list.OrderByDescending(outcome => outcome.Chance).ThenBy(outcome => character.States[outcome.State], StringComparer.Ordinal)]);
    }

    /// <summary>Sums the chances of the outcomes over the hypotheses.</summary>
    private OutcomeSums Accumulate(Prediction prediction, Question question, int outcomes)
    {
        sums.Start(outcomes);
        Span<double> sound = stackalloc double[outcomes];
        if (prediction.HasEmpty) prediction.OfSound(sound);
        var block = posterior.Blocks.Find(other => other.Organ == question.Character.Organ);
        Span<double> chances = stackalloc double[outcomes];
        Span<double> both = stackalloc double[outcomes];
        for (int i = 0; i < active.Length; i++)
        {
            int h = active[i], a = hypotheses.First[h], b = hypotheses.Second[h];
            if (block is null && a != b) prediction.Of(a, b, chances);
            else if (block is null) sums.Alone(prediction, a).CopyTo(chances);
            else Mix(prediction, block, h, sound, chances, both);
            sums.Add(chances, mass[i], a, b, hypotheses.Holds(h, hypotheses.Subject));
        }

        return sums;
    }

    /// <summary>Over which of the causes attack the organ, as the case has it so far.</summary>
    private void Mix(Prediction prediction, OrganBlock block, int h, ReadOnlySpan<double> sound, Span<double> chances, Span<double> both)
    {
        int a = hypotheses.First[h], b = hypotheses.Second[h], outcomes = chances.Length;
        double ga = block.Attacks[a];
        var looks = block.Says ? posterior.LooksAt(block) : ones;
        var ofA = sums.Alone(prediction, a);
        double none = (1 - ga) * block.ReportedIfNot * block.LooksIfNot;
        if (a == b)
        {
            double some = ga * block.ReportedIfSo * looks[h];
            if (!prediction.HasEmpty) none = 0;
            for (int r = 0; r < outcomes; r++) chances[r] = ((none * sound[r]) + (some * ofA[r])) / (none + some);
            return;
        }

        double gb = block.Attacks[b];
        var ofB = sums.Alone(prediction, b);
        prediction.Of(a, b, both);
        none *= 1 - gb;
        if (!prediction.HasEmpty) none = 0;
        double onlyA = block.ReportedIfSo * ga * (1 - gb) * looks[a], onlyB = block.ReportedIfSo * (1 - ga) * gb * looks[b], together = block.ReportedIfSo * ga * gb * looks[h];
        double sum = none + onlyA + onlyB + together;
        for (int r = 0; r < outcomes; r++) chances[r] = ((none * sound[r]) + (onlyA * ofA[r]) + (onlyB * ofB[r]) + (together * both[r])) / sum;
    }
}
