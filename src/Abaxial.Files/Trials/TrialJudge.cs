using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Files.Trials;

/// <summary>What a trial asked for and did not get.</summary>
public enum TrialMiss
{
    /// <summary>The case was refused.</summary>
    Refused,

    /// <summary>Another cause leads.</summary>
    Leader,

    /// <summary>Late blight is more probable than allowed.</summary>
    TooProbable,

    /// <summary>Late blight is less probable than asked for.</summary>
    TooImprobable,

    /// <summary>The standing is none of those allowed.</summary>
    Standing,

    /// <summary>The advice is none of those allowed, or one that is forbidden.</summary>
    Advice,
}

/// <summary>What came of a trial.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Answer">The answer; null where the case was refused.</param>
/// <param name="Misses">What was asked for and did not come; empty where the trial is passed.</param>
/// <param name="Problems">Why the case was refused.</param>
public sealed record TrialResult(Trial Trial, Answer? Answer, ImmutableArray<TrialMiss> Misses, ImmutableArray<CaseProblem> Problems)
{
    public bool IsPassed => Misses.IsEmpty;

    /// <summary>The cause that leads; null where the case was refused.</summary>
    public Cause? Leader => Answer?.Causes[0].Cause;
}

/// <summary>Weighs trials and holds the answers against what was asked for.</summary>
/// <param name="knowledge">The knowledge to weigh with.</param>
public sealed class TrialJudge(KnowledgeBase knowledge)
{
    private readonly Weigher weigher = new(knowledge);

    public TrialResult Judge(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var reading = CaseReader.Read(trial.Case.Span, knowledge);
        if (reading.IsRefused) return new TrialResult(trial, null, [TrialMiss.Refused], reading.Problems);
        var answer = weigher.Weigh(reading.Case);
        return new TrialResult(trial, answer, [.. Misses(trial, answer)], []);
    }

    private static IEnumerable<TrialMiss> Misses(Trial trial, Answer answer)
    {
        double probability = answer.LateBlight.Probability;
        string advice = answer.Advice.Word();
        if (!trial.Leads.IsEmpty && !trial.Leads.Contains(answer.Causes[0].Cause.Id)) yield return TrialMiss.Leader;
        if (probability > trial.AtMost) yield return TrialMiss.TooProbable;
        if (probability < trial.AtLeast) yield return TrialMiss.TooImprobable;
        if (!trial.Standings.IsEmpty && !trial.Standings.Contains(answer.Standing.Word())) yield return TrialMiss.Standing;
        if ((!trial.Advice.IsEmpty && !trial.Advice.Contains(advice)) || trial.AdviceNot.Contains(advice)) yield return TrialMiss.Advice;
    }
}
