using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one plant: a stem with three pairs of leaves and a tip, and the ground. Leaves count from the lowest left, left before right; the seventh is the tip.</summary>
internal static class PlantPart
{
    private static readonly (Point Foot, double Degrees)[] Leaves =
        [(new(32, 48), 172), (new(32, 48), 8), (new(32, 38), 190), (new(32, 38), -10), (new(32, 28), 205), (new(32, 28), -25), (new(32, 17), -90)];

    public static string Ground => Line("M3 57H61");

    public static string Plant(params int[] affected) => Ground + Line("M32 57V14") + string.Concat(Enumerable.Range(0, 7).Select(leaf => At(leaf, affected.Contains(leaf))));

    /// <summary>A leaf blade from its foot in a direction; an affected one is brown and hatched.</summary>
    public static string Blade(Point foot, double degrees, double length, bool affected, double wide = 0.27)
    {
        Point tip = foot.Toward(degrees, length), middle = foot.Toward(degrees, length * 0.5), start = foot.Toward(degrees, length * 0.16);
        var shape = Shape.Smooth(start, middle.Toward(degrees - 90, length * wide), tip, middle.Toward(degrees + 90, length * wide));
        return Line($"M{foot}L{start}") + (affected ? Outlined(shape, Tint.Dead) + Texture.Hatch(shape, 2.6, -45, Tint.Dark) : Outlined(shape, Tint.Leaf));
    }

    /// <summary>A leaf that hangs from its foot, limp: the stalk bends over, the blade points down.</summary>
    public static string Hanging(Point foot, int side, double reach = 9, double length = 16)
    {
        Point bend = new(foot.X + (side * reach), foot.Y + 1);
        var stalk = Line($"M{foot}Q{Number(foot.X + (side * reach * 0.8))} {Number(foot.Y - 5)} {bend}");
        return stalk + Blade(bend, 90 - (side * 6), length, affected: false, wide: 0.19);
    }

    private static string At(int leaf, bool affected) =>
        leaf == 6 ? Tip(affected) : Blade(Leaves[leaf].Foot, Leaves[leaf].Degrees, leaf switch { < 2 => 27, < 4 => 23, _ => 19 }, affected, 0.23);

    /// <summary>The youngest leaves: two small ones and the bud between them.</summary>
    private static string Tip(bool affected) =>
        Blade(new(32, 15), -138, 12, affected, 0.3) + Blade(new(32, 15), -42, 12, affected, 0.3) + Blade(new(32, 17), -90, 15, affected, 0.3);
}
