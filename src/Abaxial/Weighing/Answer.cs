using System.Collections.Immutable;
using Abaxial.Knowledge;

namespace Abaxial.Weighing;

/// <summary>Where late blight stands for a case.</summary>
public enum Standing
{
    RuledOut,
    Unlikely,
    Open,
    Likely,
    Confirmed,
}

/// <summary>What a standing rests on.</summary>
public enum StandingReason
{
    /// <summary>The probability and its band.</summary>
    Probability,

    /// <summary>Bench proof.</summary>
    BenchProof,

    /// <summary>A look that would have shown late blight did not, on every affected organ.</summary>
    ShowingLook,

    /// <summary>There was bench proof, and something at the bench contradicts it.</summary>
    BenchContradiction,
}

/// <summary>What to do now.</summary>
public enum Advice
{
    /// <summary>Protect and isolate as for late blight.</summary>
    Act,

    /// <summary>Make the next look first.</summary>
    Hold,

    /// <summary>Advise for the leading cause.</summary>
    Advise,

    /// <summary>Send to a laboratory that can settle it.</summary>
    SendOn,
}

/// <summary>What a case amounts to.</summary>
public sealed record Answer
{
    /// <summary>Name, version and hash of the knowledge.</summary>
    public required string Knowledge { get; init; }

    public required Standing Standing { get; init; }

    public required StandingReason StandingBecause { get; init; }

    public required Advice Advice { get; init; }

    /// <summary>The entry of late blight, as in <see cref="Causes"/>.</summary>
    public required CauseChance LateBlight { get; init; }

    /// <summary>Every cause of the host, most probable first, ties by id.</summary>
    public required ImmutableArray<CauseChance> Causes { get; init; }

    /// <summary>The probability that it is none of the causes listed.</summary>
    public required double NotListed { get; init; }

    /// <summary>One entry a character that was looked at and counted, strongest first, ties by id.</summary>
    public required ImmutableArray<Evidence> Evidence { get; init; }

    /// <summary>The ten looks worth most, best first.</summary>
    public required ImmutableArray<NextLook> NextLooks { get; init; }

    public required ImmutableArray<Conflict> Conflicts { get; init; }

    /// <summary>The looks fit no listed cause.</summary>
    public required bool Misfit { get; init; }

    /// <summary>Looks held back because they would multiply or move a regulated organism; not part of the JSON answer.</summary>
    public ImmutableArray<Character> HeldBack { get; init; } = [];

    /// <summary>The expected loss of the best of the three acts as things stand, in false alarms in a market field; not part of the JSON answer.</summary>
    public double LossNow { get; init; }

    /// <summary>More than half of what moved the answer rests on judgement; not part of the JSON answer.</summary>
    public bool RestsOnJudgement { get; init; }
}

/// <summary>The chance that a cause is present, alone or with another, and the central 80 % that the uncertainty of the knowledge allows.</summary>
public sealed record CauseChance(Cause Cause, double Probability, double Low, double High);

/// <summary>What one character says.</summary>
/// <param name="Character">The character.</param>
/// <param name="Looks">The looks at it, as places in the case (from 0).</param>
/// <param name="Decibans">For late blight against everything else: ten times the base-10 logarithm of the odds with the character, less the same without it.</param>
/// <param name="Towards">The cause whose probability rises most by it.</param>
public sealed record Evidence(Character Character, ImmutableArray<int> Looks, double Decibans, Cause Towards);

/// <summary>A look that could be made.</summary>
/// <param name="Character">What to look at.</param>
/// <param name="How">The way to look.</param>
/// <param name="Worth">The expected loss that the look saves, after its own cost; the unit is a false alarm in a market field.</param>
/// <param name="Minutes">Hands-on minutes.</param>
/// <param name="WaitHours">Hours until there is something to see.</param>
/// <param name="Outcomes">What could be seen.</param>
public sealed record NextLook(Character Character, Way How, double Worth, double Minutes, double WaitHours, ImmutableArray<Outcome> Outcomes);

/// <summary>One thing a look could show: its chance, and the probability of late blight if it does.</summary>
/// <param name="State">The index of the state. For a character with several states at once: this one is seen and none that stands before it in the list of states (the empty state last).</param>
/// <param name="Chance">The chance of seeing it, given the case.</param>
/// <param name="LateBlight">The probability of late blight once it was seen.</param>
public sealed record Outcome(int State, double Chance, double LateBlight);

/// <summary>Why looks do not agree.</summary>
public enum ConflictReason
{
    /// <summary>The leading explanation finds the reading improbable.</summary>
    Unexpected,

    /// <summary>Two looks at one character differ.</summary>
    ReadingsDiffer,

    /// <summary>The look means something only if another was answered so, and it was answered otherwise.</summary>
    ParentSaysOtherwise,
}

/// <summary>Looks that do not agree with the rest.</summary>
/// <param name="Looks">Places in the case (from 0).</param>
/// <param name="Why">The reason.</param>
/// <param name="Chance">For an unexpected reading, its chance under the leading explanation; null otherwise.</param>
public sealed record Conflict(ImmutableArray<int> Looks, ConflictReason Why, double? Chance);
