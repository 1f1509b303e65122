using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>One look that counts, with its place in the case and what it says of a question.</summary>
/// <param name="Look">The look.</param>
/// <param name="Places">Its places in the case: more than one where the same look was written more than once.</param>
internal sealed record CountedLook(Look Look, ImmutableArray<int> Places);

/// <summary>All readings of one question, folded: the likelihood of what was read given each true state, scaled so that the largest is one.</summary>
internal sealed class QuestionReadings
{
    public QuestionReadings(Question question)
    {
        Question = question;
        Present = new double[question.StateCount];
        Absent = new double[question.StateCount];
        Present.AsSpan().Fill(1);
        Absent.AsSpan().Fill(1);
        Named = new bool[question.StateCount];
    }

    public Question Question { get; }

    /// <summary>By state, P(readings | the state is there). For a one-state character: P(readings | the true state is this one).</summary>
    public double[] Present { get; }

    /// <summary>By state, P(readings | the state is not there); used by state factors only.</summary>
    public double[] Absent { get; }

    /// <summary>The states that some reading named; a named empty state names all.</summary>
    public bool[] Named { get; }

    /// <summary>Some reading says that something is there, so that the organ is attacked.</summary>
    public bool ShowsSomething { get; set; }

    public bool HasSampleMean { get; set; }

    public double SampleMean { get; set; }

    public int SampleSize { get; set; }

    public List<CountedLook> Looks { get; } = [];

    public bool IsStateWise => Question.IsStateWise;
}

/// <summary>Everything that one character says: its questions' factors.</summary>
internal sealed class Strand(Character character)
{
    public Character Character { get; } = character;

    public List<QuestionReadings> Readings { get; } = [];

    public List<Factor> Factors { get; } = [];

    /// <summary>The organ whose chance of being attacked this strand hangs on; null where it hangs on none.</summary>
    public string? Organ => Character.Organ;

    public IEnumerable<int> Places => Readings.SelectMany(readings => readings.Looks).SelectMany(look => look.Places);
}
