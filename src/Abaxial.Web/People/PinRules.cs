namespace Abaxial.Web.People;

/// <summary>What a PIN has to be.</summary>
internal static class PinRules
{
    public const int Shortest = 4;
    public const int Longest = 12;

    /// <summary>So many wrong ones end it until its person signs in otherwise.</summary>
    public const int MostFailures = 5;

    /// <summary>Digits, neither all the same nor counting up or down.</summary>
    public static bool IsOne(string pin)
    {
        if (pin.Length is < Shortest or > Longest || !pin.All(char.IsAsciiDigit)) return false;
        var steps = pin.Zip(pin.Skip(1), (one, next) => next - one).Distinct().ToList();
        return steps is not [-1 or 0 or 1];
    }
}
