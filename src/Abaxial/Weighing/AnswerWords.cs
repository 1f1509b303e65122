using System.Collections.Immutable;

namespace Abaxial.Weighing;

/// <summary>The words of the fixed interface for what an answer says, each in the order of its enumeration.</summary>
public static class AnswerWords
{
    public static ImmutableArray<string> Standings { get; } = ["ruled-out", "unlikely", "open", "likely", "confirmed"];

    public static ImmutableArray<string> StandingReasons { get; } = ["probability", "bench-proof", "showing-look", "bench-contradiction"];

    public static ImmutableArray<string> Advices { get; } = ["act", "hold", "advise", "send-on"];

    public static ImmutableArray<string> ConflictReasons { get; } = ["unexpected", "readings-differ", "parent-says-otherwise"];

    public static string Word(this Standing standing) => Standings[(int)standing];

    public static string Word(this StandingReason reason) => StandingReasons[(int)reason];

    public static string Word(this Advice advice) => Advices[(int)advice];

    public static string Word(this ConflictReason reason) => ConflictReasons[(int)reason];
}
