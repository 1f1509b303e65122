using static Abaxial.Panel.Drawings.Parts.LesionPart;
using static Abaxial.Panel.Drawings.Parts.TuberPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>The flesh of the cut potato tuber: kinds of rot, their edge and depth.</summary>
internal static class CutTubers
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("tuber-flesh",
            ("clean", () => Cut()),
            ("reddish-brown-granular-firm", () => Cut(Granular)),
            ("cream-soft-rot", () => Cut(Cream)),
            ("pink-within-half-hour-of-cutting", () => Cut(Ink.Edged(FromStemEnd, Tint.Pink) + Texture.Hatch(FromStemEnd, 3.6, 0, Tint.Dark) + Watch)),
            ("smoky-black-watery", () => Cut(Smoky, ring: false)),
            ("brown-dry-with-cavities", () => Cut(Cavities)),
            ("vascular-ring-cheesy", () => Cut(Cheesy, ring: false)),
            ("necrotic-arcs-and-rings", () => Cut(Ink.Line("M13 38Q14 24 27 19M19 43Q18 30 31 25M29 45Q26 36 36 31M41 17Q54 22 52 36M39 24Q47 27 46 37M42 45Q49 44 52 41", Tint.Dead) + Ink.Thin("M14.5 38Q15.5 25 27.5 20.5", Tint.Dark), ring: false)),
            ("black-center", () => Cut(Ink.Fill(Shape.Blob(33, 33, 12, 0.24, 2, 8), Tint.Dark) + Ink.Edged(Shape.Blob(33, 33, 4.5, 0.2, 3, 2.4), Tint.Sheet))),
            ("brown-corky-shallow", () => Cut(Ink.Each([(-0.2, 0.02), (0.16, 0.36), (0.55, 0.77)], part => Corky(UnderSkin(part.Item1, part.Item2, 8, 0.1))))),
            ("gray-net-or-mahogany", () => Cut(Net, ring: false))),
        .. Sketch.Of("tuber-rot-edge",
            ("diffuse-uneven", () => Cut(Ink.Fill(Upper.Times(0.86), Tint.Dead) + Texture.Hatch(Upper.Times(0.86), 3.4, -45, Tint.Dark) + Ink.Fill(Ink.Dots(Texture.Grid(Fringe, 3, 0.3, 4), 1), Tint.Dead))),
            ("sharp-dark-line", () => Cut(Dead(Upper) + Ink.Line("M8 34Q20 38 31 35T57 36", Tint.Dark))),
            ("follows-vascular-ring", () => Cut(Ink.Fill(VascularRing.Times(1.1).Path + VascularRing.Times(0.8).Path, Tint.Dead) + Ink.Thin(VascularRing.Times(1.1).Path + VascularRing.Times(0.95).Path + VascularRing.Times(0.8).Path, Tint.Dark), ring: false))),
        .. Sketch.Of("tuber-rot-depth",
            ("skin-only", () => Cut(Dead(UnderSkin(0.5, 1, 2.8, 0), 2.4))),
            ("shallow-under-15mm", () => Cut(Dead(UnderSkin(0.5, 1, 9), 2.8))),
            ("deep", () => Cut(Dead(UnderSkin(0.47, 1.03, 26, 0.15), 2.8)))),
    ];

    private static readonly Shape FromStemEnd = Shape.Smooth(new(4.5, 33), new(8, 21), new(19, 13.5), new(30, 12.5), new(36, 20), new(34, 28), new(39, 36), new(36, 45), new(31, 52.5), new(16, 51), new(7, 44));

    private static readonly Shape Upper = Shape.Smooth(new(5.5, 30), new(8, 21), new(19, 13.5), new(33, 12), new(47, 14), new(57, 22), new(59.5, 32), new(57, 36), new(44, 37), new(31, 35), new(19, 37), new(8, 34));

    private static readonly Shape Fringe = Shape.Smooth(new(9, 26), new(19, 19), new(33, 17), new(47, 18), new(56, 27), new(57, 38), new(47, 45), new(38, 40), new(28, 46), new(18, 40), new(10, 38));

    private static string Granular
    {
        get
        {
            var rot = UnderSkin(0.46, 1.0, 14, 0.26);
            return Ink.Fill(rot, Tint.Dead) + Texture.Dots(rot, 3.2, 0.7, Tint.Dark, 0.8, 3) + Texture.Dots(rot, 4.7, 0.5, Tint.Flesh, 1.6, 7);
        }
    }

    private static string Cream
    {
        get
        {
            var rot = Shape.Smooth(new(12, 30), new(20, 20), new(35, 18), new(48, 22), new(54, 32), new(49, 43), new(36, 47), new(21, 45), new(13, 39));
            return Ink.Fill(rot, Tint.Dark) + Ink.Fill(rot.Times(0.9), Tint.White) + Texture.Dashes(rot.Times(0.84), 4.6, Tint.Bronze) + Ink.Edged("M36 45Q41 53 36 59Q31 53 36 45Z", Tint.White);
        }
    }

    private static string Smoky
    {
        get
        {
            var inside = Outline.Times(0.84);
            return Ink.Fill(inside, Tint.Gray) + Texture.Dashes(inside.Times(0.92), 5, Tint.Water) + Ink.Line(inside.Path, Tint.Dark) + Ink.Line("M20 30Q24 26 28 30T36 30M30 40Q34 36 38 40T46 40", Tint.Dark);
        }
    }

    private static string Cavities
    {
        get
        {
            var rot = Shape.Smooth(new(8, 22), new(19, 13.5), new(33, 12), new(46, 14), new(48, 25), new(43, 36), new(32, 42), new(20, 39), new(11, 32));
            return Dead(rot, 3) + Ink.Each([Shape.Blob(20, 24, 4.8, 0.2, 1, 3.8), Shape.Blob(32, 31, 6.5, 0.2, 2, 4.5), Shape.Blob(38, 20, 3.8, 0.2, 3, 3)], hole => Ink.Edged(hole, Tint.Dark) + Ink.Fill(Ink.Dots(Texture.Grid(hole.Times(0.8), 2.6, 0.4, 3), 0.7), Tint.White));
        }
    }

    private static string Cheesy
    {
        get
        {
            var band = VascularRing.Times(1.06).Path + VascularRing.Times(0.78).Path;
            var ooze = string.Concat(VascularRing.Times(0.92).Along(17).Select(point => $"M{point + new Point(-1.2, 0)}q1.2-1.6 2.4 0"));
            return Ink.Edged(band, Tint.Yellow) + Ink.Thin(ooze, Tint.Dark) + Ink.Fill(Shape.Blob(12, 33, 2.6, 0.1, 1, 5), Tint.Dark);
        }
    }

    private static string Net
    {
        get
        {
            var inside = Outline.Times(0.76);
            return Ink.Line("M9 33Q14 24 24 22T44 21T54 33M9 33Q16 42 26 44T46 43T54 33M24 22Q20 30 26 34T26 44M44 21Q48 28 41 33T46 43M26 34Q33 29 41 33M14 26Q18 31 15 39M34 20.5Q32 26 34 31M34 31Q36 38 35 45", Tint.Gray) + Texture.Dots(inside, 6, 0.6, Tint.Dark, 2, 4);
        }
    }

    private static string Corky(Shape shape) => Ink.Edged(shape, Tint.Dead) + Texture.Hatch(shape, 2.4, 60, Tint.Dark);

    /// <summary>A clock face in the free corner: the color needs time.</summary>
    private static string Watch => Ink.Outlined(Shape.Blob(54.5, 54.5, 6.8), Tint.Sheet) + Ink.Fill("M54.5 47.7A6.8 6.8 0 0 1 54.5 61.3Z", Tint.Ink);
}
