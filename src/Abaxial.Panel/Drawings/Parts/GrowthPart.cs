using System.Text;
using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>What grows on a lesion, each kind with an outline of its own, so that it is known in gray: down, cotton, powder, fuzz, velvet, specks.</summary>
internal static class GrowthPart
{
    /// <summary>White down: a soft scalloped cover with fine hairs standing out of it.</summary>
    public static string Down(Shape shape, double scallop = 3.4)
    {
        var nap = string.Concat(Texture.Grid(shape, 4.4, 1.6, 4).Select(point => $"M{point + new Point(0.3, 1.1)}l-.6-2.2"));
        var fringe = string.Concat(shape.Along(Math.Max(9, (int)(shape.Polygon.Count / 3.2))).Select(point => $"M{point}L{point + ((point - shape.Middle) * (2.4 / (point - shape.Middle).Length))}"));
        return Thin(fringe, Tint.Dark) + Edged(Cloud(shape, scallop), Tint.White) + Thin(nap, Tint.Gray);
    }

    /// <summary>White down as a ring: what lies inside stays bare.</summary>
    public static string DownRing(Shape outer, Shape inner, double scallop = 3.2) =>
        Edged(Cloud(outer, scallop) + inner.Path, Tint.White) + Hairs(outer, inner);

    /// <summary>White down in loose tufts.</summary>
    public static string DownTufts(double radius, params Point[] at) => string.Concat(at.Select((point, index) => Tuft(point, radius, index * 11)));

    /// <summary>White cotton: thick billows with curls in them.</summary>
    public static string Cotton(Shape shape, double scallop = 8)
    {
        var curls = string.Concat(Texture.Grid(shape, 7.5, 2.6, 5).Select(point => $"M{Number(point.X - 2.4)} {Number(point.Y)}q.4-3 2.8-2.4q1.8.8 1 2.4q-1.2 1.2-2.2 0"));
        return Edged(Cloud(shape, scallop), Tint.White) + Thin(curls, Tint.Gray);
    }

    /// <summary>White powder: separate patches of grains without a line around them.</summary>
    public static string Powder(params Shape[] patches) =>
        string.Concat(patches.Select(patch => Fill(patch, Tint.White) + Texture.Dots(patch, 2.6, 0.5, Tint.Gray, 0.6, 4) + Halo(patch)));

    /// <summary>Gray-brown fuzz: stalks that stand up, each with a round head of spores.</summary>
    public static string Fuzz(Shape shape, double apart = 6.4, double high = 4.4)
    {
        var feet = Texture.Grid(shape, apart, 1.4, 2).OrderBy(point => point.Y).ToArray();
        var stalks = string.Concat(feet.Select(point => $"M{point}v{Number(-high)}"));
        var heads = Dots(feet.Select(point => new Point(point.X, point.Y - high)), 2.1);
        return Thin(stalks, Tint.Dark) + Fill(heads, Tint.Gray);
    }

    /// <summary>Velvet, olive or dark: a close nap of short strokes over a patch without a rim.</summary>
    public static string Velvet(Shape shape, string tint, string nap)
    {
        var strokes = string.Concat(Texture.Grid(shape, 3.7, 1.4, 3).Select(point => $"M{Number(point.X - 0.5)} {Number(point.Y + 1)}l1-2"));
        var fringe = string.Concat(shape.Along(36).Select(point => $"M{point}L{point + ((point - shape.Middle) * (1.8 / (point - shape.Middle).Length))}"));
        return Fill(shape, tint) + Thin(fringe, tint) + Thin(strokes, nap);
    }

    /// <summary>Separate dark specks.</summary>
    public static string Specks(Shape shape, double apart = 5, double radius = 0.95) => Texture.Dots(shape, apart, radius, Tint.Dark, 1.6, 6);

    /// <summary>A hard black body in outline.</summary>
    public static string HardBody(double x, double y, double wide, double high, double turned) => Edged(Shape.Blob(x, y, wide, 0.1, (int)x, high, turned), Tint.Dark);

    /// <summary>A closed line of scallops outward along an outline.</summary>
    public static string Cloud(Shape shape, double scallop)
    {
        double around = shape.Polygon.Zip(shape.Polygon.Skip(1).Append(shape.Polygon[0]), (a, b) => (b - a).Length).Sum();
        var points = shape.Along(Math.Max(5, (int)Math.Round(around / scallop)));
        var path = new StringBuilder($"M{points[0]}");
        for (int i = 1; i <= points.Length; i++) path.Append($"A{Number(scallop * 0.56)} {Number(scallop * 0.56)} 0 0 1 {points[i % points.Length]}");
        return path.Append('Z').ToString();
    }

    /// <summary>A tuft from above: a soft white heart, white hairs of uneven length to all sides, a few dark ones to hold it on pale ground.</summary>
    private static string Tuft(Point at, double radius, double turned)
    {
        string Rays(int count, double from, double to, double start) => string.Concat(Enumerable.Range(0, count).Select(ray =>
        {
            double degrees = start + (ray * 360.0 / count) + (9 * Math.Sin(ray * 2.4)), reach = to * (1 + (0.14 * Math.Sin((ray * 1.9) + turned)));
            return $"M{at.Toward(degrees, radius * from)}L{at.Toward(degrees, radius * reach)}";
        }));
        return Thin(Rays(9, 0.7, 1.22, turned), Tint.Dark) + Fill(Shape.Blob(at.X, at.Y, radius * 0.76, 0.16, (int)turned), Tint.White) + Thin(Rays(18, 0.6, 1.05, turned + 8), Tint.White);
    }

    private static string Hairs(Shape outer, Shape inner)
    {
        var outside = outer.Along(40);
        return Thin(string.Concat(outside.Select(point =>
        {
            var nearest = inner.Polygon.MinBy(edge => (edge - point).Length);
            return $"M{point + ((nearest - point) * 0.25)}L{point + ((nearest - point) * 0.8)}";
        })), Tint.Gray);
    }

    private static string Halo(Shape patch) => Fill(Ink.Dots(patch.Times(1.28).Along(13), 0.6), Tint.White);
}
