using System.Collections.Immutable;

namespace Abaxial.Weather.Arrival;

/// <summary>
/// A wet stretch that fits several fields at once. Such fields may have been infected in the same hours; it does not say that one had it from another, and it has no order.
/// </summary>
/// <param name="FromUtc">When the last of their wet periods began, UTC.</param>
/// <param name="ToUtc">When the first of them ended, UTC.</param>
/// <param name="Fields">The fields, as they were given, in ordinal order of their names.</param>
public sealed record SharedPeriod(DateTime FromUtc, DateTime ToUtc, ImmutableArray<string> Fields)
{
    /// <summary>All stretches in which wet periods of two fields or more overlap, each with every field that it fits, in order of time.</summary>
    public static ImmutableArray<SharedPeriod> Of(IEnumerable<ArrivalEstimate> estimates)
    {
        ArgumentNullException.ThrowIfNull(estimates);
        var ends = estimates.SelectMany(EndsOf).OrderBy(end => end.Utc).ThenBy(end => end.IsStart).ThenBy(end => end.Field, StringComparer.Ordinal).ToList();
        var shared = ImmutableArray.CreateBuilder<SharedPeriod>();
        var wet = new List<(string Field, DateTime From)>();
        bool wasStart = false;
        foreach (var end in ends)
        {
            if (end.IsStart) wet.Add((end.Field, end.Utc));
            else
            {
                // Between a start and the next end as many fields are wet together as will be.
                var fields = wet.Select(one => one.Field).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToImmutableArray();
                if (wasStart && fields.Length > 1) shared.Add(new SharedPeriod(wet.Max(one => one.From), end.Utc, fields));
                wet.RemoveAt(wet.FindIndex(one => one.Field == end.Field));
            }

            wasStart = end.IsStart;
        }

        return shared.ToImmutable();
    }

    private static IEnumerable<(DateTime Utc, bool IsStart, string Field)> EndsOf(ArrivalEstimate estimate)
    {
        var offset = TimeSpan.FromMinutes(estimate.Finding.Record.OffsetMinutes);
        return estimate.Periods.SelectMany(period => new[] { (period.From - offset, true, estimate.Finding.Field), (period.To - offset, false, estimate.Finding.Field) });
    }
}
