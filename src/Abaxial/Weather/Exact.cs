namespace Abaxial.Weather;

/// <summary>Sums and means of decimal readings, freed of the last bits that binary fractions add, so that a limit that is met in decimals is met here.</summary>
internal static class Exact
{
    private const int Decimals = 9;

    public static double Rounded(double value) => Math.Round(value, Decimals, MidpointRounding.AwayFromZero);

    /// <summary>To the next whole number, halves up.</summary>
    public static double HalfUp(double value) => Math.Floor(Rounded(value) + 0.5);

    public static double Mean(double sum, int count) => Rounded(sum / count);

    public static double Fahrenheit(double celsius) => Rounded((celsius * 9 / 5) + 32);
}
