using System.Text;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

/// <summary>Answers made comparable where the places of looks in the case differ.</summary>
internal static class AnswerForm
{
    /// <summary>The answer as it is written, with every place of a look moved.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="moved">From the place in the case that was weighed to the place to show; null drops all places.</param>
    public static string Written(this Answer answer, Func<int, int>? moved = null) => Encoding.UTF8.GetString(AnswerWriter.ToUtf8(answer with
    {
        Evidence = [.. answer.Evidence.Select(one => one with { Looks = Move(one.Looks, moved) })],
        Conflicts = [.. answer.Conflicts
            .Select(one => one with { Looks = Move(one.Looks, moved) })
            .OrderBy(one => one.Why).ThenBy(one => string.Join(',', one.Looks), StringComparer.Ordinal).ThenBy(one => one.Chance)],
    }));

    private static System.Collections.Immutable.ImmutableArray<int> Move(System.Collections.Immutable.ImmutableArray<int> places, Func<int, int>? moved) =>
        moved is null ? [] : [.. places.Select(moved).Order()];
}
