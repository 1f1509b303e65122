namespace Abaxial.Weighing;

/// <summary>
/// The hypotheses that bands and next looks are worked out over. A pair that holds next to nothing gives what it holds to the more probable of its causes alone (with late
/// blight in it, to late blight alone), so that hardly anything is lost; a cause alone that holds next to nothing is left out.
/// </summary>
internal sealed class ActiveHypotheses
{
    /// <summary>A cause alone, or one that is not listed, is kept from this probability on.</summary>
    public const double LeastAlone = 1e-5;

    /// <summary>A pair is kept from this probability on; without late blight.</summary>
    public const double LeastPair = 1e-4;

    /// <summary>With late blight in it, alone or as a pair, a hypothesis is kept from this probability on.</summary>
    public const double LeastOfSubject = 1e-6;

    /// <summary>Of two causes the second inherits where it is more probable by more than rounding could make it.</summary>
    public const double Clearly = 1 + 1e-9;

    public ActiveHypotheses(Posterior posterior)
    {
        var hypotheses = posterior.Hypotheses;
        var probability = posterior.Probability;
        var mass = (double[])probability.Clone();
        int subject = hypotheses.Subject;
        for (int h = hypotheses.CauseCount; h < hypotheses.NotListed; h++)
        {
            int a = hypotheses.First[h], b = hypotheses.Second[h];
            bool isSubject = a == subject || b == subject;
            if (mass[h] >= (isSubject ? LeastOfSubject : LeastPair)) continue;
            int heir = isSubject ? subject : probability[b] > probability[a] * Clearly ? b : a;
            mass[heir] += mass[h];
            mass[h] = 0;
        }

        var kept = new List<int>();
        for (int h = 0; h < hypotheses.Count; h++)
        {
            bool isAlone = hypotheses.First[h] == hypotheses.Second[h];
            if (isAlone ? mass[h] >= (h == subject ? LeastOfSubject : LeastAlone) : mass[h] > 0) kept.Add(h);
        }

        Numbers = [.. kept];
        Mass = new double[Numbers.Length];
        double sum = 0;
        for (int i = 0; i < Mass.Length; i++) sum += Mass[i] = mass[Numbers[i]];
        for (int i = 0; i < Mass.Length; i++) Mass[i] /= sum;
    }

    /// <summary>The numbers of the hypotheses kept, ascending.</summary>
    public int[] Numbers { get; }

    /// <summary>What each holds; sums to one.</summary>
    public double[] Mass { get; }
}
