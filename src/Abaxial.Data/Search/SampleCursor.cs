using System.Globalization;

namespace Abaxial.Data.Search;

/// <summary>The place in a list after which the next page begins. It holds however many samples come in meanwhile.</summary>
/// <param name="Key">The key of the last sample.</param>
/// <param name="Waiting">What it costs to leave that sample waiting; null in a list by time.</param>
public sealed record SampleCursor(long Key, double? Waiting)
{
    /// <summary>As it is written in an address: <c>58512345678901</c>, or with the cost before it <c>0.75~58512345678901</c>.</summary>
    public override string ToString() => Waiting is { } cost ? string.Create(CultureInfo.InvariantCulture, $"{cost:R}~{Key}") : Key.ToString(CultureInfo.InvariantCulture);

    /// <summary>Reads one; false where it is none.</summary>
    public static bool TryParse(string text, out SampleCursor cursor)
    {
        ArgumentNullException.ThrowIfNull(text);
        cursor = new SampleCursor(0, null);
        int mark = text.IndexOf('~', StringComparison.Ordinal);
        double cost = 0;
        if (mark >= 0 && (!double.TryParse(text.AsSpan(0, mark), NumberStyles.Float, CultureInfo.InvariantCulture, out cost) || !double.IsFinite(cost))) return false;
        if (!long.TryParse(text.AsSpan(mark + 1), NumberStyles.None, CultureInfo.InvariantCulture, out long key)) return false;
        cursor = new SampleCursor(key, mark >= 0 ? cost : null);
        return true;
    }
}
