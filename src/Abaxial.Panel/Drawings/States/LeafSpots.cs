using static Abaxial.Panel.Drawings.Parts.LeafPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Size, shape, color, border and detail of the spots on the upper side of the leaf.</summary>
internal static class LeafSpots
{
    private static readonly Point[] Three = [new(22, 41), new(42, 34), new(30, 20)];
    private static readonly Point[] Many = [new(20, 43), new(41, 46), new(46, 33), new(17, 30), new(28, 36), new(37, 19), new(26, 20), new(38, 30), new(30, 48)];

    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("leaf-lesion-size",
            ("pinprick-under-2mm", () => Upper + Ink.Fill(Ink.Dots(Texture.Grid(Outline, 6, 3.4, 8), 0.9), Tint.Dark)),
            ("small-2-5mm", () => Upper + Ink.Each(Spots(2.1, Many), shape => Ink.Edged(shape, Tint.Dead))),
            ("medium-5-12mm", () => Upper + Ink.Each(Spots(4.6, Three), shape => Ink.Edged(shape, Tint.Dead) + Texture.Hatch(shape, 2.8, -45, Tint.Dark))),
            ("large-12-25mm", () => Upper + Patch(Shape.Blob(36, 36, 9.6, 0.08, 1))),
            ("blotch-over-25mm", () => Upper + Patch(Shape.Blob(32, 34, 19, 0.13, 4, 17)))),
        .. Sketch.Of("leaf-lesion-shape",
            ("no-lesions", () => Upper),
            ("round", () => Upper + Ink.Each(Three, at => Patch(Shape.Blob(at.X, at.Y, 6)))),
            ("angular-vein-bound", () => Upper + Ink.Each(Angular, shape => Patch(shape)) + Veins),
            ("irregular", () => Upper + Patch(Shape.Blob(39, 39, 10, 0.3, 1, 8.5)) + Patch(Shape.Blob(22, 25, 7.5, 0.34, 4, 6.5))),
            ("wedge-from-margin", () => Upper + Wedge),
            ("margin-scorch", () => Upper + Dead(AlongMargin(-0.37, 0.37, 0.27), 3) + Margin),
            ("ring-pattern", () => Upper + Ink.Each(RingMarks, ring => Ink.Line(ring.Path, Tint.Yellow) + Ink.Line(ring.Times(0.48).Path, Tint.Yellow) + Ink.Thin(ring.Times(0.74).Path, Tint.Dark))),
            ("diffuse-patch", () => Upper + Diffuse(Shape.Blob(31, 34, 17, 0.1, 2))),
            ("fine-stipple", () => Upper + Ink.Fill(Ink.Dots(Texture.Grid(Outline, 3.9, 2.4, 4), 0.75), Tint.White)),
            ("torn-or-tattered", () => Tattered)),
        .. Sketch.Of("leaf-lesion-color",
            ("dark-brown-to-black", () => Upper + Black(Spot)),
            ("gray-green-water-soaked", () => Upper + Soaked(Spot)),
            ("tan-center-dark-rim", () => Upper + TanWithRim(Spot)),
            ("reddish-or-purple-brown", () => Upper + Purple(Spot)),
            ("bronze", () => Upper + Bronze(Shape.Blob(32, 33, 18, 0.1, 3))),
            ("bleached-white", () => Upper + Bleached(Spot)),
            ("yellow-only", () => Upper + Yellow(Spot))),
        .. Sketch.Of("leaf-lesion-border",
            ("pale-green-soaked-edge", () => Upper + SoakedEdge),
            ("yellow-halo", () => Upper + Yellow(Core.Times(1.58), Core) + Patch(Core)),
            ("sharp-dark-rim", () => Upper + Ink.Fill(Core.Times(1.18), Tint.Dark) + Ink.Fill(Core, Tint.Dead) + Texture.Hatch(Core, 3.4, -45, Tint.Dark)),
            ("no-distinct-border", () => Upper + Ink.Fill(Core.Times(0.72), Tint.Dead) + Ink.Fill(Ink.Dots(Texture.Grid(Core.Times(1.5), 2.9, 0.4, 3), 0.95), Tint.Dead))),
        .. Sketch.Of("concentric-rings",
            ("clear", () => Upper + Ink.Edged(Large, Tint.Dead) + Rings(Large, 0.98, 0.68, 0.39) + Ink.Fill(Large.Times(0.12), Tint.Dark)),
            ("faint", () => Upper + Ink.Edged(Large, Tint.Dead) + Ink.Each([0.7, 0.4], size => Ink.Thin(Broken(Large.Times(size)), Tint.Dark))),
            ("absent", () => PlainSpot)),
        .. Sketch.Of("pycnidia",
            ("present", () => Upper + TanWithRim(Large) + Texture.Dots(Large, 5.6, 1.3, Tint.Dark, 4, 5)),
            ("absent", () => Upper + TanWithRim(Large))),
        .. Sketch.Of("shot-holes",
            ("present", () => Upper + Ink.Each(Holes, hole => Ink.Fill(hole.Times(1.3), Tint.Dead) + Ink.Outlined(hole, Tint.Sheet))),
            ("absent", () => Upper + Ink.Each(Holes, hole => Patch(hole.Times(1.3))))),
        .. Sketch.Of("dead-center",
            ("brown-dead-center", () => Upper + Yellow(Large.Times(1.1), Large.Times(0.6)) + Dead(Large.Times(0.6)) + Ink.Thin(Large.Times(0.6).Path, Tint.Dark)),
            ("no-dead-center", () => Upper + Yellow(Large.Times(1.1)))),
    ];

    /// <summary>A brown spot with nothing particular about it.</summary>
    internal static string PlainSpot => Upper + Patch(Large);

    private static readonly Shape Spot = Shape.Blob(32, 34, 17, 0.16, 1, 15.5);
    private static readonly Shape Core = Shape.Blob(32, 34, 12.5, 0.08, 2);
    private static readonly Shape[] Holes = [Shape.Blob(20, 40, 4.8, 0.05, 1), Shape.Blob(41, 44, 4.4, 0.05, 3), Shape.Blob(43, 28, 5, 0.05, 2), Shape.Blob(25, 23, 4)];
    private static readonly Shape[] RingMarks = [Shape.Blob(20, 36, 7.5, 0.08, 1), Shape.Blob(43, 34, 8.5, 0.08, 3), Shape.Blob(31, 19, 6, 0.08, 5)];

    private static readonly Shape[] Angular =
    [
        Shape.Straight(new(33, 41), new(40, 38), new(44, 35), new(48, 42.5), new(42, 45.5), new(33, 48.5)),
        Shape.Straight(new(31, 29.5), new(24, 26.5), new(20, 22), new(14, 27.5), new(22, 34), new(31, 37)),
        Shape.Straight(new(33, 19), new(37, 16), new(40, 12.5), new(45, 18), new(40, 22), new(33, 25)),
        Shape.Straight(new(22, 46), new(17, 42), new(13, 38), new(17.5, 34.5), new(24, 38), new(25, 43)),
    ];

    private static string SoakedEdge
    {
        get
        {
            var edge = Shape.Blob(32, 34, 19.5, 0.1, 2);
            return Ink.Fill(edge, Tint.Pale) + Texture.Dashes(edge, 4.2, Tint.Soaked, Core.Times(1.05)) + Dead(Core);
        }
    }

    private static string Wedge
    {
        get
        {
            var wedge = Shape.Straight(new(14, 18), new(23, 9), new(32, 3), new(41, 9), new(50, 18), new(41, 29), new(32, 44), new(23, 29));
            var yellow = Shape.Straight(new(9.5, 26), new(14, 18), new(23, 9), new(32, 3), new(41, 9), new(50, 18), new(54.5, 26), new(43, 35), new(32, 51), new(21, 35));
            return Yellow(yellow, wedge) + Dead(wedge) + Ink.Thin("M14 18L23 29L32 44L41 29L50 18", Tint.Dark) + Margin;
        }
    }

    private static string Tattered
    {
        get
        {
            var torn = Shape.Straight(
                new(32, 3), new(37, 6), new(44, 11.5), new(50, 18), new(54, 25), new(55.8, 31), new(47, 30), new(40, 34), new(48, 34.5), new(56, 36), new(55, 42), new(51.5, 48), new(47, 52), new(43, 45),
                new(42, 54.5), new(32, 57), new(22, 54.5), new(15, 50.5), new(22, 44), new(12, 47), new(9, 42), new(8, 34), new(8.3, 28), new(11, 22.5), new(17, 27), new(22, 26), new(16, 22), new(14, 18), new(19, 12.5), new(25, 8));
            var hole = Shape.Straight(new(36, 35), new(40, 37), new(38, 42), new(34, 40));
            return Ink.Outlined(torn, Tint.Leaf) + Stalk + Ink.Thin("M32 57V7M32 39Q22 37 12 30M32 27Q41 25 47 17M32 50Q37 50 41 48M32 17Q28 16 25 11M32 27Q27 26 24 23", Tint.Vein) + Ink.Outlined(hole, Tint.Sheet)
                + Ink.Outlined(Shape.Straight(new(22, 25), new(27, 27), new(24, 32)), Tint.Sheet);
        }
    }

    private static string Diffuse(Shape shape) => Ink.Fill(Ink.Dots(Texture.Grid(shape, 3.1, 0.2, 3), 1.05), Tint.Dead) + Ink.Fill(Ink.Dots(Texture.Grid(shape.Times(0.55), 3.1, 0.2, 3), 1.6), Tint.Dead);

    private static string Broken(Shape shape)
    {
        var points = shape.Along(42);
        return string.Concat(Enumerable.Range(0, 42).Where(index => index % 6 < 3).Select(index => $"M{points[index]}L{points[(index + 1) % 42]}"));
    }
}
