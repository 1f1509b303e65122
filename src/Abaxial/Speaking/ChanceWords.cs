using System.Globalization;
using Abaxial.Weighing;

namespace Abaxial.Speaking;

/// <summary>
/// Chances in words, never finer than the knowledge allows. The rule: a chance whose band is under 5 points wide is given in whole percents, under 20 points in steps
/// of five, else in steps of ten, and then said to be "about" that; a finer step is taken only where the coarse one would fall outside the band. What would round
/// to nothing is "under" one step, what would round to all is "over" all but one. The ends of a band are rounded outward to whole percents, so that what is said
/// is never narrower than what was worked out.
/// </summary>
public static class ChanceWords
{
    /// <summary>What arithmetic leaves on a whole percent.</summary>
    private const double Dust = 1e-9;

    private const double NarrowBand = 5, WideBand = 20;

    /// <summary>A chance with a band.</summary>
    public static string Of(CauseChance chance, Speech speech)
    {
        return InSteps(100 * chance.Probability, 100 * chance.Low, 100 * chance.High, speech);
    }

    /// <summary>What a chance would become. It has no band of its own: the band of today's, as wide in odds, is taken for it.</summary>
    public static string Becoming(double probability, CauseChance today, Speech speech)
    {
        double scale = probability * (1 - probability) / Math.Max(today.Probability * (1 - today.Probability), 1e-9);
        double low = probability - (scale * (today.Probability - today.Low)), high = probability + (scale * (today.High - today.Probability));
        return InSteps(100 * probability, 100 * Math.Max(0, low), 100 * Math.Min(1, high), speech);
    }

    /// <summary>A chance without a band, in whole percents.</summary>
    public static string Of(double probability, Speech speech) => InSteps(100 * probability, 100 * probability, 100 * probability, speech);

    /// <summary>The band; empty where the chance itself is said to be under or over its last whole percent.</summary>
    public static string Band(CauseChance chance, Speech speech)
    {
        int low = (int)Math.Floor((100 * chance.Low) + Dust), high = (int)Math.Ceiling((100 * chance.High) - Dust);
        if (high <= 1 || low >= 99) return "";
        if (low < 1) return speech.Say("percent.up-to", Number(high));
        return high > 99 ? speech.Say("percent.at-least", Number(low)) : speech.Say("percent.range", Number(low), Number(high));
    }

    /// <summary>A number as people write it, with at most one digit after the point.</summary>
    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string InSteps(double percent, double low, double high, Speech speech)
    {
        double width = high - low;
        int step = width < NarrowBand ? 1 : width < WideBand ? 5 : 10, said = Rounded(percent, step);
        if (step == 10 && !IsWithin(said, low, high)) said = Rounded(percent, step = 5);
        if (step == 5 && !IsWithin(said, low, high)) said = Rounded(percent, step = 1);
        if (said <= 0) return speech.Say("percent.under", Number(step));
        if (said >= 100) return speech.Say("percent.over", Number(100 - step));
        return speech.Say(step == 1 ? "percent.exact" : "percent.about", Number(said));
    }

    private static int Rounded(double percent, int step) => (int)Math.Round(percent / step, MidpointRounding.AwayFromZero) * step;

    /// <summary>Nothing and all are said as "under" and "over" a step: those hold wherever the band lies.</summary>
    private static bool IsWithin(int said, double low, double high) => said is <= 0 or >= 100 || (said >= Math.Floor(low) && said <= Math.Ceiling(high));
}
