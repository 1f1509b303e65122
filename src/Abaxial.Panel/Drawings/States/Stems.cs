using static Abaxial.Panel.Drawings.Parts.GrowthPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;
using static Abaxial.Panel.Drawings.Parts.StemPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Marks and growth on the stem, the inside of the cut stem, the roots.</summary>
internal static class Stems
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("stem-lesion",
            ("none", () => Stem()),
            ("large-dark-patches", () => Stem(Ink.Fill("M23 11Q33 8 38 14T41 30Q36 39 29 36T23 37Z", Tint.Dark) + Ink.Fill("M41 44Q34 43 31 50T34 61.5H41Z", Tint.Dark))),
            ("small-dots-or-flecks", () => Stem(Ink.Fill(Ink.Dots(Texture.Grid(Piece, 5.6, 1.8, 3), 1.1), Tint.Dark))),
            ("long-dark-streaks", () => Stem(Ink.Fill("M27 6Q29.5 22 27.5 44Q25 24 27 6ZM33 16Q36 36 34 58Q31 36 33 16ZM38.5 4Q40 14 38.5 33Q36.5 18 38.5 4Z", Tint.Dark))),
            ("black-from-soil-line-up", () => InSoil(Ink.Fill("M23 48V22Q26 17 29 23T35 19T41 24V48Z", Tint.Dark))),
            ("brown-canker-at-soil-line", () => InSoil(SunkenCanker)),
            ("bleached-tan", () => Stem(Ink.Edged("M23 14Q32 10 41 16V50Q32 54 23 48Z", Tint.White) + Ink.Thin("M27 18V45M32 17V47M37 19V46", Tint.Tan))),
            ("gray-fuzzy-canker", () => Stem(Ink.Edged(Canker, Tint.Dead) + Fuzz(Canker, 6))),
            ("ringed-target", () => Stem(Ink.Edged(Target, Tint.Dead) + Rings(Target, 0.96, 0.62, 0.28))),
            ("open-canker-crack", () => Stem(Dead(Shape.Blob(32, 33, 7.4, 0.06, 2, 22)) + Ink.Edged("M32 12Q37 22 34.5 30T34 54Q28.5 44 30 34T32 12Z", Tint.Flesh) + Ink.Line("M32 12Q37 22 34.5 30T34 54Q28.5 44 30 34T32 12Z", Tint.Dark)))),
        .. Sketch.Of("stem-lesion-place",
            ("soil-line", () => Tall("M28 44H36V54H28Z")),
            ("lower-half", () => Tall("M28 35H36V45H28Z")),
            ("at-wounds-or-leaf-scars", () => Tall("", scar: true)),
            ("upper-half-or-tip", () => Tall("M28.6 6Q32 1 35.4 6L36 16H28Z")),
            ("node-or-petiole-axil", () => Tall("M28 24H36L42 20L44.5 22L36 31.5H28Z"))),
        .. Sketch.Of("stem-growth",
            ("none", () => Stem(Patch(Canker))),
            ("white-down", () => Stem(Dead(Canker)) + DownTufts(4.6, new(29, 20), new(37, 29), new(27, 36), new(35, 45))),
            ("gray-brown-fuzz", () => Stem(Ink.Edged(Canker, Tint.Dead)) + Fuzz(Shape.Blob(32, 35, 13.5, 0.05, 2, 21), 6)),
            ("white-cotton", () => Stem() + Cotton(Shape.Blob(32, 34, 14, 0.1, 2, 19))),
            ("black-hard-bodies", () => Stem(Ink.Fill("M23 12H41V56H23Z", Tint.White)) + HardBody(28, 18, 3.4, 2.4, 20) + HardBody(36, 29, 4.2, 2.8, -40) + HardBody(27, 39, 3.4, 2.6, 60) + HardBody(36, 48, 3.8, 2.6, 10)),
            ("tan-seed-like-bodies", () => InSoil() + string.Concat(Seeds.Select(at => Ink.Edged(Shape.Blob(at.X, at.Y, 2.1), Tint.Orange)))),
            ("pale-felt-collar", () => InSoil() + Felt)),
        .. Sketch.Of("stem-inside",
            ("clean", () => Cut()),
            ("brown-vascular", () => Cut(Vessels)),
            ("yellow-brown-vascular-and-pith-pockets", () => Cut(Yellow(LeftVessels) + Yellow(RightVessels) + string.Concat(Pockets.Select(at => Ink.Edged(Shape.Blob(at.X, at.Y, 4, 0.2, (int)at.Y, 5), Tint.Bronze))))),
            ("dark-chambered-pith", () => Cut(Ink.Fill(Pith, Tint.Dark) + string.Concat(Chambers.Select(y => Ink.Edged(Shape.Blob(32, y, 7.6, 0.04, y, 3.2), Tint.Flesh))))),
            ("black-bodies-in-pith", () => Cut(Ink.Fill(Pith, Tint.White)) + HardBody(30, 12, 4, 2.8, 80) + HardBody(34, 26, 4.6, 3, 100) + HardBody(30, 40, 4.2, 2.8, 70) + HardBody(34, 53, 4, 2.8, 100)),
            ("hollow-wet", () => Cut(Ink.Edged(Shape.Blob(32, 32, 9, 0.08, 3, 24), Tint.Dark) + Texture.Dashes(Shape.Blob(32, 32, 8, 0.08, 3, 22), 5, Tint.Water)))),
    ];

    private static readonly Shape Canker = Shape.Smooth(new(24, 16), new(32, 12), new(40, 17), new(40, 33), new(40, 48), new(32, 53), new(24, 47), new(24, 32));
    private static readonly Shape Target = Shape.Blob(32, 34, 8, 0.04, 2, 13);
    private static readonly Point[] Seeds = [new(19, 45), new(24, 47), new(29, 44.5), new(34, 46.5), new(39, 45), new(44, 46.5), new(21, 40), new(26, 39), new(42, 40), new(37, 38.5), new(31, 36), new(14, 46), new(49, 45.5)];
    private static readonly Point[] Pockets = [new(29, 13), new(35, 28), new(29, 42), new(35, 54)];
    private static readonly int[] Chambers = [9, 18, 27, 36, 45, 54];

    private static string Vessels => Ink.Fill(LeftVessels, Tint.Dead) + Ink.Fill(RightVessels, Tint.Dead) + Ink.Thin("M20.2 4V60M43.8 4V60", Tint.Dark);

    private static string SunkenCanker
    {
        get
        {
            var sunken = Shape.Smooth(new(23, 30), new(30, 29), new(34, 36), new(33, 44), new(30, 48), new(23, 48));
            return Dead(sunken, 2.8) + Ink.Line("M24 30Q32 29 34 38Q34 44 31 48", Tint.Dark);
        }
    }

    private static string Felt
    {
        get
        {
            var collar = Shape.Straight(new(21, 33), new(43, 33), new(44, 48), new(20, 48));
            return Ink.Edged(CollarOutline, Tint.White) + Texture.Dots(collar, 3, 0.5, Tint.Gray, 1.4, 4);
        }
    }

    private const string CollarOutline = "M20 48L20.6 33.5q2-2 4-.4t4-.8t4 .6t4-.4t4 .4t3 .8L44.4 48Z";

    /// <summary>A whole slender stem from the soil to the tip, one place of it dark.</summary>
    private static string Tall(string dark, bool scar = false) =>
        Ink.Outlined("M36 26L52 14L55 17L36 32.5Z", Tint.Stem) + Ink.Outlined("M28 54L28.6 6Q32 1 35.4 6L36 54Z", Tint.Stem)
        + (scar ? "" : Ink.Outlined("M28 41L14 30L11.5 33L28 47.5Z", Tint.Stem))
        + (dark.Length > 0 ? Ink.Outlined(dark, Tint.Dark) : "") + (scar ? Ink.Outlined("M28 36L20 33Q18.5 37 20 41L28 45Z", Tint.Stem) + Ink.Fill("M28.8 33H34V48H28.8Z", Tint.Dark) + Ink.Outlined(Shape.Blob(20, 37, 2.2, 0, 0, 4), Tint.Dark) : "")
        + Soil(54);
}
