using Abaxial.Weighing;

namespace Abaxial.Benchmarks.PlainMatrix;

/// <summary>What was read of one question: a table by cause and state, and the likelihood of what was read given each state.</summary>
internal sealed class PlainFactor
{
    private const int Draws = RowDraws.Count;

    private readonly bool isStateWise;
    private readonly double[,] table; // by cause and state: the chance that it is not there, or, of a one-state character, that it is
    private readonly double[,,] drawn;
    private readonly double[] present;
    private readonly double[] absent;

    private PlainFactor(Strand strand, bool isStateWise, double[,] table, double[,,] drawn, double[] present, double[] absent, double ifSound)
    {
        Character = strand.Character.Id;
        Parent = strand.Character.WhenParent?.Id;
        Organ = strand.Organ;
        this.isStateWise = isStateWise;
        this.table = table;
        this.drawn = drawn;
        this.present = present;
        this.absent = absent;
        IfSound = ifSound;
    }

    public string Character { get; }

    public string? Parent { get; }

    public string? Organ { get; }

    /// <summary>The likelihood where the organ is not attacked; zero where something was seen there.</summary>
    public double IfSound { get; }

    /// <exception cref="NotSupportedException">Something was measured: the plain version knows states only.</exception>
    public static IEnumerable<PlainFactor> Of(Posterior posterior)
    {
        var (readings, hypotheses, draws) = (posterior.Readings, posterior.Hypotheses, new RowDraws());
        foreach (var strand in readings.Strands.Where(strand => strand.Character.Id != CaseReadings.OrgansAffected))
        {
            foreach (var one in strand.Readings)
            {
                if (one.HasSampleMean) throw new NotSupportedException($"{strand.Character} was measured.");
                yield return Of(strand, one, hypotheses.CauseCount, draws);
                if (ImpliedParent(strand, one, readings, hypotheses) is { } implied) yield return implied;
            }
        }
    }

    /// <summary>The likelihood for two causes, or one alone (given twice).</summary>
    /// <param name="a">A cause.</param>
    /// <param name="b">Another, or the same.</param>
    /// <param name="draw">The draw of the tables; -1 for the tables as written.</param>
    public double Of(int a, int b, int draw)
    {
        double product = 1, sum = 0;
        for (int state = 0; state < present.Length; state++)
        {
            double ofA = draw < 0 ? table[a, state] : drawn[a, state, draw], ofB = draw < 0 ? table[b, state] : drawn[b, state, draw];
            if (isStateWise)
            {
                double stays = a == b ? ofA : ofA * ofB;
                product *= (stays * absent[state]) + ((1 - stays) * present[state]);
            }
            else
            {
                sum += 0.5 * (ofA + ofB) * present[state];
            }
        }

        return isStateWise ? product : sum;
    }

    private static PlainFactor Of(Strand strand, QuestionReadings one, int causes, RowDraws draws)
    {
        var question = one.Question;
        int states = question.States.Length;
        var table = new double[causes + 1, states];
        var drawn = new double[causes + 1, states, Draws];
        for (int cause = 0; cause <= causes; cause++)
        {
            double[] row = draws.Of(question, cause);
            for (int i = 0; i < states; i++)
            {
                int state = question.States[i];
                double chance = question.Chance(cause, state);
                table[cause, i] = question.IsStateWise ? 1 - chance : chance;
                bool isDrawn = !question.IsStateWise || one.Named[state];
                for (int draw = 0; draw < Draws; draw++) drawn[cause, i, draw] = isDrawn ? row[(state * Draws) + draw] : table[cause, i];
            }
        }

        double[] present = [.. question.States.Select(state => one.Present[state])];
        double[] absent = [.. question.States.Select(state => one.Absent[state])];
        double ifSound = one.ShowsSomething ? 0 : question.IsStateWise ? absent.Aggregate(1.0, (product, value) => product * value) : one.Present[strand.Character.EmptyState];
        return new PlainFactor(strand, question.IsStateWise, table, drawn, present, absent, strand.Organ is null ? 1 : ifSound);
    }

    /// <summary>A look whose parent was not recorded says that the parent was as needed.</summary>
    private static PlainFactor? ImpliedParent(Strand strand, QuestionReadings one, CaseReadings readings, Hypotheses hypotheses)
    {
        var (parent, states) = CaseReadings.Needs(strand.Character, one.Question.Facet);
        if (parent is null || readings.Counted.Exists(look => look.Look.Character == parent)) return null;
        var question = hypotheses.Table.Find(parent);
        var table = new double[hypotheses.CauseCount + 1, 1];
        var drawn = new double[hypotheses.CauseCount + 1, 1, Draws];
        for (int cause = 0; cause <= hypotheses.CauseCount; cause++)
        {
            table[cause, 0] = states.Aggregate(1.0, (product, state) => product * (1 - question.Chance(cause, state)));
            for (int draw = 0; draw < Draws; draw++) drawn[cause, 0, draw] = table[cause, 0];
        }

        return new PlainFactor(strand, true, table, drawn, [1], [0], 1);
    }
}
