using System.Text;

namespace Abaxial.Panel.Drawings;

/// <summary>What tells two areas apart without color: hatching, dots, dashes, all held inside an outline.</summary>
internal static class Texture
{
    /// <summary>Parallel lines inside an outline.</summary>
    public static string Hatch(Shape shape, double apart, double degrees, string tint, Shape? without = null)
    {
        var path = new StringBuilder();
        foreach (var (a, b) in Lines(shape, apart, degrees))
        {
            int steps = without is null ? 1 : Math.Max(1, (int)((b - a).Length / 0.8));
            bool down = false;
            for (int i = 0; i < steps; i++)
            {
                Point from = a + ((b - a) * ((double)i / steps)), to = a + ((b - a) * ((i + 1.0) / steps));
                bool draws = without is null || !without.Contains((from + to) * 0.5);
                if (draws && !down) path.Append('M').Append(from);
                if (down && !draws) path.Append('L').Append(from);
                if (draws && i == steps - 1) path.Append('L').Append(to);
                down = draws;
            }
        }

        return Ink.Thin(path.ToString(), tint);
    }

    /// <summary>Short dashes in rows, as of something wet.</summary>
    public static string Dashes(Shape shape, double apart, string tint, Shape? without = null)
    {
        var path = new StringBuilder();
        foreach (var point in Grid(shape, apart, 1.2, 0).Where(point => without is null || !without.Contains(point)))
        {
            path.Append($"M{Ink.Number(point.X - 1)} {Ink.Number(point.Y)}h2");
        }

        return Ink.Thin(path.ToString(), tint);
    }

    /// <summary>Short slanting strokes strewn evenly.</summary>
    public static string Flecks(Shape shape, double apart, string tint) =>
        Ink.Thin(string.Concat(Grid(shape, apart, 1.6, 3).Select(point => $"M{point + new Point(-0.9, 0.9)}l1.8-1.8")), tint);

    /// <summary>Round dots strewn evenly.</summary>
    public static string Dots(Shape shape, double apart, double radius, string tint, double inset = 1, int seed = 1, Shape? without = null) =>
        Ink.Fill(Ink.Dots(Grid(shape, apart, inset, seed).Where(point => without is null || !without.Contains(point)), radius), tint);

    /// <summary>Points of a six-sided grid inside an outline, each moved a little unless the seed is 0.</summary>
    public static IEnumerable<Point> Grid(Shape shape, double apart, double inset, int seed)
    {
        int row = 0;
        for (double y = 1; y < 64; y += apart * 0.87, row++)
        {
            int column = 0;
            for (double x = 1 + (row % 2 * apart / 2); x < 64; x += apart, column++)
            {
                double by = seed == 0 ? 0 : apart * 0.22;
                var point = new Point(x + (Math.Sin((row * 12.9) + (column * 78.2) + seed) * by), y + (Math.Cos((row * 39.3) + (column * 11.1) + seed) * by));
                if (shape.ContainsWell(point, inset)) yield return point;
            }
        }
    }

    private static IEnumerable<(Point From, Point To)> Lines(Shape shape, double apart, double degrees)
    {
        var middle = new Point(32, 32);
        var turned = shape.Polygon.Select(point => point.TurnedAround(middle, -degrees)).ToArray();
        double top = turned.Min(point => point.Y), bottom = turned.Max(point => point.Y);
        for (double y = (Math.Floor(top / apart) + 0.5) * apart; y < bottom; y += apart)
        {
            if (y <= top) continue;
            var crossings = new List<double>();
            for (int i = 0; i < turned.Length; i++)
            {
                Point a = turned[i], b = turned[(i + 1) % turned.Length];
                if (a.Y > y != b.Y > y) crossings.Add(a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
            }

            crossings.Sort();
            for (int i = 0; i + 1 < crossings.Count; i += 2)
            {
                if (crossings[i + 1] - crossings[i] < 1.2) continue;
                yield return (new Point(crossings[i] + 0.4, y).TurnedAround(middle, degrees), new Point(crossings[i + 1] - 0.4, y).TurnedAround(middle, degrees));
            }
        }
    }
}
