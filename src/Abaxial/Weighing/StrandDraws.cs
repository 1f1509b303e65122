namespace Abaxial.Weighing;

/// <summary>The likelihood of a strand in every draw of its rows, over its value at the rows as written.</summary>
internal sealed class StrandDraws
{
    private const int Draws = RowDraws.Count;

    private readonly RowDraws draws;
    private readonly List<Part> parts = [];
    private readonly double[][] alone;

    public StrandDraws(Strand strand, RowDraws draws, int causes)
    {
        this.draws = draws;
        alone = new double[causes + 1][];
        foreach (var one in strand.Readings)
        {
            if (one.HasSampleMean) continue; // the range's own spread holds it already
            parts.Add(new Part(one, one.IsStateWise ? [.. one.Question.States.Where(state => one.Named[state])] : [], causes));
        }
    }

    /// <summary>Multiplies by the ratio for two causes, or one alone (given twice).</summary>
    public void MultiplyRatio(Span<double> lane, int a, int b)
    {
        if (a == b)
        {
            if (alone[a] is not { } known)
            {
                known = new double[Draws];
                known.AsSpan().Fill(1);
                foreach (var part in parts) Multiply(part, known, a, a);
                alone[a] = known;
            }

            Lanes.Multiply(lane, known);
            return;
        }

        foreach (var part in parts) Multiply(part, lane, a, b);
    }

    private void Multiply(Part part, Span<double> lane, int a, int b)
    {
        if (part.Readings.IsStateWise) StateWise(part, lane, a, b);
        else OneState(part, lane, a, b);
    }

    private void StateWise(Part part, Span<double> lane, int a, int b)
    {
        var (question, reads) = (part.Readings.Question, part.Readings);
        double[] drawnA = Rows(part, a), drawnB = Rows(part, b);
        foreach (int state in part.Named)
        {
            double present = reads.Present[state], slope = reads.Absent[state] - present;
            double stays = 1 - question.Chance(a, state);
            if (a != b) stays *= 1 - question.Chance(b, state);
            double scale = 1 / (present + (slope * stays));
            var stayA = drawnA.AsSpan(state * Draws, Draws);
            if (a == b) Lanes.MultiplyLine(lane, stayA, slope * scale, present * scale);
            else Lanes.MultiplyLine(lane, stayA, drawnB.AsSpan(state * Draws, Draws), slope * scale, present * scale);
        }
    }

    private void OneState(Part part, Span<double> lane, int a, int b)
    {
        double[] readA = Rows(part, a), readB = Rows(part, b);
        Lanes.MultiplySum(lane, readA, readB, 1 / (part.Value[a] + part.Value[b]));
    }

    /// <summary>By draw: state by state the chance of staying away, or of a one-state character the chance of the readings.</summary>
    private double[] Rows(Part part, int cause)
    {
        if (part.Drawn[cause] is { } known) return known;
        var drawn = draws.Of(part.Readings.Question, cause);
        if (part.Readings.IsStateWise) return part.Drawn[cause] = drawn;

        var reads = new double[Draws];
        foreach (int state in part.Readings.Question.States)
        {
            double chance = part.Readings.Present[state];
            for (int draw = 0; draw < Draws; draw++) reads[draw] += chance * drawn[(state * Draws) + draw];
            part.Value[cause] += chance * part.Readings.Question.Chance(cause, state);
        }

        return part.Drawn[cause] = reads;
    }

    private sealed class Part(QuestionReadings readings, int[] named, int causes)
    {
        public QuestionReadings Readings { get; } = readings;

        public int[] Named { get; } = named;

        public double[][] Drawn { get; } = new double[causes + 1][];

        public double[] Value { get; } = new double[causes + 1];
    }
}
