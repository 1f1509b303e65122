using System.Globalization;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>The numbers that will do at a place of a case file.</summary>
/// <param name="From">The least.</param>
/// <param name="To">The greatest; infinite where there is none.</param>
/// <param name="IsFromIncluded">Whether the least will do itself.</param>
/// <param name="What">What is asked for.</param>
internal readonly record struct CaseRange(double From, double To, bool IsFromIncluded = true, string What = "a number")
{
    /// <summary>Finite and over 0.</summary>
    public static CaseRange Positive { get; } = new(0, double.PositiveInfinity, IsFromIncluded: false);

    /// <summary>The number that a JSON value is; null where it is none or lies outside. Digits beyond a double's range are infinite and lie outside.</summary>
    public double? Reads(JsonElement value) => value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && Holds(number) ? number : null;

    public bool Holds(double number) => double.IsFinite(number) && (IsFromIncluded ? number >= From : number > From) && number <= To;

    /// <summary>The range in words: <c>a number over 0</c>, <c>a number from -90 to 90</c>.</summary>
    public override string ToString()
    {
        string least = $"{(IsFromIncluded ? (double.IsFinite(To) ? "from" : "of at least") : "over")} {Plain(From)}";
        string most = !double.IsFinite(To) ? "" : IsFromIncluded ? $" to {Plain(To)}" : $" and at most {Plain(To)}";
        return $"{What} {least}{most}";
    }

    private static string Plain(double number) => number.ToString(CultureInfo.InvariantCulture);
}
