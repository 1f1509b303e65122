using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Statistics;

namespace Abaxial.Weighing;

/// <summary>What to work out besides the probabilities, and under which prior.</summary>
public sealed record WeighOptions
{
    /// <summary>Every cause as likely as any other before the looks.</summary>
    public bool FlatPrior { get; init; }

    /// <summary>The 80 % bands. Without them low and high are the probability itself, and standings that ask for a band are decided by it.</summary>
    public bool Bands { get; init; } = true;

    /// <summary>The looks to make next. Without them the advice is never to hold.</summary>
    public bool NextLooks { get; init; } = true;
}

/// <summary>
/// Weighs cases: which cause each is likely to be, how sure that is, where late blight stands, and which look to make next. The same case and the same
/// knowledge give the same answer, bit for bit, on every machine. Safe to use from several threads at once.
/// </summary>
public sealed class Weigher
{
    private const string Watering = "watering";

    private readonly KnowledgeBase knowledge;
    private readonly ReadingModel model;
    private readonly ImmutableDictionary<string, (Hypotheses Hypotheses, RowDraws Draws)> hosts;

    public Weigher(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        model = new ReadingModel(knowledge);
        hosts = knowledge.Document.Hosts.ToImmutableDictionary(host => host, host => (new Hypotheses(new HostTable(knowledge, host)), new RowDraws()), StringComparer.Ordinal);
    }

    /// <summary>Weighs one case.</summary>
    /// <exception cref="ArgumentException">The case was read against other knowledge.</exception>
    public Answer Weigh(Case weighed) => Weigh(weighed, new WeighOptions());

    /// <inheritdoc cref="Weigh(Case)"/>
    public Answer Weigh(Case weighed, WeighOptions options)
    {
        ArgumentNullException.ThrowIfNull(weighed);
        ArgumentNullException.ThrowIfNull(options);
        if (weighed.Knowledge != knowledge) throw new ArgumentException("The case was read against other knowledge.", nameof(weighed));

        var (hypotheses, draws) = hosts[weighed.Host];
        var posterior = Explain(weighed, options.FlatPrior, withContext: true);
        var probability = posterior.Marginals(posterior.Probability);
        var active = new ActiveHypotheses(posterior);
        var bands = options.Bands ? new Bands(posterior, active, draws).Of(probability) : [.. probability.Select(p => (p, p))];
        int subject = hypotheses.Subject;
        var (standing, because) = Judge(weighed, options, posterior, probability[subject], bands[subject]);

        var evidence = WeighEvidence(posterior, probability, options);
        var masses = Today(posterior, out int leading);
        var losses = new Losses(knowledge.Document.Losses[PurposeOf(weighed)]);
        var advice = losses.Best(masses, mayAdvise: standing <= Standing.Unlikely);
        double lossNow = losses.Of(advice, masses);
        ImmutableArray<NextLook> next = [];
        ImmutableArray<Character> heldBack = [];
        if (options.NextLooks)
        {
            (next, heldBack) = new NextLookSearch(posterior, active, model, losses, advice, leading).Run(probability);
            if (!next.IsEmpty && next[0].Worth > 0) advice = Advice.Hold;
        }

        var fit = new Fit(posterior, model);
        var causes = Rank(hypotheses, probability, bands);
        return new Answer
        {
            Knowledge = knowledge.Id,
            Standing = standing,
            StandingBecause = because,
            Advice = advice,
            LateBlight = causes.First(cause => cause.Cause == knowledge.Subject),
            Causes = causes,
            NotListed = posterior.Probability[hypotheses.NotListed],
            Evidence = evidence,
            NextLooks = next,
            Conflicts = [.. fit.Unexpected.Concat(Fit.Disagreements(posterior.Readings)).OrderBy(conflict => conflict.Why).ThenBy(conflict => conflict.Looks[0])],
            Misfit = fit.IsMisfit,
            HeldBack = heldBack,
            LossNow = lossNow,
            RestsOnJudgement = RestsOnJudgement(evidence, hypotheses.Table),
        };
    }

    /// <summary>The purpose that picks the losses: the case's own, or that of its system.</summary>
    public string PurposeOf(Case weighed)
    {
        ArgumentNullException.ThrowIfNull(weighed);
        return weighed.Purpose ?? (weighed.System is null ? null : knowledge.Document.PurposeBySystem.GetValueOrDefault(weighed.System)) ?? knowledge.Document.PurposeOtherwise;
    }

    /// <summary>Every hypothesis weighed by a case.</summary>
    internal Posterior Explain(Case weighed, bool flatPrior, bool withContext)
    {
        var (hypotheses, _) = hosts[weighed.Host];
        var context = knowledge.Document.PriorFactors.Context;
        var readings = new CaseReadings(weighed, hypotheses.Table, model, withContext ? null : character => context.Contains(character.Id, StringComparer.Ordinal));
        var factors = withContext ? FactorsOf(weighed, hypotheses) : Ones(hypotheses.CauseCount);
        return new Posterior(readings, hypotheses, hypotheses.Priors(hypotheses.CauseWeights(weighed, flatPrior), factors));
    }

    /// <summary>By cause, the product of the prior factors. One under one is held at one where the station says little about the plants.</summary>
    private double[] FactorsOf(Case weighed, Hypotheses hypotheses)
    {
        var factors = Ones(hypotheses.CauseCount);
        foreach (var factor in weighed.PriorFactors)
        {
            int cause = hypotheses.Table.IndexOf(factor.Cause);
            if (cause >= 0) factors[cause] *= StationSaysLittle(weighed) ? Math.Max(1, factor.Factor) : factor.Factor;
        }

        return factors;
    }

    /// <summary>Whether a prior factor under one is held at one: the weather of a station is not that of these plants.</summary>
    public bool StationSaysLittle(Case weighed)
    {
        ArgumentNullException.ThrowIfNull(weighed);
        var rule = knowledge.Document.PriorFactors.NeverUnderOne;
        return rule.Systems.Contains(weighed.System)
            || rule.Stages.Contains(weighed.Stage)
            || weighed.Looks.Any(look => look.Character.Id == Watering && look.States.Any(state => rule.Watering.Contains(look.Character.States[state])));
    }

    private (Standing Standing, StandingReason Because) Judge(Case weighed, WeighOptions options, Posterior posterior, double probability, (double Low, double High) band)
    {
        var proof = new Proof(posterior);
        if (proof.IsProven) return proof.IsContradicted ? (Standing.Likely, StandingReason.BenchContradiction) : (Standing.Confirmed, StandingReason.BenchProof);

        var limits = knowledge.Document.Standing;
        bool IsOut(double p, double high) => p <= limits.RuledOut.Probability && high <= limits.RuledOut.High;
        if (IsOut(probability, band.High) && proof.WouldHaveShown)
        {
            var bare = Explain(weighed, options.FlatPrior, withContext: false);
            var marginals = bare.Marginals(bare.Probability);
            int subject = bare.Hypotheses.Subject;
            double high = options.Bands ? new Bands(bare, new ActiveHypotheses(bare), hosts[weighed.Host].Draws).Of(marginals)[subject].High : marginals[subject];
            if (IsOut(marginals[subject], high)) return (Standing.RuledOut, StandingReason.ShowingLook);
        }

        if (probability <= limits.Unlikely.Probability) return (Standing.Unlikely, StandingReason.Probability);
        if (probability >= limits.Likely.Probability && band.Low >= limits.Likely.Low) return (Standing.Likely, StandingReason.Probability);
        return (Standing.Open, StandingReason.Probability);
    }

    private ImmutableArray<Evidence> WeighEvidence(Posterior posterior, double[] probability, WeighOptions options)
    {
        var list = ImmutableArray.CreateBuilder<Evidence>();
        int subject = posterior.Hypotheses.Subject;
        var causes = posterior.Hypotheses.Table.Causes;
        foreach (var strand in posterior.Readings.Strands)
        {
            var without = Without(strand, posterior, options);
            int towards = 0;
            for (int cause = 1; cause < causes.Length; cause++)
            {
                if (probability[cause] - without[cause] > probability[towards] - without[towards]) towards = cause;
            }

            double decibans = 10 * (LogOdds(probability[subject]) - LogOdds(without[subject]));
            list.Add(new Evidence(strand.Character, [.. strand.Places.Order()], decibans, causes[towards]));
        }

        return [.. list.OrderByDescending(evidence => Math.Abs(evidence.Decibans)).ThenBy(evidence => evidence.Character.Id, StringComparer.Ordinal)];
    }

    /// <summary>The marginals of the case without a character and what hangs on it.</summary>
    private double[] Without(Strand strand, Posterior posterior, WeighOptions options)
    {
        bool IsLeft(Character character) => character == strand.Character || character.WhenParent == strand.Character || character.OfCharacter == strand.Character;
        if (!ChangesOthers(strand.Character, posterior)) return posterior.Marginals(posterior.Without([.. posterior.Readings.Strands.Where(other => IsLeft(other.Character))]));

        var weighed = posterior.Readings.Weighed;
        var rest = Explain(weighed with { Looks = [.. weighed.Looks.Where(look => !IsLeft(look.Character))] }, options.FlatPrior, withContext: true);
        return rest.Marginals(rest.Probability);
    }

    /// <summary>Whether other looks are read, or prior factors counted, otherwise without this character.</summary>
    private bool ChangesOthers(Character character, Posterior posterior)
    {
        if (model.Hides(character)) return posterior.Readings.Strands.Exists(strand => strand.Character.States.Any(model.IsMasked));
        return character.Id == Watering && posterior.Readings.Weighed.PriorFactors.Any(factor => factor.Factor < 1);
    }

    /// <summary>The base-10 logarithm of the odds; held within what twelve digits can tell from certainty.</summary>
    private static double LogOdds(double probability)
    {
        double p = Math.Clamp(probability, 1e-12, 1 - 1e-12);
        return PlainMath.Log10(p / (1 - p));
    }

    /// <summary>The chances that decide today's act, and the cause that would be advised for: the most probable that is there without late blight.</summary>
    private static Masses Today(Posterior posterior, out int leading)
    {
        var hypotheses = posterior.Hypotheses;
        var byCause = new double[hypotheses.CauseCount];
        double subject = 0;
        for (int h = 0; h < hypotheses.NotListed; h++)
        {
            double p = posterior.Probability[h];
            if (hypotheses.Holds(h, hypotheses.Subject))
            {
                subject += p;
                continue;
            }

            byCause[hypotheses.First[h]] += p;
            if (hypotheses.Second[h] != hypotheses.First[h]) byCause[hypotheses.Second[h]] += p;
        }

        leading = 0;
        for (int cause = 1; cause < byCause.Length; cause++)
        {
            if (byCause[cause] > byCause[leading]) leading = cause;
        }

        return new Masses(1, subject, byCause[leading]);
    }

    private static ImmutableArray<CauseChance> Rank(Hypotheses hypotheses, double[] probability, (double Low, double High)[] bands)
    {
        var list = hypotheses.Table.Causes.Select((cause, index) => new CauseChance(cause, Math.Min(1, probability[index]), bands[index].Low, Math.Max(bands[index].High, probability[index])));
        return [.. list.OrderByDescending(cause => cause.Probability).ThenBy(cause => cause.Cause.Id, StringComparer.Ordinal)];
    }

    /// <summary>More than half of the decibans come from rows of late blight or of the cause spoken for that no publication or common practice backs.</summary>
    private bool RestsOnJudgement(ImmutableArray<Evidence> evidence, HostTable table)
    {
        double all = 0, judged = 0;
        foreach (var one in evidence)
        {
            double weight = Math.Abs(one.Decibans);
            all += weight;
            bool backed = new[] { table.IndexOf(knowledge.Subject), table.IndexOf(one.Towards) }.All(
                cause => table.Questions.Any(question => question.Character == one.Character && question.Rows[cause] is { SourceKind: not SourceKind.Judgement }));
            if (!backed) judged += weight;
        }

        return judged > 0.5 * all;
    }

    private static double[] Ones(int length)
    {
        var ones = new double[length];
        ones.AsSpan().Fill(1);
        return ones;
    }
}
