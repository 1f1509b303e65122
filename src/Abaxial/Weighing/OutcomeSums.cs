namespace Abaxial.Weighing;

/// <summary>
/// Sums of what a look could show over the hypotheses: in all, with late blight, and by cause without late blight. One is used for look after look.
/// </summary>
internal sealed class OutcomeSums(int causes)
{
    private double[] byCause = [];
    private double[] alone = [];
    private readonly bool[] isKnown = new bool[causes + 1];
    private int outcomes;

    /// <summary>By outcome, its chance.</summary>
    public double[] All { get; private set; } = [];

    /// <summary>By outcome, its chance together with late blight.</summary>
    public double[] Subject { get; private set; } = [];

    /// <summary>By cause, the chance of an outcome together with that cause and without late blight.</summary>
    public ReadOnlySpan<double> Of(int outcome) => byCause.AsSpan(outcome * causes, causes);

    /// <summary>Begins a look with so many outcomes.</summary>
    public void Start(int count)
    {
        outcomes = count;
        if (All.Length < count)
        {
            All = new double[count];
            Subject = new double[count];
            byCause = new double[count * causes];
            alone = new double[count * (causes + 1)];
        }

        Array.Clear(All);
        Array.Clear(Subject);
        Array.Clear(byCause);
        Array.Clear(isKnown);
    }

    /// <summary>The chances of the outcomes for one cause alone, worked out once a look.</summary>
    public ReadOnlySpan<double> Alone(Prediction prediction, int cause)
    {
        var chances = alone.AsSpan(cause * outcomes, outcomes);
        if (!isKnown[cause]) prediction.Of(cause, cause, chances);
        isKnown[cause] = true;
        return chances;
    }

    /// <summary>Adds one hypothesis.</summary>
    public void Add(ReadOnlySpan<double> chances, double mass, int a, int b, bool isSubject)
    {
        for (int r = 0; r < chances.Length; r++)
        {
            double joint = mass * chances[r];
            All[r] += joint;
            if (isSubject) Subject[r] += joint;
            else if (a < causes)
            {
                byCause[(r * causes) + a] += joint;
                if (a != b) byCause[(r * causes) + b] += joint;
            }
        }
    }
}
