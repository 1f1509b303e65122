using static Abaxial.Panel.Drawings.Parts.FruitPart;
using static Abaxial.Panel.Drawings.Parts.GrowthPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Marks, rots and growth of the tomato fruit.</summary>
internal static class Fruits
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("fruit-lesion-place",
            ("none", () => Green()),
            ("blossom-end", () => Green(BlossomEnd)),
            ("stem-end-or-shoulder", () => Green(Patch(Shape.Smooth(new(9.5, 20), new(17, 13.5), new(27, 14), new(38, 14), new(48, 14), new(54.5, 20), new(49, 27), new(40, 25), new(32, 30), new(23, 26), new(14, 28))))),
            ("sun-exposed-side", () => Fruit(Tint.Green, Patch(Shape.Smooth(new(57, 23), new(59, 33), new(56, 46), new(48, 49), new(41, 41), new(42, 29), new(49, 23)))) + Ink.Line("M59 8L55 11M61 14.5H57M54 3.5L52 7.5")),
            ("anywhere", () => Green(Patch(Shape.Blob(17, 35, 5, 0.08, 1)) + Patch(Shape.Blob(46, 28, 6, 0.08, 2)) + Patch(Shape.Blob(34, 51, 5.5, 0.08, 3))))),
        .. Sketch.Of("fruit-lesion-color",
            ("bronze-brown-mottled", () => Green(Mottled)),
            ("black", () => Green(Black(Spot))),
            ("bleached-white-to-tan", () => Green(Bleached(Spot) + Ink.Thin(Spot.Times(0.7).Path, Tint.Tan))),
            ("whitish-watery", () => Green(Ink.Fill(Spot, Tint.Water) + Texture.Dashes(Spot, 4.4, Tint.Soaked))),
            ("yellow-or-pale-rings", () => Ripe(Ink.Fill(Spot.Times(1.1), Tint.Yellow) + Ink.Fill(Spot.Times(0.78), Tint.Ripe) + Ink.Fill(Spot.Times(0.5), Tint.Yellow) + Ink.Fill(Spot.Times(0.24), Tint.Ripe) + Ink.Thin(Spot.Times(1.1).Path + Spot.Times(0.78).Path + Spot.Times(0.5).Path + Spot.Times(0.24).Path, Tint.Dark))),
            ("brown-gray-banded", () => Green(Banded(Spot.Times(1.15), Tint.Gray))),
            ("gray-green-greasy", () => Green(Soaked(Spot) + Ink.Line("M25 33Q29 29 34 30.5", Tint.White)))),
        .. Sketch.Of("fruit-lesion-size",
            ("pinprick-under-2mm", () => Green(Ink.Fill(Ink.Dots(Texture.Grid(Body, 5.6, 2, 5), 0.9), Tint.Dark))),
            ("small-2-5mm", () => Green(Ink.Each(Spots(2, new(16, 32), new(26, 44), new(40, 36), new(50, 44), new(48, 27), new(22, 28), new(36, 54)), spot => Ink.Edged(spot, Tint.Dead)))),
            ("medium-5-20mm", () => Green(Patch(Shape.Blob(21, 38, 5.5, 0.06, 1)) + Patch(Shape.Blob(43, 43, 6.5, 0.06, 3)))),
            ("large-over-20mm", () => Green(Patch(Shape.Blob(33, 41, 16, 0.07, 2, 14))))),
        .. Sketch.Of("fruit-marks",
            ("none", () => Ripe()),
            ("white-halo-around-spot", () => Ripe(Ink.Each(BirdsEyes, at => Ink.Edged(Shape.Blob(at.X, at.Y, 5.6), Tint.White) + Ink.Fill(Ink.Dots([at], 2.3), Tint.Dead) + Ink.Fill(Ink.Dots([at], 0.9), Tint.Dark)))),
            ("raised-scabby", () => Green(Ink.Each(BirdsEyes, Scab))),
            ("concentric-rings", () => Ripe(Ink.Edged(Spot, Tint.Dead) + Rings(Spot, 0.98, 0.66, 0.36) + Ink.Fill(Spot.Times(0.1), Tint.Dark))),
            ("ghost-rings", () => Ripe(Ink.Each(BirdsEyes, at => Ink.Line(Shape.Blob(at.X, at.Y, 5.4).Path, Tint.White) + Ink.Fill(Ink.Dots([at], 0.7), Tint.White)))),
            ("black-dots-in-sunken-spot", () => Ripe(Sunken)),
            ("target-band-smooth-edge", () => Green(Banded(Shape.Blob(32, 41, 19, 0.02, 1, 16), Tint.Tan))),
            ("pits", () => Ripe(Ink.Each(Pits, at => Ink.Fill(Ink.Dots([at], 1.9), Tint.Dark) + Ink.Line($"M{at + new Point(-2.2, 2.2)}q2.2 1.6 4.4 0", Tint.White)))),
            ("cracks", () => Ripe(Ink.Line("M26 24Q21 31 23 42T21 51M39 25Q44 33 42 44M48 22Q52 28 51 36M17 24Q13 31 14 38", Tint.Dark) + Ink.Fill("M26 24Q21 31 23 42Q27 34 26 24ZM39 25Q44 33 42 44Q39 35 39 25Z", Tint.Dark)))),
        .. Sketch.Of("fruit-growth",
            ("none", () => Green(Patch(Spot))),
            ("white-down", () => Green(Patch(Spot) + DownTufts(4.6, new(24, 34), new(36, 31), new(43, 40), new(33, 40), new(25, 45), new(36, 48)))),
            ("gray-brown-fuzz", () => Green(Ink.Edged(Spot, Tint.Dead) + Fuzz(Spot))),
            ("dark-velvet", () => Green(Velvet(Spot, Tint.Dark, Tint.Gray))),
            ("pink-orange-slime", () => Ripe(Ink.Edged(Spot, Tint.Dead) + Ink.Each(Drops, at => Ink.Edged(Shape.Blob(at.X, at.Y, 2.9, 0.1, (int)at.X), Tint.Pink) + Ink.Fill(Ink.Dots([at + new Point(-0.8, -0.8)], 0.6), Tint.White)))),
            ("white-cotton", () => Green(Cotton(Shape.Blob(33, 41, 16, 0.1, 2, 13))))),
        .. Sketch.Of("fruit-height",
            ("near-or-on-soil", () => Truss(3)),
            ("any-height", () => Truss(0, 1, 2, 3))),
        .. Sketch.Of("fruit-ripeness",
            ("green", () => Green(Ink.Line("M18 24Q13 32 14 44M26 26Q23 36 25 50M38 26Q41 36 39 50M46 24Q51 32 50 44", Tint.Vein))),
            ("ripening-or-ripe", () => Outlined(Tint.Ripe) + Ink.Line("M14 32Q15 25 20 21", Tint.White) + Ink.Line("M32 12Q33 7 36 3.5") + Ink.Outlined("M32 13L20 6L13 8.5L22 13L28 17L32 22L36 17L42 13L51 8.5L44 6Z", Tint.Leaf)),
            ("both", () => Both)),
        .. Sketch.Of("fruit-flesh",
            ("sound", () => Cut(Tint.Ripe)),
            ("firm-brown-inward", () => Cut(Tint.Ripe, Patch(Shape.Smooth(new(32, 7), new(47, 10), new(57, 21), new(60, 33), new(56, 44), new(45, 39), new(41, 27), new(33, 18))))),
            ("watery", () => Cut(Tint.Ripe, Ink.Edged(Pool, Tint.Water) + Texture.Dashes(Pool, 5, Tint.Soaked) + Ink.Edged("M47 50.5Q50 55 47 57Q44 55 47 50.5Z", Tint.Water))),
            ("vascular-brown", () => Cut(Tint.Ripe, Ink.Line("M32 33L46 14M32 33L18 14M32 33L9 41M32 33L55 41M32 33V56", Tint.Dead) + Ink.Fill(Ink.Dots(Shape.Blob(32, 33, 25.2, 0, 0, 23.2).Along(26), 1.3), Tint.Dead))),
            ("black-core", () => Cut(Tint.Ripe, Ink.Fill(Shape.Blob(32, 33, 11, 0.2, 1, 12), Tint.Dark) + Ink.Line("M32 33V14", Tint.Dark)))),
    ];

    private static readonly Shape Body = Shape.Blob(32, 39, 24, 0, 0, 18);
    private static readonly Shape Spot = Shape.Blob(33, 40, 15.5, 0.07, 2, 13.5);
    private static readonly Shape Pool = Shape.Blob(33, 34, 19, 0.16, 3, 17);
    private static readonly Point[] BirdsEyes = [new(18, 36), new(34, 47), new(46, 32)];
    private static readonly Point[] Pits = [new(15, 34), new(25, 42), new(34, 34), new(45, 42), new(50, 30), new(36, 52), new(20, 27), new(24, 53)];
    private static readonly Point[] Drops = [new(27, 34), new(35, 32), new(41, 38), new(36, 45), new(27, 43), new(33, 39)];

    private static string BlossomEnd
    {
        get
        {
            var end = Shape.Smooth(new(10, 49), new(20, 44), new(32, 42.5), new(44, 44), new(54, 49), new(44, 58), new(32, 60.5), new(20, 58));
            return Ink.Fill(end, Tint.Dark) + Ink.Thin("M18 50Q32 45 46 50M21 54.5Q32 50 43 54.5", Tint.Gray);
        }
    }

    private static string Mottled
    {
        get
        {
            var patch = Shape.Smooth(new(8, 22), new(20, 14), new(32, 16), new(46, 13.5), new(55, 21), new(57, 33), new(50, 45), new(38, 43), new(29, 50), new(16, 46), new(7, 36));
            return Bronze(patch, 4.6) + Ink.Each([Shape.Blob(20, 34, 4.5, 0.25, 1), Shape.Blob(35, 35, 5, 0.25, 3), Shape.Blob(48, 29, 4, 0.25, 5), Shape.Blob(27, 43, 2.6, 0.25, 2)], spot => Ink.Fill(spot, Tint.Dead) + Ink.Thin(spot.Path, Tint.Dark));
        }
    }

    private static string Sunken => Ink.Fill(Spot, Tint.Dead) + Ink.Line("M19 35Q23 27 33 27Q43 27 47.5 35", Tint.Dark) + Ink.Thin("M19.5 46Q25 53 33 53Q42 53 47 46", Tint.White)
        + Ink.Fill(Ink.Dots([new(33, 39), new(29, 36), new(37, 36), new(29, 42), new(37, 42), new(33, 33), new(33, 45), new(25, 39), new(41, 39)], 1.1), Tint.Dark);

    private static string Both =>
        Ink.Outlined(Shape.Blob(21, 36, 17.5), Tint.Green) + Ink.Thin("M14 28Q11 36 13 44M21 28V46M28 28Q31 36 29 44", Tint.Vein) + Small(21, 19)
        + Ink.Outlined(Shape.Blob(46, 46, 14.5), Tint.Ripe) + Ink.Line("M37 44Q38 39 42 36.5", Tint.White) + Small(46, 32);

    private static string Small(double x, double y) =>
        Ink.Line($"M{new Point(x, y)}l1-5") + Ink.Outlined(Shape.Straight(new(x, y - 1), new(x + 9, y), new(x + 4, y + 2.5), new(x, y + 7), new(x - 4, y + 2.5), new(x - 9, y)), Tint.Leaf);

    private static string Outlined(string tint) => Ink.Outlined(Outline, tint);

    private static string Banded(Shape shape, string light) =>
        Ink.Fill(shape, Tint.Dead) + Ink.Fill(shape.Times(0.82), light) + Ink.Fill(shape.Times(0.62), Tint.Dead) + Ink.Fill(shape.Times(0.42), light) + Ink.Fill(shape.Times(0.2), Tint.Dead);

    private static string Scab(Point at)
    {
        var crust = Shape.Blob(at.X, at.Y, 5, 0.22, (int)at.X);
        return Ink.Fill(Shape.Blob(at.X + 0.9, at.Y + 1.2, 5.2, 0.22, (int)at.X), Tint.Dark) + Ink.Edged(crust, Tint.Tan) + Texture.Flecks(crust, 3, Tint.Dark);
    }

    /// <summary>A plant with fruit at four heights, some of it spotted. The last hangs on the ground.</summary>
    private static string Truss(params int[] spotted)
    {
        Point[] at = [new(45, 12), new(19, 22), new(45, 33), new(20, 49)];
        return Ink.Line("M3 57.5H61") + Ink.Line("M32 57.5V3M32 8Q40 6 45 8M32 18Q24 16 19 17M32 29Q40 27 45 28M32 40Q22 38 20 43")
            + Ink.Each(Enumerable.Range(0, 4), fruit => Ink.Outlined(Shape.Blob(at[fruit].X, at[fruit].Y, 7.3), Tint.Green) + (spotted.Contains(fruit) ? Ink.Fill(Shape.Blob(at[fruit].X + 0.5, at[fruit].Y + 1, 4.2, 0.1, fruit), Tint.Dark) : ""));
    }
}
