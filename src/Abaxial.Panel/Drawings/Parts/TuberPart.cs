using static Abaxial.Panel.Drawings.Ink;

namespace Abaxial.Panel.Drawings.Parts;

/// <summary>The one tuber: its skin with eyes, and cut lengthwise with the ring of vessels. The stem end is on the left.</summary>
internal static class TuberPart
{
    public static readonly Shape Outline = Shape.Smooth(
        new(4.5, 34), new(8, 24), new(18, 16.5), new(32, 13), new(46, 12.5), new(56, 19), new(60, 31), new(57.5, 43), new(48, 51), new(33, 53), new(17, 51), new(7.5, 44));

    public static readonly Shape VascularRing = Shape.Smooth(
        new(6.5, 34), new(12, 27), new(21, 22.5), new(33, 19.5), new(44, 19.5), new(51.5, 24), new(54, 31.5), new(51.5, 40), new(44, 45.3), new(32, 46.7), new(20, 45), new(11, 40));

    /// <summary>The eyes: a brow on the side of the stem end, a bud behind it.</summary>
    public static string Eyes(string tint = Tint.Dark) =>
        Line(string.Concat(EyePlaces.Select(eye => $"M{eye + new Point(-0.6, -3)}q-2.6 3 0 6")), tint) + Fill(Dots(EyePlaces.Select(eye => eye + new Point(1, 0)), 0.9), tint);

    public static readonly Point[] EyePlaces = [new(19, 27), new(33, 21), new(48, 24), new(27, 40), new(41, 36), new(51, 43)];

    public static string Stolon => Line("M4.5 33H1.5");

    public static string Skin(string marks = "", string? eyes = null, string tint = Tint.Skin) => Stolon + Outlined(Outline, tint) + (eyes ?? Eyes()) + marks + Line(Outline.Path);

    /// <summary>The cut tuber. The ring of vessels is a thin broken line unless it is left out.</summary>
    public static string Cut(string marks = "", bool ring = true) =>
        Stolon + Outlined(Outline, Tint.Flesh) + (ring ? Ring : "") + marks + Line(Outline.Path);

    public static string Ring => Thin(Dashed(VascularRing), Tint.Dead);

    /// <summary>A layer under the skin, from one share of the way round to another; its inner edge wanders.</summary>
    public static Shape UnderSkin(double from, double to, double depth, double wander = 0.25)
    {
        var edge = Outline.Along(96);
        var outside = Enumerable.Range((int)(from * 96), (int)((to - from) * 96) + 1).Select(index => edge[((index % 96) + 96) % 96]).ToArray();
        var inside = outside.Select((point, index) =>
        {
            double end = Math.Min(1, Math.Min(index, outside.Length - 1 - index) / 5.0);
            double deep = depth * end * (1 + (wander * Math.Sin((index * 0.36) + 1)));
            var inward = new Point(32, 33) - point;
            return point + (inward * Math.Min(0.96, deep / inward.Length));
        }).Reverse();
        return Shape.Smooth([.. outside.Where((_, index) => index % 2 == 0), .. inside.Where((_, index) => index % 3 == 0)]);
    }
}
