namespace Abaxial.Weighing;

/// <summary>
/// The central 80 % of each cause's probability over the draws of the rows that the case used: the cells that a look named (all of a character's where it was answered
/// "nothing there"), and the chance of attacking the organs that were affected. Hypotheses that hold next to nothing stay out.
/// </summary>
internal sealed class Bands
{
    private const int Draws = RowDraws.Count;

    /// <summary>Hypotheses below this probability cannot move a figure that is shown.</summary>
    public const double Negligible = 1e-7;

    private readonly Posterior posterior;
    private readonly Hypotheses hypotheses;
    private readonly RowDraws draws;
    private readonly Dictionary<(Strand Strand, int Cause), double[]> aloneRatios = [];

    public Bands(Posterior posterior, RowDraws draws)
    {
        this.posterior = posterior;
        this.draws = draws;
        hypotheses = posterior.Hypotheses;
    }

    /// <summary>By cause, low and high.</summary>
    public (double Low, double High)[] Of(ReadOnlySpan<double> probability)
    {
        var total = new double[Draws];
        var byCause = new double[hypotheses.CauseCount][];
        var lane = new double[Draws];
        for (int h = 0; h < hypotheses.Count; h++)
        {
            if (posterior.Probability[h] < Negligible) continue;
            Weigh(h, lane);
            Add(total, lane);
            int a = hypotheses.First[h], b = hypotheses.Second[h];
            if (a >= hypotheses.CauseCount) continue;
            Add(byCause[a] ??= new double[Draws], lane);
            if (a != b) Add(byCause[b] ??= new double[Draws], lane);
        }

        var bands = new (double Low, double High)[hypotheses.CauseCount];
        for (int cause = 0; cause < bands.Length; cause++)
        {
            double middle = probability[cause];
            bands[cause] = byCause[cause] is { } sums ? Around(middle, sums, total, lane) : (middle, middle);
        }

        return bands;
    }

    private static (double Low, double High) Around(double middle, double[] sums, double[] total, double[] scratch)
    {
        for (int draw = 0; draw < Draws; draw++) scratch[draw] = sums[draw] / total[draw];
        Array.Sort(scratch);
        return (Math.Max(0, Math.Min(middle, At(scratch, 0.1))), Math.Min(1, Math.Max(middle, At(scratch, 0.9))));
    }

    /// <summary>A quantile, linear between the draws.</summary>
    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below]));
    }

    private static void Add(double[] target, double[] lane)
    {
        for (int draw = 0; draw < Draws; draw++) target[draw] += lane[draw];
    }

    private static void Multiply(double[] target, double[] lane)
    {
        for (int draw = 0; draw < Draws; draw++) target[draw] *= lane[draw];
    }

    /// <summary>The weight of a hypothesis in every draw.</summary>
    private void Weigh(int h, double[] lane)
    {
        lane.AsSpan().Fill(posterior.Probability[h]);
        int a = hypotheses.First[h], b = hypotheses.Second[h];
        var ratio = new double[Draws];
        foreach (var strand in posterior.Readings.Strands)
        {
            if (strand.Organ is not null || strand.Character.Id == CaseReadings.OrgansAffected) continue;
            Ratio(strand, a, b, ratio);
            Multiply(lane, ratio);
        }

        foreach (var block in posterior.Blocks)
        {
            if (!block.IsAffected && block.Strands.Count == 0) continue;
            OrganRatio(block, h, a, b, ratio);
            Multiply(lane, ratio);
        }
    }

    /// <summary>An organ's likelihood in every draw, over its value.</summary>
    private void OrganRatio(OrganBlock block, int h, int a, int b, double[] ratio)
    {
        var looks = posterior.LooksAt(block);
        double value = posterior.ValueOf(block)[h];
        var looksA = Looks(block, a, a, looks[a == hypotheses.CauseCount ? hypotheses.NotListed : a]);
        double[] looksB = looksA, both = looksA;
        if (a != b)
        {
            looksB = Looks(block, b, b, looks[b]);
            both = Looks(block, a, b, looks[h]);
        }

        var attacksA = Attacks(block, a);
        var attacksB = a == b ? attacksA : Attacks(block, b);
        double sound = block.ReportedIfNot * block.LooksIfNot;
        for (int draw = 0; draw < Draws; draw++)
        {
            double ga = attacksA[draw];
            if (a == b)
            {
                ratio[draw] = (((1 - ga) * sound) + (ga * block.ReportedIfSo * looksA[draw])) / value;
                continue;
            }

            double gb = attacksB[draw];
            double some = (ga * (1 - gb) * looksA[draw]) + ((1 - ga) * gb * looksB[draw]) + (ga * gb * both[draw]);
            ratio[draw] = (((1 - ga) * (1 - gb) * sound) + (block.ReportedIfSo * some)) / value;
        }
    }

    private double[] Looks(OrganBlock block, int a, int b, double value)
    {
        var lane = new double[Draws];
        var ratio = new double[Draws];
        lane.AsSpan().Fill(value);
        foreach (var strand in block.Strands)
        {
            Ratio(strand, a, b, ratio);
            Multiply(lane, ratio);
        }

        return lane;
    }

    private double[] Attacks(OrganBlock block, int cause)
    {
        var lane = new double[Draws];
        double chance = block.Attacks[cause];
        var organs = hypotheses.Table.Find(hypotheses.Table.Knowledge.FindCharacter(CaseReadings.OrgansAffected)!);
        bool isTable = block.IsAffected && chance == organs.Chance(cause, block.State);
        if (isTable) draws.Of(organs, cause).AsSpan(block.State * Draws, Draws).CopyTo(lane);
        else lane.AsSpan().Fill(chance);
        return lane;
    }

    /// <summary>A strand's likelihood in every draw, over its value.</summary>
    private void Ratio(Strand strand, int a, int b, double[] ratio)
    {
        if (a == b)
        {
            if (!aloneRatios.TryGetValue((strand, a), out var known)) aloneRatios.Add((strand, a), known = Compute(strand, a, b));
            known.CopyTo(ratio, 0);
            return;
        }

        Compute(strand, a, b).CopyTo(ratio, 0);
    }

    private double[] Compute(Strand strand, int a, int b)
    {
        var ratio = new double[Draws];
        ratio.AsSpan().Fill(1);
        foreach (var readings in strand.Readings)
        {
            if (readings.HasSampleMean) continue; // the range's own spread already holds it
            if (readings.IsStateWise) StateWise(readings, a, b, ratio);
            else OneState(readings, a, b, ratio);
        }

        return ratio;
    }

    private void StateWise(QuestionReadings readings, int a, int b, double[] ratio)
    {
        var question = readings.Question;
        var drawnA = draws.Of(question, a);
        var drawnB = draws.Of(question, b);
        foreach (int state in posterior.Readings.StatesOf(question.Character))
        {
            if (!readings.Named[state]) continue;
            double present = readings.Present[state], slope = readings.Absent[state] - present;
            double stays = a == b ? 1 - question.Chance(a, state) : (1 - question.Chance(a, state)) * (1 - question.Chance(b, state));
            double point = present + (slope * stays);
            for (int draw = 0; draw < Draws; draw++)
            {
                double drawn = 1 - drawnA[(state * Draws) + draw];
                if (a != b) drawn *= 1 - drawnB[(state * Draws) + draw];
                ratio[draw] *= (present + (slope * drawn)) / point;
            }
        }
    }

    private void OneState(QuestionReadings readings, int a, int b, double[] ratio)
    {
        var question = readings.Question;
        var drawnA = draws.Of(question, a);
        var drawnB = draws.Of(question, b);
        double point = 0;
        var sums = new double[Draws];
        for (int state = 0; state < question.StateCount; state++)
        {
            double reads = readings.Present[state];
            point += reads * (question.Chance(a, state) + question.Chance(b, state));
            for (int draw = 0; draw < Draws; draw++) sums[draw] += reads * (drawnA[(state * Draws) + draw] + drawnB[(state * Draws) + draw]);
        }

        for (int draw = 0; draw < Draws; draw++) ratio[draw] *= sums[draw] / point;
    }
}
