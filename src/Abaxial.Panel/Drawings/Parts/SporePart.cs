using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>Spores to one scale: 2 µm to the unit, with a bar of 20 µm. The sizes are the means of the knowledge, where their sources stand.</summary>
internal static class SporePart
{
    public const double MicrometersToTheUnit = 2;

    /// <summary>20 µm long.</summary>
    public static string Bar => Line("M51 61H61");

    public static double Units(double micrometers) => micrometers / MicrometersToTheUnit;

    /// <summary>An oval spore by its length and width in micrometers.</summary>
    public static string Oval(double x, double y, double length, double width, double degrees, string tint, int walls = 0)
    {
        double along = Units(length) / 2, across = Units(width) / 2;
        var shape = Shape.Blob(x, y, along, 0, 0, across, degrees);
        return FineOutlined(shape, tint) + Thin(Walls(new(x, y), along, across, degrees, walls), Tint.Ink);
    }

    /// <summary>A lemon: an oval with a papilla at one end and a short stalk at the other.</summary>
    public static string Lemon(double x, double y, double length, double width, double degrees)
    {
        double along = Units(length) / 2, across = Units(width) / 2;
        var middle = new Point(x, y);
        Point[] outline =
        [
            new(along, 0), new(along * 0.84, across * 0.26), new(along * 0.45, across * 0.86), new(-along * 0.05, across), new(-along * 0.6, across * 0.72), new(-along * 0.92, across * 0.22),
            new(-along * 0.92, -across * 0.22), new(-along * 0.6, -across * 0.72), new(-along * 0.05, -across), new(along * 0.45, -across * 0.86), new(along * 0.84, -across * 0.26),
        ];
        var shape = Shape.Smooth([.. outline.Select(point => (point + middle).TurnedAround(middle, degrees))]);
        return Thin($"M{middle.Toward(degrees + 180, along)}L{middle.Toward(degrees + 180, along + 1.2)}", Tint.Ink) + Outlined(shape, Tint.Sheet)
            + Fill(Ink.Dots([middle.Toward(degrees, along)], 1), Tint.Ink);
    }

    /// <summary>Cross-walls of a spore.</summary>
    public static string Walls(Point middle, double along, double across, double degrees, int count)
    {
        var path = "";
        for (int i = 1; i <= count; i++)
        {
            double at = (2.0 * i / (count + 1)) - 1, half = across * Math.Sqrt(1 - (at * at)) * 0.96;
            var on = middle.Toward(degrees, along * at);
            path += $"M{on.Toward(degrees + 90, half)}L{on.Toward(degrees - 90, half)}";
        }

        return path;
    }
}
