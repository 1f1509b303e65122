using System.Collections.Immutable;

namespace Abaxial.Weather;

/// <summary>What is known of an hour: whether it meets a condition.</summary>
public enum HourState : byte
{
    /// <summary>It does not.</summary>
    No,

    /// <summary>It does.</summary>
    Yes,

    /// <summary>A reading is missing.</summary>
    Unknown,
}

/// <summary>Hours on end that meet a condition.</summary>
/// <param name="Start">The place of the first.</param>
/// <param name="Length">How many.</param>
/// <param name="IsCut">An hour that is not known stands before the first or after the last: it may have been longer.</param>
public readonly record struct Run(int Start, int Length, bool IsCut)
{
    /// <summary>The place of the last hour.</summary>
    public int Last => Start + Length - 1;

    /// <summary>All runs, in order. An unknown hour ends a run.</summary>
    public static ImmutableArray<Run> In(ReadOnlySpan<HourState> hours)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        for (int start = 0; start < hours.Length;)
        {
            if (hours[start] != HourState.Yes)
            {
                start++;
                continue;
            }

            int end = start + 1;
            while (end < hours.Length && hours[end] == HourState.Yes) end++;
            bool isCut = start == 0 || hours[start - 1] == HourState.Unknown || end == hours.Length || hours[end] == HourState.Unknown;
            runs.Add(new Run(start, end - start, isCut));
            start = end;
        }

        return runs.ToImmutable();
    }
}
