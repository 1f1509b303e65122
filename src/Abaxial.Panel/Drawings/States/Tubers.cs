using static Abaxial.Panel.Drawings.Parts.GrowthPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;
using static Abaxial.Panel.Drawings.Parts.TuberPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Skin of the potato tuber, where its rot starts, what grows on it.</summary>
internal static class Tubers
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("tuber-surface",
            ("clean", () => Skin()),
            ("sunken-purple-brown", () => Skin(SunkenPurple)),
            ("corky-pustules", () => Skin(Ink.Each(Pustules, Pustule), "")),
            ("rubbery-with-dark-eyes", () => Skin(Ink.Each(EyePlaces, eye => Ink.Fill(Shape.Blob(eye.X, eye.Y, 4.4, 0.1, 2, 3.2), Tint.Dark)) + Ink.Thin("M11 32Q18 35 26 32.5M40 31Q48 34 56 30M24 46Q31 49 38 46", Tint.Dark), "")),
            ("ringed-or-arced-necrosis", () => Skin(Ink.Each<Point>([new(22, 31), new(44, 35)], at => Arcs(at)), "")),
            ("wrinkled-with-mold-tufts", () => Wrinkled),
            ("wet-and-collapsing", () => Wet),
            ("silvery-or-black-dotted", () => Skin(Silver, "")),
            ("black-crusts", () => Skin(Ink.Each(Crusts, at => Ink.Fill(Shape.Blob(at.X, at.Y, 3.6, 0.4, (int)at.X, 2.6, at.Y * 7), Tint.Dark)))),
            ("sunken-dark-raised-border", () => Skin(Ink.Each([Shape.Blob(23, 30, 8.5, 0.1, 2, 7), Shape.Blob(44, 37, 7.5, 0.1, 3, 6.5)], spot => Ink.Edged(spot.Times(1.25), Tint.Tan) + Ink.Fill(spot.Times(0.9), Tint.Dark)), ""))),
        .. Sketch.Of("tuber-rot-start",
            ("stem-end", () => Skin(Patch(Shape.Smooth(new(4.5, 34), new(8, 24), new(15, 18.2), new(21, 24), new(19, 33), new(21, 43), new(14, 49.5), new(7.5, 44))))),
            ("eyes", () => Skin(Ink.Each(EyePlaces, eye => Patch(Shape.Blob(eye.X, eye.Y, 5.2, 0.08, 1, 4.4))))),
            ("wounds-or-bruises", () => Skin(Patch(Shape.Blob(36, 33, 12, 0.1, 2, 10)) + Ink.Line("M28 27L45 38M42 28L32 39", Tint.White))),
            ("anywhere", () => Skin(Patch(Shape.Blob(15, 27, 5, 0.1, 1)) + Patch(Shape.Blob(34, 35, 5.5, 0.1, 2)) + Patch(Shape.Blob(50, 40, 5, 0.1, 3)) + Patch(Shape.Blob(37, 18, 3.6, 0.1, 4))))),
        .. Sketch.Of("tuber-growth",
            ("none", () => Skin(Patch(Rot))),
            ("white-down", () => Skin(Patch(Rot) + DownTufts(4.6, new(23, 29), new(34, 25), new(42, 33), new(32, 34), new(24, 39), new(37, 41)))),
            ("white-cotton", () => Skin(Cotton(Shape.Blob(32, 33, 17, 0.1, 2, 13)))),
            ("pink-or-white-tufts", () => Skin(Ink.Thin(Folds, Tint.Dark) + Ink.Each<Point>([new(20, 27), new(33, 22), new(44, 31), new(34, 40), new(21, 41)], at => Pad(at)), "")),
            ("gray-brown-fuzz", () => Skin(Ink.Edged(Rot, Tint.Dead) + Fuzz(Rot)))),
    ];

    private static readonly Shape Rot = Shape.Blob(32, 33, 16, 0.08, 2, 13);
    private static readonly Point[] Pustules = [new(15, 29), new(24, 22), new(28, 36), new(38, 27), new(49, 25), new(44, 39), new(34, 46), new(18, 43), new(53, 36)];
    private static readonly Point[] Crusts = [new(16, 29), new(26, 35), new(34, 28), new(47, 31), new(41, 39), new(28, 47), new(52, 41), new(35, 18)];
    private const string Folds = "M9 30Q14 26 13 20M12 40Q20 36 18 27M27 50Q26 42 29 36M38 51Q40 43 37 36M47 49Q46 43 51 38M57 36Q51 33 53 25M44 15Q42 20 47 23M28 14Q27 19 24 20";

    private static string SunkenPurple
    {
        get
        {
            var patch = Shape.Smooth(new(12, 26), new(22, 19), new(34, 22), new(45, 19), new(53, 28), new(50, 40), new(39, 41), new(31, 47), new(19, 43), new(14, 35));
            return Purple(patch) + Ink.Line("M12 27Q21 19.5 34 22.5Q45 20 53 28", Tint.Dark);
        }
    }

    private static string Silver
    {
        get
        {
            var sheen = Shape.Smooth(new(10, 27), new(20, 18), new(33, 20), new(43, 17), new(53, 26), new(52, 39), new(41, 45), new(30, 41), new(18, 45), new(11, 37));
            return Ink.Fill(sheen, Tint.White) + Ink.Thin(Ink.Dashed(sheen), Tint.Gray) + Texture.Dots(sheen, 4, 0.6, Tint.Dark, 1.5, 3);
        }
    }

    private static string Wrinkled => Skin(Ink.Fill(Shape.Blob(33, 33, 19, 0.06, 1, 14), Tint.Dead) + Ink.Thin(Folds, Tint.Dark)
        + Ink.Line(Shape.Blob(33, 33, 18.5, 0.05, 1, 14).Path + Shape.Blob(33, 33, 13, 0.06, 2, 9.5).Path + Shape.Blob(33, 33, 7.5, 0.08, 3, 5.5).Path, Tint.Dark) + Ink.Each<Point>([new(24, 29), new(37, 26), new(43, 37), new(29, 40)], at => Pad(at)), "");

    private static string Wet
    {
        get
        {
            var slump = Shape.Smooth(new(4.5, 36), new(8, 25), new(19, 18), new(32, 22), new(44, 17), new(56, 25), new(60, 37), new(57, 50), new(44, 53), new(31, 51), new(16, 53), new(7, 47));
            return Stolon + Ink.Outlined(slump, Tint.Dead) + Texture.Dashes(slump.Times(0.84), 5.4, Tint.Water) + Ink.Line("M2.5 59Q8 55.5 14 59T26 59T38 59T50 59T61.5 59") + Ink.Fill("M12 54Q14.5 57 12 58.5Q9.5 57 12 54Z", Tint.Water);
        }
    }

    private static string Pustule(Point at) => Ink.Edged(Shape.Blob(at.X, at.Y, 3.9, 0.24, (int)at.X, 3.2), Tint.Dead) + Ink.Thin($"M{at + new Point(-2.2, 0)}l1.5-1 1.5 1.5 1.5-1.2M{at + new Point(-1, 1.2)}l2 .4", Tint.Dark);

    private static string Arcs(Point at) => Ink.Line(Shape.Blob(at.X, at.Y, 8.6, 0.06, 1).Path, Tint.Dark) + Ink.Line($"M{at.Toward(200, 4.8)}A4.8 4.8 0 0 1 {at.Toward(20, 4.8)}", Tint.Dark) + Ink.Fill(Ink.Dots([at], 1), Tint.Dark);

    private static string Pad(Point at) => Ink.Edged(Cloud(Shape.Blob(at.X, at.Y, 3.8, 0, 0, 3), 3), Tint.Pink) + Ink.Thin($"M{at + new Point(-1.8, 0.8)}v-2M{at + new Point(0, 1)}v-2.4M{at + new Point(1.8, 0.8)}v-2", Tint.Dark);
}
