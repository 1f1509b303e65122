using static Abaxial.Panel.Drawings.Parts.LeafPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>What the surface was like when growth was looked for: not states of a character, but chosen beside them, under the name <c>surface</c>.</summary>
internal static class Surfaces
{
    /// <summary>The name under which these are found.</summary>
    public const string Name = "surface";

    public static IEnumerable<Sketch> All => Sketch.Of(Name,
        ("dry-day", () => Small + Ink.Outlined(Shape.Blob(52, 12, 5), Tint.Yellow) + Ink.Line("M52 2.5V4M52 20V21.5M42.5 12H44M60 12H61.5M45.5 5.5L46.5 6.5M58.5 5.5L57.5 6.5M58.5 18.5L57.5 17.5M45.5 18.5L46.5 17.5")),
        ("wet-morning", () => Upper + string.Concat(Drops.Select(at => Ink.Edged($"M{at + new Point(0, -4.4)}Q{at + new Point(3.6, 0.4)} {at + new Point(2.6, 2.2)}Q{at + new Point(0, 4.6)} {at + new Point(-2.6, 2.2)}Q{at + new Point(-3.6, 0.4)} {at + new Point(0, -4.4)}Z", Tint.Water)))),
        ("bagged-in-transit", () => Ink.Outlined("M9 14Q6 34 8 61.5H56Q58 34 55 14Z", Tint.Water) + Small + Ink.Line("M6 14H58M6 9H58M6 9V14M58 9V14M14 22Q13 30 14 36M50 46Q51 52 50 57")),
        ("moist-chamber", () => Ink.Outlined("M5 34H59L55 58H9Z", Tint.Water) + Ink.Outlined("M10 50H54L53 56H11Z", Tint.White) + Ink.Line("M16 53H20M26 53H30M36 53H40M46 53H49") + Lying + Ink.Line("M5 34H59L55 58H9Z") + Ink.Outlined("M2.5 34Q4 22 14 22H50Q60 22 61.5 34Z", Tint.Sheet) + Ink.Line("M27 22Q27 17 32 17T37 22M18 29q0 2 1 2M32 27q0 2 1 2M45 29q0 2 1 2")));

    private static readonly Point[] Drops = [new(22, 42), new(42, 44), new(46, 30), new(31, 32), new(19, 28), new(33, 17)];

    private static string Lying => Ink.Outlined("M12 48Q20 40 34 41Q46 42 52 48Q44 51 32 50.5Q20 51 12 48Z", Tint.Leaf) + Ink.Thin("M12 48Q30 45 52 48", Tint.Vein);

    private static string Small
    {
        get
        {
            var blade = Shape.Smooth(new(32, 20), new(40, 26), new(46, 36), new(45, 46), new(32, 54), new(19, 46), new(18, 36), new(24, 26));
            return Ink.Outlined(blade, Tint.Leaf) + Ink.Line("M32 54V59") + Ink.Thin("M32 54V23M32 47Q38 46 42 42M32 47Q26 46 22 42M32 38Q38 36 42 31M32 38Q26 36 22 31", Tint.Vein);
        }
    }
}
