using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one fruit: a tomato from the side with its green sepals on top, and cut across.</summary>
internal static class FruitPart
{
    public static readonly Shape Outline = Shape.Smooth(
        new(32, 14), new(44, 12.5), new(55, 19), new(59.5, 33), new(55, 48), new(44, 58), new(32, 60.5), new(20, 58), new(9, 48), new(4.5, 33), new(9, 19), new(20, 12.5));

    public static readonly Shape Calyx = Shape.Straight(
        new(32, 11), new(40, 8), new(48, 12), new(41, 14), new(47, 21), new(37, 17.5), new(32, 24), new(27, 17.5), new(17, 21), new(23, 14), new(16, 12), new(24, 8));

    public static string Sepals(string tint = Tint.Leaf) => Line("M32 11Q32 7 35 3.5") + Outlined(Calyx, tint);

    /// <summary>The fruit with what lies on it; the sepals last.</summary>
    public static string Fruit(string tint, string marks = "") => Outlined(Outline, tint) + marks + Line(Outline.Path) + Sepals();

    public static string Green(string marks = "") => Fruit(Tint.Green, marks);

    public static string Ripe(string marks = "") => Fruit(Tint.Ripe, marks);

    public static readonly Shape CutOutline = Shape.Blob(32, 33, 28, 0, 0, 26);

    /// <summary>The five seed chambers of the cut fruit.</summary>
    public static readonly Shape[] Chambers =
        [.. Enumerable.Range(0, 5).Select(index => Wedge((index * 72) - 90))];

    /// <summary>The fruit cut across: wall, three chambers, seeds.</summary>
    public static string Cut(string wall, string marks = "", bool seeds = true) =>
        Outlined(CutOutline, wall) + string.Concat(Chambers.Select(chamber => Edged(chamber, Tint.Green)))
        + (seeds ? string.Concat(Seeds.Select(seed => Edged(Shape.Blob(seed.X, seed.Y, 1.9, 0, 0, 1.3), Tint.Flesh))) : "") + marks + Line(CutOutline.Path);

    private static readonly Point[] Seeds =
        [.. Enumerable.Range(0, 5).SelectMany(index => new[] { Around((index * 72) - 105, 13), Around((index * 72) - 75, 13), Around((index * 72) - 90, 18.5) })];

    private static Shape Wedge(double degrees) => Shape.Smooth(
        Around(degrees, 6.5), Around(degrees - 24, 11), Around(degrees - 27, 18), Around(degrees - 17, 22), Around(degrees, 23), Around(degrees + 17, 22), Around(degrees + 27, 18), Around(degrees + 24, 11));

    private static Point Around(double degrees, double far)
    {
        var point = new Point(32, 33).Toward(degrees, far);
        return new(point.X, 33 + ((point.Y - 33) * 0.93));
    }
}
