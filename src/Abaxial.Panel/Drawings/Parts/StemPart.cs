using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one stem: upright, with a leaf stalk at a node; with soil at its foot; cut lengthwise.</summary>
internal static class StemPart
{
    /// <summary>The stem between the edges of the picture, without the leaf stalk.</summary>
    public static readonly Shape Piece = Shape.Straight(new(23, 2.5), new(41, 2.5), new(41, 61.5), new(23, 61.5));

    public static string Stem(string marks = "") =>
        Outlined("M41 22Q51 18 58.5 8L61.5 11Q54 23 41 29.5Z", Tint.Stem) + Fill(Piece, Tint.Stem) + marks + Line("M23 2.5V61.5M41 2.5V22M41 29.5V61.5");

    /// <summary>The stem with its foot in the soil.</summary>
    public static string InSoil(string marks = "", string below = "") =>
        Outlined("M41 16Q51 12 58.5 3L61.5 6Q54 17 41 23.5Z", Tint.Stem) + Fill("M23 2.5H41V61.5H23Z", Tint.Stem) + marks + Line("M23 2.5V48M41 2.5V16M41 23.5V48")
        + Soil(48, below);

    /// <summary>The ground from a height down, with dots in it.</summary>
    public static string Soil(double top, string below = "")
    {
        var ground = Shape.Straight(new(2.5, top), new(61.5, top), new(61.5, 61.5), new(2.5, 61.5));
        return Fill(ground, Tint.Soil) + Texture.Dots(ground, 5.5, 0.6, Tint.Dark, 1.6, 2) + below + Line($"M2.5 {Number(top)}H61.5");
    }

    public static readonly Shape LeftVessels = Shape.Straight(new(18, 2.5), new(22.5, 2.5), new(22.5, 61.5), new(18, 61.5));

    public static readonly Shape RightVessels = Shape.Straight(new(41.5, 2.5), new(46, 2.5), new(46, 61.5), new(41.5, 61.5));

    public static readonly Shape Pith = Shape.Straight(new(22.5, 2.5), new(41.5, 2.5), new(41.5, 61.5), new(22.5, 61.5));

    /// <summary>The stem cut lengthwise: rind, vessels, pith.</summary>
    public static string Cut(string marks = "") =>
        Fill("M13 2.5H51V61.5H13Z", Tint.Stem) + Fill("M18 2.5H46V61.5H18Z", Tint.Flesh) + marks
        + Thin("M18 2.5V61.5M22.5 2.5V61.5M41.5 2.5V61.5M46 2.5V61.5", Tint.Dark) + Line("M13 2.5V61.5M51 2.5V61.5");
}
