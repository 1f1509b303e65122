using Abaxial.Panel.Drawings.Parts;
using static Abaxial.Panel.Drawings.Parts.LesionPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Which part of the plant is affected: the part with a brown place on it.</summary>
internal static class Organs
{
    public static IEnumerable<Sketch> All => Sketch.Of("organs-affected",
        ("leaf", () => Compound(tip: true)),
        ("stem", () => StemPart.Stem(Patch(Shape.Smooth(new(23, 34), new(32, 31), new(40.5, 38), new(40, 48), new(31, 52), new(23, 47))))),
        ("fruit", () => FruitPart.Ripe(Patch(Shape.Blob(37, 42, 10, 0.1, 2)))),
        ("tuber", () => TuberPart.Skin(Patch(Shape.Blob(40, 31, 10, 0.1, 2)))),
        ("flower", () => Flower),
        ("whole-plant", () => PlantPart.Ground + Ink.Line("M32 57V14", Tint.Dead) + PlantPart.Plant(0, 1, 2, 3, 4, 5, 6) + Ink.Fill("M31 56V15H33V56Z", Tint.Dark)),
        ("petiole", () => Compound(tip: false) + Ink.Fill("M30.5 36Q34 42 33.5 48T30.5 60Q29 52 30.5 46T30.5 36Z", Tint.Dark) + Ink.Line("M32 37V60", Tint.Dead)),
        ("calyx", () => FruitPart.Fruit(Tint.Ripe) + FruitPart.Sepals(Tint.Dead) + Texture.Hatch(FruitPart.Calyx, 2.6, -45, Tint.Dark)),
        ("root", () => PlantPart.Blade(new(32, 18), -140, 20, false) + PlantPart.Blade(new(32, 18), -40, 20, false) + Ink.Line("M2.5 25H61.5M32 18V25")
            + Ink.Line("M32 27V60M32 31Q20 34 12 44M32 31Q44 34 52 44M32 40Q24 44 20 56M32 40Q40 44 44 56", Tint.Dead) + Ink.Outlined("M28 25Q29 38 32 50Q35 38 36 25Z", Tint.Dead)));

    private static string Compound(bool tip)
    {
        string leaf = Ink.Line("M32 61V20") + PlantPart.Blade(new(32, 24), -90, 21, false, 0.36) + PlantPart.Blade(new(32, 33), -155, 24, false, 0.3) + PlantPart.Blade(new(32, 33), -25, 24, false, 0.3)
            + PlantPart.Blade(new(32, 47), -170, 22, false, 0.3) + PlantPart.Blade(new(32, 47), -10, 22, false, 0.3);
        return tip ? leaf + Patch(Shape.Blob(32, 13.5, 4.2, 0.1, 1, 5)) + Patch(Shape.Blob(19, 27, 4.6, 0.1, 2, 3.2)) : leaf;
    }

    private static string Flower
    {
        get
        {
            var center = new Point(32, 30);
            var star = Shape.Smooth([.. Enumerable.Range(0, 10).Select(index => center.Toward((index * 36) - 90, index % 2 == 0 ? 27 : 11.5))]);
            return Ink.Line("M32 40V61.5") + Ink.Outlined(star, Tint.Yellow) + Patch(Shape.Smooth(new(40, 34), new(46, 36), new(49, 48), new(46, 51), new(39, 43))) + Ink.Line(star.Path) + Ink.Outlined("M28.5 34L32 20.5L35.5 34Q32 37.5 28.5 34Z", Tint.Orange);
        }
    }
}
