using System.Text;

namespace Abaxial.Panel.Drawings;

/// <summary>A closed outline: its path for the drawing, and a fine polygon of it for textures.</summary>
internal sealed class Shape
{
    private const int StepsOfCurve = 8;

    private Shape(string path, Point[] polygon)
    {
        Path = path;
        Polygon = polygon;
        Middle = new(polygon.Average(point => point.X), polygon.Average(point => point.Y));
    }

    public string Path { get; }

    public IReadOnlyList<Point> Polygon { get; }

    public Point Middle { get; }

    /// <summary>A polygon with straight sides.</summary>
    public static Shape Straight(params Point[] corners)
    {
        var polygon = new List<Point>();
        for (int i = 0; i < corners.Length; i++)
        {
            var next = corners[(i + 1) % corners.Length];
            for (int step = 0; step < StepsOfCurve; step++) polygon.Add(corners[i] + ((next - corners[i]) * ((double)step / StepsOfCurve)));
        }

        return new(Ink.Through(corners) + "Z", [.. polygon]);
    }

    /// <summary>A smooth closed line through all the points.</summary>
    public static Shape Smooth(params Point[] through)
    {
        int count = through.Length;
        var path = new StringBuilder($"M{through[0]}");
        var polygon = new List<Point>();
        for (int i = 0; i < count; i++)
        {
            Point before = through[(i + count - 1) % count], from = through[i], to = through[(i + 1) % count], after = through[(i + 2) % count];
            Point leaving = from + ((to - before) * (1.0 / 6)), arriving = to - ((after - from) * (1.0 / 6));
            path.Append('C').Append(leaving).Append(' ').Append(arriving).Append(' ').Append(to);
            for (int step = 0; step < StepsOfCurve; step++) polygon.Add(OnCurve(from, leaving, arriving, to, (double)step / StepsOfCurve));
        }

        return new(path.Append('Z').ToString(), [.. polygon]);
    }

    /// <summary>A round or oval area whose edge wanders by a share of its radius; the same seed wanders the same way.</summary>
    public static Shape Blob(double x, double y, double radius, double wander = 0, int seed = 0, double? high = null, double turned = 0)
    {
        int points = wander > 0.1 ? 14 : 10;
        double ry = high ?? radius;
        var through = new Point[points];
        for (int i = 0; i < points; i++)
        {
            double angle = Math.Tau * i / points;
            double by = 1 + (wander * ((Math.Sin((3 * angle) + seed) * 0.55) + (Math.Sin((5 * angle) + (seed * 2.3)) * 0.45)));
            through[i] = new Point(x + (Math.Cos(angle) * radius * by), y + (Math.Sin(angle) * ry * by)).TurnedAround(new(x, y), turned);
        }

        return Smooth(through);
    }

    /// <summary>Made smaller or larger around its middle.</summary>
    public Shape Times(double by) => Smooth([.. Every(Math.Max(1, Polygon.Count / 16)).Select(point => Middle + ((point - Middle) * by))]);

    public bool Contains(Point point)
    {
        bool inside = false;
        for (int i = 0, j = Polygon.Count - 1; i < Polygon.Count; j = i++)
        {
            Point a = Polygon[i], b = Polygon[j];
            if (a.Y > point.Y != b.Y > point.Y && point.X < ((b.X - a.X) * (point.Y - a.Y) / (b.Y - a.Y)) + a.X) inside = !inside;
        }

        return inside;
    }

    /// <summary>Inside, and no nearer to the edge than the distance.</summary>
    public bool ContainsWell(Point point, double inset) => Contains(point) && Polygon.All(edge => (edge - point).Length >= inset);

    /// <summary>Points along the edge, all the same way apart.</summary>
    public Point[] Along(int count)
    {
        var lengths = new double[Polygon.Count + 1];
        for (int i = 0; i < Polygon.Count; i++) lengths[i + 1] = lengths[i] + (Polygon[(i + 1) % Polygon.Count] - Polygon[i]).Length;
        var points = new Point[count];
        for (int i = 0, at = 0; i < count; i++)
        {
            double length = lengths[^1] * i / count;
            while (lengths[at + 1] < length) at++;
            double share = (length - lengths[at]) / Math.Max(1e-9, lengths[at + 1] - lengths[at]);
            points[i] = Polygon[at] + ((Polygon[(at + 1) % Polygon.Count] - Polygon[at]) * share);
        }

        return points;
    }

    private IEnumerable<Point> Every(int step) => Polygon.Where((_, index) => index % step == 0);

    private static Point OnCurve(Point a, Point b, Point c, Point d, double t)
    {
        double u = 1 - t;
        return (a * (u * u * u)) + (b * (3 * u * u * t)) + (c * (3 * u * t * t)) + (d * (t * t * t));
    }
}
