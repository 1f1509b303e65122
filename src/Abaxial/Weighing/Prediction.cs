using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>
/// What one more look at a question would show, for any causes on the plant, given what was read of it already. Readings of a character with several states at once are
/// grouped by the first state on its list that is named, the empty state last: a coarser view, so that the worth worked out from it is never too high.
/// </summary>
internal sealed class Prediction
{
    private readonly Question question;
    private readonly int[] states;
    private readonly double[] detects;
    private readonly double[] falsely;
    private readonly double[] leaves;
    private readonly double[] present;
    private readonly double[] absent;
    private readonly int masked = -1;
    private readonly double error;
    private readonly bool stateWise;

    /// <param name="question">What would be looked at.</param>
    /// <param name="way">How.</param>
    /// <param name="surface">The surface, where the character lists surfaces.</param>
    /// <param name="before">What was read already; null for nothing.</param>
    /// <param name="readings">The case.</param>
    /// <param name="model">How looks show what is there.</param>
    public Prediction(Question question, Way way, Surface? surface, QuestionReadings? before, CaseReadings readings, ReadingModel model)
    {
        this.question = question;
        var character = question.Character;
        stateWise = question.IsStateWise;
        states = [.. question.States];
        bool hasEmpty = stateWise && character.EmptyState >= 0;
        Outcomes = hasEmpty ? [.. states, character.EmptyState] : states;
        var noise = model.NoiseOf(character, way, way == Way.Asked ? Observer.Grower : Observer.Diagnostician, question.Facet);
        error = noise.Error / Math.Max(states.Length - 1, 1);
        present = before?.Present ?? Ones(question.StateCount);
        absent = before?.Absent ?? present;
        detects = new double[states.Length];
        falsely = new double[states.Length];
        leaves = new double[states.Length];
        for (int i = 0; i < states.Length; i++)
        {
            string word = character.States[states[i]];
            var (grows, left) = model.Overgrowth(word, surface, null);
            detects[i] = model.Shows(character, states[i], surface, null, readings.Hiding) * (1 - noise.Miss);
            falsely[i] = 1 - ((1 - noise.False) * (1 - grows));
            leaves[i] = left;
            if (surface == Surface.MoistChamber && model.IsMasked(word)) masked = i;
        }
    }

    /// <summary>The states that the outcomes are named for.</summary>
    public int[] Outcomes { get; }

    /// <summary>Whether one outcome is that nothing is there.</summary>
    public bool HasEmpty => question.Character.EmptyState >= 0;

    /// <summary>The chances of the outcomes where these causes are on the organ (the same twice for one alone).</summary>
    public void Of(int a, int b, Span<double> chances)
    {
        if (stateWise) StateWise(a, b, chances);
        else OneState(a, b, chances);
    }

    /// <summary>The chances of the outcomes where the organ is sound.</summary>
    public void OfSound(Span<double> chances)
    {
        if (stateWise)
        {
            Grouped(stackalloc double[states.Length].FillOnes(), chances);
            return;
        }

        for (int i = 0; i < states.Length; i++) chances[i] = states[i] == question.Character.EmptyState ? 1 - (error * (states.Length - 1)) : error;
    }

    private void OneState(int a, int b, Span<double> chances)
    {
        double sum = 0;
        for (int i = 0; i < states.Length; i++) sum += chances[i] = (question.Chance(a, states[i]) + question.Chance(b, states[i])) * present[states[i]];
        double right = 1 - (error * (states.Length - 1));
        for (int i = 0; i < states.Length; i++) chances[i] = error + (chances[i] / sum * (right - error));
    }

    private void StateWise(int a, int b, Span<double> chances)
    {
        Span<double> staying = stackalloc double[states.Length];
        for (int i = 0; i < states.Length; i++)
        {
            double stays = 1 - question.Chance(a, states[i]);
            if (a != b) stays *= 1 - question.Chance(b, states[i]);
            double ifNot = stays * absent[states[i]];
            staying[i] = ifNot / (ifNot + ((1 - stays) * present[states[i]]));
        }

        Grouped(staying, chances);
    }

    /// <summary>Readings by the first state named, from the chance that each state is not there.</summary>
    private void Grouped(ReadOnlySpan<double> staying, Span<double> chances)
    {
        int n = states.Length;
        Span<double> unnamed = stackalloc double[n];
        for (int i = 0; i < n; i++) unnamed[i] = (1 - falsely[i]) * (1 - ((1 - staying[i]) * detects[i]));
        double before = 1, others = 1;
        for (int i = 0; i < n; i++)
        {
            if (i != masked) others *= unnamed[i];
            double until = others;
            if (masked >= 0 && masked <= i)
            {
                // What overgrows it hides it: those further down the list may still be there.
                double seen = detects[masked];
                for (int over = i + 1; over < n; over++) seen *= unnamed[over] + ((1 - unnamed[over]) * leaves[over]);
                until *= (1 - falsely[masked]) * (1 - ((1 - staying[masked]) * seen));
            }

            chances[i] = before - until;
            before = until;
        }

        if (chances.Length > n)
        {
            chances[n] = before;
            return;
        }

        // No empty state: something is named, or there was no look.
        for (int i = 0; i < n; i++) chances[i] /= 1 - before;
    }

    private static double[] Ones(int length)
    {
        var ones = new double[length];
        ones.AsSpan().Fill(1);
        return ones;
    }
}

internal static class SpanFilling
{
    public static Span<double> FillOnes(this Span<double> span)
    {
        span.Fill(1);
        return span;
    }
}
