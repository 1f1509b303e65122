using System.Globalization;
using System.Text;

namespace Abaxial.Panel.Drawings;

/// <summary>
/// The pen: one width for outlines, half of it for texture. Elements take their pen from the root of the drawing unless they say otherwise.
/// A drawing is the text of its elements, one behind the other.
/// </summary>
internal static class Ink
{
    public const double Pen = 1.6;
    public const double FinePen = 0.8;

    public static string Number(double value)
    {
        double rounded = Math.Round(value, 1, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.#", CultureInfo.InvariantCulture);
    }

    /// <summary>Two decimals, for what is as small as a dot.</summary>
    private static string Exact(double value) => Math.Round(value, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>An area with the pen around it.</summary>
    public static string Outlined(string path, string tint) => $"<path d=\"{path}\" fill=\"{tint}\"/>";

    public static string Outlined(Shape shape, string tint) => Outlined(shape.Path, tint);

    /// <summary>An area with the fine pen around it, in the dark that stays dark in both themes.</summary>
    public static string Edged(string path, string tint) => $"<path d=\"{path}\" fill=\"{tint}\" fill-rule=\"evenodd\" stroke=\"{Tint.Dark}\" stroke-width=\".8\"/>";

    public static string Edged(Shape shape, string tint) => Edged(shape.Path, tint);

    /// <summary>An area with the fine pen around it in the color of the text: what stands by itself, not on an organ.</summary>
    public static string FineOutlined(Shape shape, string tint) => $"<path d=\"{shape.Path}\" fill=\"{tint}\" stroke-width=\".8\"/>";

    /// <summary>An area without a line around it.</summary>
    public static string Fill(string path, string tint) => path.Length == 0 ? "" : $"<path d=\"{path}\" fill=\"{tint}\" fill-rule=\"evenodd\" stroke=\"none\"/>";

    public static string Fill(Shape shape, string tint) => Fill(shape.Path, tint);

    /// <summary>A line of the full pen: the color of the text around the drawing unless said otherwise.</summary>
    public static string Line(string path, string? tint = null) => tint is null ? $"<path d=\"{path}\"/>" : $"<path d=\"{path}\" stroke=\"{tint}\"/>";

    /// <summary>A line of the fine pen.</summary>
    public static string Thin(string path, string tint) => path.Length == 0 ? "" : $"<path d=\"{path}\" stroke=\"{tint}\" stroke-width=\".8\"/>";

    /// <summary>Round dots of one size as one path.</summary>
    public static string Dots(IEnumerable<Point> at, double radius)
    {
        string r = Exact(radius), d = Exact(radius * 2);
        return string.Concat(at.Select(point => $"M{Exact(point.X - radius)} {Number(point.Y)}a{r} {r} 0 1 0 {d} 0a{r} {r} 0 1 0-{d} 0Z"));
    }

    /// <summary>An open line through points, straight from one to the next.</summary>
    public static string Through(params IReadOnlyList<Point> points)
    {
        var path = new StringBuilder();
        for (int i = 0; i < points.Count; i++) path.Append(i == 0 ? 'M' : 'L').Append(points[i]);
        return path.ToString();
    }

    /// <summary>The outline of a shape as a broken line.</summary>
    public static string Dashed(Shape shape)
    {
        var points = shape.Along(60);
        return string.Concat(Enumerable.Range(0, 30).Select(index => $"M{points[index * 2]}L{points[(index * 2) + 1]}"));
    }

    /// <summary>Each of several things drawn, one behind the other.</summary>
    public static string Each<T>(IEnumerable<T> items, Func<T, string> drawn) => string.Concat(items.Select(drawn));

    /// <summary>The whole drawing: the box, the pen, the elements.</summary>
    public static string Box(string elements) =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 64 64\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.6\" stroke-linecap=\"round\" stroke-linejoin=\"round\">{elements}</svg>";
}
