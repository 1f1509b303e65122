using static Abaxial.Panel.Drawings.Parts.LeafPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Yellowing and change of shape of the whole leaf; what the sample looks like.</summary>
internal static class LeafChanges
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("leaf-yellowing",
            ("none", () => Upper),
            ("around-spots", () => Upper + string.Concat(Spots(7.8, new(21, 40), new(43, 35), new(29, 19)).Select(halo => Yellow(halo, halo.Times(0.5)) + Ink.Edged(halo.Times(0.45), Tint.Dead)))),
            ("between-veins", () => Upper + string.Concat(BetweenVeins.Select(between => Yellow(between)))),
            ("leaf-margins", () => Upper + Yellow(AlongMargin(-0.44, 0.44, 0.25)) + Margin),
            ("one-side-of-leaf", () => Upper + Yellow(Half) + Veins + Margin),
            ("whole-leaf", () => Blade(Tint.Yellow) + Texture.Dots(Outline, 4.2, 0.55, Tint.Dark, 2.4, 3) + Veins)),
        .. Sketch.Of("leaf-distortion",
            ("none", () => Upper),
            ("cupped-or-strap-like", () => Straps),
            ("rolled", () => Rolled),
            ("puckered-or-mottled", () => Puckered),
            ("mosaic", () => Blade(Tint.Pale) + string.Concat(Islands.Select(island => Ink.Fill(island, Tint.Soaked))) + Ink.Thin("M32 57V7", Tint.Vein) + Margin),
            ("blistered", () => Upper + string.Concat(Blisters.Select(at => Ink.Edged(Shape.Blob(at.X, at.Y, 3.9), Tint.Pale) + Ink.Thin($"M{at + new Point(-1.8, -0.6)}q.6-1.8 2.6-1.7", Tint.Dark))))),
        .. Sketch.Of("sample-condition",
            ("fresh", () => Upper),
            ("wilted", () => Wilted),
            ("dried", () => Dried),
            ("rotted", () => Rotted),
            ("sprayed", () => Upper + string.Concat(Residue.Select(drop => Ink.Edged(Shape.Blob(drop.X, drop.Y, 2.6, 0.12, (int)drop.X), Tint.White) + Ink.Fill(Ink.Dots([drop], 0.7), Tint.Gray))))),
    ];

    private static readonly Shape Half = Shape.Smooth(new(32, 3), new(32, 20), new(32, 40), new(32, 57), new(17, 52), new(9, 42), new(8, 30), new(14, 18), new(23, 9));

    private static readonly Point[] Blisters = [new(20, 42), new(28, 34), new(41, 44), new(45, 32), new(18, 28), new(37, 24), new(27, 18)];

    private static readonly Point[] Residue = [new(17, 33), new(23, 45), new(26, 22), new(27, 35), new(38, 13), new(38, 30), new(40, 47), new(47, 37), new(46, 21), new(16, 24), new(34, 52)];

    private static readonly Shape[] Islands =
    [
        Shape.Blob(20, 43, 6.5, 0.3, 1, 5), Shape.Blob(41, 46, 7, 0.3, 2, 4.5), Shape.Blob(46, 31, 5.5, 0.3, 3, 7), Shape.Blob(17, 27, 5, 0.3, 4, 6), Shape.Blob(38, 17, 4.5, 0.3, 5, 5.5), Shape.Blob(28, 33, 3.4, 0.3, 6, 5), Shape.Blob(26, 15, 3, 0.3, 7, 4),
    ];

    private static string Straps
    {
        get
        {
            var strap = Shape.Smooth(new(32, 3), new(35, 12), new(34, 22), new(38, 31), new(36, 42), new(38, 50), new(32, 57), new(27, 50), new(29, 42), new(26, 31), new(30, 22), new(28, 12));
            var left = Shape.Smooth(new(8, 14), new(14, 20), new(16, 30), new(24, 40), new(30, 52), new(19, 44), new(11, 33), new(7, 23));
            var right = Shape.Smooth(new(57, 12), new(58, 22), new(52, 33), new(45, 44), new(34, 52), new(41, 40), new(48, 29), new(50, 19));
            return Ink.Outlined(left, Tint.Leaf) + Ink.Outlined(right, Tint.Leaf) + Ink.Outlined(strap, Tint.Leaf) + Stalk
                + Ink.Thin("M32 55V8M30 50Q28 42 29 33M34.5 50Q33 42 35 33M27 47Q16 36 11 21M38 46Q50 33 54.5 18", Tint.Vein);
        }
    }

    private static string Rolled
    {
        get
        {
            var open = Shape.Smooth(new(32, 3), new(42, 14), new(48, 28), new(45, 44), new(32, 57), new(19, 44), new(16, 28), new(22, 14));
            var left = Shape.Smooth(new(31, 4), new(21, 11), new(13, 26), new(14, 42), new(22, 54), new(27, 54), new(22, 43), new(21, 28), new(25, 14));
            var right = Shape.Smooth(new(33, 4), new(43, 11), new(51, 26), new(50, 42), new(42, 54), new(37, 54), new(42, 43), new(43, 28), new(39, 14));
            return Ink.Outlined(open, Tint.Leaf) + Ink.Thin("M32 56V7M32 48l7-5M32 48l-7-5M32 38l9-6M32 38l-9-6M32 27l9-6M32 27l-9-6M32 17l5-4M32 17l-5-4", Tint.Vein)
                + Ink.Outlined(left, Tint.Under) + Ink.Outlined(right, Tint.Under) + Stalk + Ink.Thin("M18 24Q16 36 20 47M46 24Q48 36 44 47", Tint.UnderVein);
        }
    }

    private static string Puckered
    {
        get
        {
            var wavy = Shape.Smooth([.. Outline.Along(24).Select((point, index) => new Point(32, 32) + ((point - new Point(32, 32)) * (index % 2 == 0 ? 1.0 : 0.92)))]);
            string puckers = string.Concat(BetweenVeins.Select(between => $"M{between.Middle + new Point(-5, 1.5)}q2.5-5 5-.6q2.5-4 5 .8"));
            return Ink.Outlined(wavy, Tint.Leaf) + Stalk + Ink.Thin("M32 56V9", Tint.Vein) + string.Concat(BetweenVeins.Select(between => Ink.Fill(between.Times(0.7), Tint.Pale))) + Ink.Thin(puckers, Tint.Dark);
        }
    }

    private static string Wilted => Ink.Line("M6 60Q8 20 24 8Q32 3 38 9") + Ink.Outlined(
        Shape.Smooth(new(38, 9), new(46, 15), new(53, 28), new(55, 42), new(50, 54), new(44, 60), new(37, 52), new(31, 40), new(30, 26), new(33, 15)), Tint.Leaf)
        + Ink.Thin("M38 9Q44 24 44 57M40 20Q46 22 50 31M40 20Q36 22 33.5 30M43 34Q49 36 52 45M43 34Q38 36 35 43", Tint.Vein) + Ink.Line("M33.5 20Q38 32 35 45", Tint.Vein);

    private static string Dried
    {
        get
        {
            var curled = Shape.Smooth(new(36, 5), new(39, 10), new(36, 15), new(42, 19), new(44, 25), new(40, 30), new(46, 34), new(45, 41), new(39, 44), new(40, 50), new(32, 57), new(26, 51), new(20, 51), new(21, 44), new(14, 40), new(18, 34), new(15, 27), new(22, 24), new(21, 17), new(28, 15), new(29, 8));
            return Ink.Outlined(curled, Tint.Tan) + Stalk + Ink.Thin("M32 57Q29 44 32 32T33 12M31 46l7-5M31 46l-7-4M31.5 34l7-3M31.5 34l-9-4M33 22l6 0M33 22l-7 0", Tint.Dark) + Ink.Line("M39 31Q35 32 36 36M19 33.5Q24 33 24 37M36 15Q33 17 35 20M21 44.5Q26 43 26 47", Tint.Dark);
        }
    }

    private static string Rotted
    {
        get
        {
            var slump = Shape.Smooth(new(32, 3), new(41, 9), new(50, 18), new(56, 30), new(57, 44), new(51, 50), new(47, 58), new(43, 50), new(36, 53), new(32, 61), new(27, 52), new(20, 53), new(15, 60.5), new(11, 48), new(8, 32), new(14, 18), new(23, 9));
            return Ink.Outlined(slump, Tint.Dark) + Ink.Line("M32 50V9M32 40Q42 38 50 30M32 40Q22 38 14 30M32 27Q40 25 45 18M32 27Q24 25 19 18", Tint.Soaked) + Texture.Dashes(slump.Times(0.84), 7, Tint.White);
        }
    }
}
