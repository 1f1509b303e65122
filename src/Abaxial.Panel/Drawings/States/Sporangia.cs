namespace Abaxial.Panel.Drawings.States;

/// <summary>Details of sporangia and threads, enlarged further than the spores: not to their scale.</summary>
internal static class Sporangia
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("sporangiophore",
            ("branched-with-swollen-nodes", () => Ink.Line("M30 61.5V20M30 47L48 31M30 36L13 21M30 25L43 15")
                + Ink.Fill(Ink.Dots([new(30, 47), new(30, 36), new(30, 25), new(39, 39), new(21.5, 28.5)], 2.5), Tint.Ink) + Lemon(52, 27, -50) + Lemon(10, 16, -125) + Lemon(49, 9.5, -45) + Lemon(29.5, 11, -95)),
            ("unbranched-or-irregular", () => Ink.Line("M26 61.5Q38 46 28 36T32 17M30 49Q40 48 44 42") + Lemon(33, 12, -80) + Lemon(48, 37.5, -45)),
            ("not-found", () => Lemon(17, 20, -30) + Lemon(44, 16, 40) + Lemon(46, 44, -80) + Lemon(18, 47, 10))),
        .. Sketch.Of("sporangium-sheds",
            ("yes", () => Ink.Line("M14 61.5L20 44M36 61.5L38 46") + Lemon(24, 30, -50) + Lemon(47, 40, 30) + Lemon(42, 14, 10) + Ink.Line("M21 39V36M38 41L41 42.5")),
            ("no", () => Ink.Line("M14 61.5L22 40M44 61.5L42 36") + Lemon(25, 31.5, -70) + Lemon(41, 27, -95))),
        .. Sketch.Of("sporangium-papilla",
            ("none", () => Apex("")),
            ("slight", () => Apex("M24 21.5Q25 15 32 15T40 21.5Z")),
            ("strong", () => Apex("M22 22.5Q22 4 32 4T42 22.5Z"))),
        .. Sketch.Of("hyphae",
            ("none", () => View),
            ("without-cross-walls", () => View + Threads(0)),
            ("with-cross-walls", () => View + Threads(1))),
    ];

    private static string Lemon(double x, double y, double degrees)
    {
        var middle = new Point(x, y);
        Point[] outline = [new(9, 0), new(7.2, 1.5), new(4, 4.8), new(-0.5, 5.8), new(-5.5, 4.2), new(-8.3, 1.2), new(-8.3, -1.2), new(-5.5, -4.2), new(-0.5, -5.8), new(4, -4.8), new(7.2, -1.5)];
        return Ink.Outlined(Shape.Smooth([.. outline.Select(point => (point + middle).TurnedAround(middle, degrees))]), Tint.Sheet);
    }

    /// <summary>The upper end of a sporangium.</summary>
    private static string Apex(string papilla)
    {
        var inside = Shape.Smooth(new(32, 22), new(46, 27), new(53, 42), new(53, 61), new(32, 62), new(11, 61), new(11, 42), new(18, 27));
        return Ink.Outlined("M9 61.5Q5 21 32 21T55 61.5", Tint.Sheet) + Texture.Dots(inside, 7.5, 0.9, Tint.Gray, 4, 3) + (papilla.Length > 0 ? Ink.Outlined(papilla, Tint.Ink) : "");
    }

    private static string View => Ink.Line(Shape.Blob(32, 32, 28.5).Path);

    private static string Threads(int walls) =>
        Tube(new(8, 17), new(26, 30), new(57, 23), 4, walls * 6) + Tube(new(24, 31), new(20, 42), new(24, 55), 3.2, walls * 3) + Tube(new(40, 33), new(42, 42), new(50, 47), 3.2, walls * 2);

    /// <summary>A thread along a bent line: two edges, and cross-walls at even distances.</summary>
    private static string Tube(Point from, Point bend, Point to, double half, int walls)
    {
        Point At(double t) => (from * ((1 - t) * (1 - t))) + (bend * (2 * t * (1 - t))) + (to * (t * t));
        Point Side(double t, double by)
        {
            var along = At(t + 0.01) - At(t - 0.01);
            return At(t) + (new Point(-along.Y, along.X) * (by / along.Length));
        }

        var left = Enumerable.Range(0, 13).Select(step => Side(step / 12.0, half)).ToArray();
        var right = Enumerable.Range(0, 13).Select(step => Side(step / 12.0, -half)).ToArray();
        var across = string.Concat(Enumerable.Range(1, walls).Select(wall => $"M{Side(wall / (walls + 1.0), half)}L{Side(wall / (walls + 1.0), -half)}"));
        return Ink.Line(Ink.Through(left) + Ink.Through(right) + across);
    }
}
