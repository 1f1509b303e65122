using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one lesion, and the textures that say what its tissue is: each color has a pattern of its own.</summary>
internal static class LesionPart
{
    /// <summary>The large spot that most pictures of a leaf show, in the middle of it.</summary>
    public static readonly Shape Large = Shape.Blob(32, 34, 17, 0.06, 2);

    /// <summary>Dead brown tissue: slanting lines.</summary>
    public static string Dead(Shape shape, double apart = 3.4, Shape? without = null) => Fill(shape, Tint.Dead) + Texture.Hatch(shape, apart, -45, Tint.Dark, without);

    /// <summary>Dead brown tissue with a thin line around it: the ordinary lesion.</summary>
    public static string Patch(Shape shape, double apart = 3.4) => Dead(shape, apart) + Thin(shape.Path, Tint.Dark);

    /// <summary>Dark brown to black: solid.</summary>
    public static string Black(Shape shape) => Fill(shape, Tint.Dark);

    /// <summary>Full of water, gray-green: rows of short dashes, no line around it.</summary>
    public static string Soaked(Shape shape) => Fill(shape, Tint.Soaked) + Texture.Dashes(shape, 4.4, Tint.White);

    /// <summary>Yellow: fine dots.</summary>
    public static string Yellow(Shape shape, Shape? without = null) =>
        Fill(shape, Tint.Yellow) + Texture.Dots(shape, 3.4, 0.45, Tint.Dark, 0.8, 3, without);

    /// <summary>Tan and dry: plain, held by a dark rim.</summary>
    public static string TanWithRim(Shape shape) => Edged(shape, Tint.Dark) + Fill(shape.Times(0.84), Tint.Tan);

    /// <summary>Purple or reddish: upright lines.</summary>
    public static string Purple(Shape shape) => Fill(shape, Tint.Purple) + Texture.Hatch(shape, 2.8, 90, Tint.Dark);

    /// <summary>Bronze: short slanting flecks.</summary>
    public static string Bronze(Shape shape, double apart = 4) => Fill(shape, Tint.Bronze) + Texture.Flecks(shape, apart, Tint.Dark);

    /// <summary>Bleached: white and papery, with a thin line around it and a few pale creases.</summary>
    public static string Bleached(Shape shape) => Edged(shape, Tint.White) + Texture.Hatch(shape, 5.2, 65, Tint.Tan);

    /// <summary>Rings inside each other, as on a target.</summary>
    public static string Rings(Shape shape, params double[] sizes) =>
        string.Concat(sizes.Select(size => Line(shape.Times(size).Path, Tint.Dark)));

    /// <summary>Small spots of one radius at several places.</summary>
    public static Shape[] Spots(double radius, params Point[] at) =>
        [.. at.Select((point, index) => Shape.Blob(point.X, point.Y, radius, radius > 2.5 ? 0.07 : 0, index * 2))];
}
