using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one leaf: a leaflet 60 mm long, 1.1 mm to the unit, from above, from below, and its pieces between the veins.</summary>
internal static class LeafPart
{
    public static readonly Shape Outline = Shape.Smooth(
        new(32, 3), new(41, 9), new(50, 18), new(56, 30), new(55, 42), new(47, 52), new(32, 57), new(17, 52), new(9, 42), new(8, 30), new(14, 18), new(23, 9));

    private const string Midrib = "M32 57V7";
    private const string Laterals = "M32 50Q41 49 49 43M32 50Q23 49 15 43M32 39Q43 37 53 28M32 39Q21 37 11 28M32 27Q41 25 47 17M32 27Q23 25 17 17M32 17Q36 16 39 11M32 17Q28 16 25 11";

    public static string Veins => Thin(Midrib + Laterals, Tint.Vein);

    public static string Upper => Blade(Tint.Leaf) + Veins;

    /// <summary>The leaf seen from below: paler, thick ribs, and a flap of the margin folded over that shows the upper side.</summary>
    public static string Under => Blade(Tint.Under) + Line(Midrib, Tint.UnderVein) + Thin(Laterals, Tint.UnderVein) + Outlined("M39.5 7.8C47 14 52 20 55.5 28C48 27 41 20 39.5 7.8Z", Tint.Leaf);

    public static string Stalk => Line("M32 57V62.5");

    public static string Blade(string tint) => Outlined(Outline, tint) + Stalk;

    /// <summary>The outline once more, over what was laid on the blade.</summary>
    public static string Margin => Line(Outline.Path);

    /// <summary>The four fields between two side veins on either side, which angular spots and yellowing fill.</summary>
    public static readonly Shape[] BetweenVeins =
    [
        Shape.Smooth(new(34.5, 47), new(41, 46), new(47.5, 41.5), new(52.5, 35), new(51.5, 32), new(43, 38.5), new(35, 41.5)),
        Shape.Smooth(new(29.5, 47), new(23, 46), new(16.5, 41.5), new(11.5, 35), new(12.5, 32), new(21, 38.5), new(29, 41.5)),
        Shape.Smooth(new(34.5, 36), new(41, 34.5), new(47.5, 30), new(51.5, 25), new(48, 20.5), new(43, 25.5), new(35, 29.5)),
        Shape.Smooth(new(29.5, 36), new(23, 34.5), new(16.5, 30), new(12.5, 25), new(16, 20.5), new(21, 25.5), new(29, 29.5)),
        Shape.Smooth(new(34.5, 24), new(40, 22.5), new(44.5, 16.5), new(41, 13), new(38, 17), new(34.5, 20)),
        Shape.Smooth(new(29.5, 24), new(24, 22.5), new(19.5, 16.5), new(23, 13), new(26, 17), new(29.5, 20)),
    ];

    /// <summary>A band along the margin, from one share of the way round to another, so deep toward the middle of the leaf.</summary>
    public static Shape AlongMargin(double from, double to, double depth)
    {
        var edge = Outline.Along(96);
        var outside = Enumerable.Range((int)(from * 96), (int)((to - from) * 96) + 1).Select(index => edge[(index + 96) % 96]).ToArray();
        var inside = outside.Select((point, index) => point + ((new Point(32, 32) - point) * (depth * Math.Min(1, Math.Min(index, outside.Length - 1 - index) / 5.0) * (1 + (0.12 * Math.Sin(index * 1.7)))))).Reverse();
        return Shape.Straight([.. outside.Where((_, index) => index % 2 == 0), .. inside.Where((_, index) => index % 2 == 0)]);
    }
}
