using static Abaxial.Panel.Drawings.Parts.PlantPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>The whole plant: which leaves, wilting, watering.</summary>
internal static class Plants
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("leaf-position",
            ("lower-leaves-first", () => Plant(0, 1)),
            ("middle-canopy", () => Plant(2, 3)),
            ("upper-or-exposed-leaves", () => Plant(4, 5)),
            ("young-growth", () => Plant(6)),
            ("whole-canopy", () => Plant(0, 1, 2, 3, 4, 5, 6)),
            ("one-side-of-plant", () => Plant(1, 3, 5))),
        .. Sketch.Of("wilting",
            ("none", () => Plant()),
            ("whole-plant", () => Ground + Ink.Line("M32 57Q31 30 33 14Q35 8 40 11") + Limp(-1) + Limp(1) + Blade(new(40, 11), 80, 12, affected: false, wide: 0.2)),
            ("one-sided", () => Ground + Ink.Line("M32 57V14") + Limp(1) + Standing(-1) + Blade(new(32, 16), -100, 13, affected: false, wide: 0.32)),
            ("single-stem", () => Ground + Ink.Line("M28 57L14 16M32 57V12M36 57Q44 36 47 22Q49 16 53 19")
                + Blade(new(24, 46), 178, 15, false) + Blade(new(19, 31), 186, 15, false) + Blade(new(14, 17), -105, 13, false)
                + Blade(new(32, 40), -150, 13, false) + Blade(new(32, 29), -30, 13, false) + Blade(new(32, 22), -150, 13, false) + Blade(new(32, 13), -90, 11, false)
                + Hanging(new(41, 40), 1, 6, 14) + Hanging(new(45, 28), 1, 8, 14) + Hanging(new(44, 32), -1, 4, 12) + Blade(new(53, 19), 80, 11, false, 0.2)),
            ("midday-only", () => Ground + Ink.Line("M30 57Q29 32 31 20Q32 15 36 17") + string.Concat(new[] { 46.0, 34 }.Select(y => Hanging(new(30, y), -1, 8, 13) + Hanging(new(30, y - 2), 1, 8, 13))) + Blade(new(36, 17), 80, 11, affected: false, wide: 0.2) + Sun)),
        .. Sketch.Of("watering",
            ("overhead", () => Low + Ink.Line("M2.5 5H61.5M16 5V9M48 5V9M10 12L7 18M14 13L13 20M18 13L19 20M22 12L25 18M42 12L39 18M46 13L45 20M50 13L51 20M54 12L57 18")),
            ("at-soil-level", () => Low + Ink.Fill("M4 59H60V62H4Z", Tint.Water) + Ink.Outlined(Shape.Blob(10, 54, 2.5), Tint.Water) + Ink.Outlined(Shape.Blob(54, 54, 2.5), Tint.Water) + Ink.Line("M10 51.5V44H2.5M54 51.5V44H61.5M20 61H26M38 61H44")),
            ("rain-only", () => Low + Ink.Outlined("M5 13Q1.5 8 8 6Q12 1.5 18 5Q24 6 21 13Z", Tint.Water) + Ink.Outlined("M43 13Q39.5 8 46 6Q50 1.5 56 5Q62 6 59 13Z", Tint.Water) + Ink.Line("M7 17L5.5 21M13 17L11.5 21M19 17L17.5 21M45 17L43.5 21M51 17L49.5 21M57 17L55.5 21"))),
    ];

    /// <summary>A low plant that leaves room above it.</summary>
    private static string Low => Ground + Ink.Line("M32 57V34") + Blade(new(32, 50), 184, 20, false) + Blade(new(32, 50), -4, 20, false) + Blade(new(32, 42), 212, 18, false) + Blade(new(32, 42), -32, 18, false) + Blade(new(32, 37), -90, 13, false, 0.32);

    private static string Sun => Ink.Outlined(Shape.Blob(53, 11, 4.5), Tint.Yellow) + Ink.Line("M53 2V3.5M53 18.5V20M44 11H45.5M60.5 11H62M46.5 4.5L47.5 5.5M59.5 4.5L58.5 5.5M46.5 17.5L47.5 16.5M59.5 17.5L58.5 16.5");

    private static string Limp(int side) => string.Concat(new[] { 44.0, 31, 19 }.Select((y, index) => Hanging(new(32, y), side, 11 - index, 15 - index)));

    private static string Standing(int side)
    {
        double Turned(double degrees) => side > 0 ? degrees : 180 - degrees;
        return Blade(new(32, 46), Turned(8), 25, false) + Blade(new(32, 34), Turned(-12), 22, false) + Blade(new(32, 22), Turned(-32), 18, false);
    }
}
