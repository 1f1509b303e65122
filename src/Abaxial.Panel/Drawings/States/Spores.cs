using static Abaxial.Panel.Drawings.Parts.SporePart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>What the microscope shows, to one scale: lengths and widths in micrometers.</summary>
internal static class Spores
{
    /// <summary>The sizes drawn, in micrometers: the middle of the causes' means in the knowledge. A test holds them to it.</summary>
    public static readonly IReadOnlyDictionary<string, (double Length, double Width)> Sizes = new Dictionary<string, (double Length, double Width)>(StringComparer.Ordinal)
    {
        ["lemon-shaped-sporangia"] = (29, 20),
        ["oval-in-grape-clusters"] = (11, 8.5),
        ["olive-one-to-three-celled"] = (23, 7),
        ["club-shaped-with-beak-and-cross-walls"] = (205, 16.5),
        ["short-beaked-in-chains"] = (37, 13),
        ["beakless-with-cross-walls"] = (47, 20),
        ["thread-like-clear"] = (67, 3.2),
        ["sickle-shaped-many-celled"] = (39, 4.2),
        ["in-acervuli-with-setae"] = (18.8, 3.4),
        ["powdery-mildew-chains"] = (33, 17),
        ["powdery-mildew-single"] = (34, 15),
        ["powdery-mildew-two-shapes"] = (55, 15),
        ["long-brown-cylindrical"] = (48, 9),
        ["thick-walled-oospores"] = (29, 29),
    };

    public static IEnumerable<Sketch> All => Sketch.Of("spores-seen",
        ("none", () => Bar + Ink.Line(Shape.Blob(31, 29, 26).Path)),
        ("lemon-shaped-sporangia", () => Bar + Lemons),
        ("oval-in-grape-clusters", () => Bar + Grapes),
        ("olive-one-to-three-celled", () => Bar + Ink.Each<Laid>([new(14, 12, -30, 1), new(39, 10, 20, 0), new(54, 28, 70, 2), new(31, 27, -10, 1), new(11, 35, 60, 0), new(46, 47, -35, 1), new(25, 49, 15, 2)], spore => Sized("olive-one-to-three-celled", spore, Tint.Olive))),
        ("club-shaped-with-beak-and-cross-walls", () => Bar + Club),
        ("short-beaked-in-chains", () => Bar + Chains),
        ("beakless-with-cross-walls", () => Bar + Beakless(20, 17, 35) + Beakless(44, 40, -50) + Beakless(15, 46, 80)),
        ("thread-like-clear", () => Bar + Ink.Each<double>([9, 19, 29, 39, 49], x => Thread(x, 12 + (x * 7 % 15)))),
        ("sickle-shaped-many-celled", () => Bar + Sickle(18, 13, 10) + Sickle(44, 20, -50) + Sickle(19, 34, 40) + Sickle(46, 46, 0) + Sickle(15, 54, -20) + Sickle(31, 24, 100) + Sickle(53, 33, 70) + Sickle(33, 50, -70)),
        ("in-acervuli-with-setae", () => Bar + Acervulus),
        ("powdery-mildew-chains", () => Bar + Ink.Line("M12 58H48M30 58V53") + Ink.Each<double>([48.5, 32, 15.5], y => Mildew(30, y + 0.3, "powdery-mildew-chains"))),
        ("powdery-mildew-single", () => Bar + Ink.Line("M12 58H48M30 58V27") + Ink.Thin("M28 48h4M28 38h4", Tint.Ink) + Mildew(30, 18, "powdery-mildew-single")),
        ("powdery-mildew-two-shapes", () => Bar + TwoShapes),
        ("long-brown-cylindrical", () => Bar + Ink.Each<Laid>([new(16, 20, -65, 4), new(35, 17, 80, 5), new(52, 30, 60, 4), new(30, 46, -15, 5)], spore => Sized("long-brown-cylindrical", spore, Tint.Bronze))),
        ("thick-walled-oospores", () => Bar + Oospore(18, 18) + Oospore(44, 22) + Oospore(28, 45)),
        ("scab-spore-balls", () => Bar + Ball(21, 21, 16) + Ball(45, 45, 13)),
        ("round-sporangia-or-swellings", () => Bar + Ink.Line("M3 44Q14 40 17 27M17 20Q26 26 38 22M50 20Q56 18 61 8M38 30Q40 42 36 47M30 52Q22 60 8 58") + Ink.Each<Laid>([new(17, 22, 0, 7), new(44, 23, 0, 8), new(33, 50, 0, 5)], swelling => Ink.Outlined(Shape.Blob(swelling.X, swelling.Y, swelling.Walls), Tint.Sheet))));

    private readonly record struct Laid(double X, double Y, double Degrees, int Walls);

    private static string Sized(string state, Laid at, string tint) => Oval(at.X, at.Y, Sizes[state].Length, Sizes[state].Width, at.Degrees, tint, at.Walls);

    private static string Lemons
    {
        get
        {
            var (length, width) = Sizes["lemon-shaped-sporangia"];
            return Lemon(17, 17, length, width, -40) + Lemon(45, 15, length, width, 20) + Lemon(30, 34, length, width, 80) + Lemon(13, 45, length, width, -10) + Lemon(48, 43, length, width, -70);
        }
    }

    private static string Grapes
    {
        get
        {
            var (length, width) = Sizes["oval-in-grape-clusters"];
            Point[] heads = [new(17, 14), new(45, 16), new(32, 8.5), new(50, 35)];
            (double Turn, double Far)[] berries = [(0, 6), (60, 6), (120, 6), (180, 6), (240, 6), (300, 6), (0, 0), (30, 9.4), (150, 9.4), (270, 4)];
            return Ink.Line("M30 61L32 36L32 12M32 30L19 17M32 26L43 18M31 44L48 36") + Ink.Each(heads, head => Ink.Each(berries, berry =>
            {
                var at = head.Toward(berry.Turn, berry.Far);
                return at.Y < 3.5 ? "" : Oval(at.X, at.Y, length, width, berry.Turn, Tint.Gray);
            }));
        }
    }

    private static string Club
    {
        get
        {
            // Body and beak are about equally long; the beak is bent so that all 205 µm fit into the box.
            var body = Shape.Smooth(new(8, 10), new(12, 6.5), new(22, 8.5), new(36, 16), new(47, 25), new(52, 31), new(50.5, 32.5), new(44, 29), new(32, 23), new(18, 17.5), new(9.5, 14));
            return Ink.Line("M51.3 31.8Q61 43 53 50T32 51") + Ink.Outlined(body, Tint.Bronze)
                + Ink.Thin("M15 7.3L13 15.5M21.5 8.8L18 17.2M28 11.8L24 19.5M34.5 15.5L30 22.3M40.5 20L36 25.5M46 24.5L42 28.5M13.5 12L18.5 14M25.5 16L30 18.3", Tint.Ink);
        }
    }

    private static string Chains
    {
        get
        {
            Point[] first = [new(13, 48), new(24, 34.5), new(35, 21), new(46, 7.8)];
            return Ink.Line("M3 61L8 54.5") + Ink.Each(first, at => ShortBeaked(at.X, at.Y + 0.5, -51)) + ShortBeaked(37, 45, -20) + Ink.Line("M22 51L28 48.5");
        }
    }

    private static string ShortBeaked(double x, double y, double degrees)
    {
        var (length, width) = Sizes["short-beaked-in-chains"];
        double along = Units(length) / 2, across = Units(width) / 2;
        var middle = new Point(x, y);
        Point[] outline = [new(-along, 0), new(-along * 0.75, across * 0.8), new(-along * 0.2, across), new(along * 0.4, across * 0.5), new(along, 0), new(along * 0.4, -across * 0.5), new(-along * 0.2, -across), new(-along * 0.75, -across * 0.8)];
        var shape = Shape.Smooth([.. outline.Select(point => (point + middle).TurnedAround(middle, degrees))]);
        return Ink.FineOutlined(shape, Tint.Bronze) + Ink.Thin(string.Concat(new[] { -0.55, -0.15, 0.25 }.Select(share => middle.Toward(degrees, along * share)).Select(on => $"M{on.Toward(degrees + 90, across * 0.7)}L{on.Toward(degrees - 90, across * 0.7)}")), Tint.Ink);
    }

    private static string Beakless(double x, double y, double degrees)
    {
        var (length, width) = Sizes["beakless-with-cross-walls"];
        var middle = new Point(x, y);
        return Oval(x, y, length, width, degrees, Tint.Bronze, 3) + Ink.Thin($"M{middle.Toward(degrees, 5.5)}L{middle.Toward(degrees, 10)}M{middle.Toward(degrees, -0.5)}L{middle.Toward(degrees, 5)}M{middle.Toward(degrees + 180, 6)}L{middle.Toward(degrees + 180, 10.5)}", Tint.Ink);
    }

    /// <summary>As long as 67 µm; thinner than the pen of outlines, so drawn as two fine lines.</summary>
    private static string Thread(double x, double top)
    {
        double half = Units(Sizes["thread-like-clear"].Width) / 2, tall = Units(Sizes["thread-like-clear"].Length) - 1;
        double bow = x % 4 < 2 ? 3 : -3;
        string wave = $"q{Ink.Number(bow)} {Ink.Number(tall / 4)} 0 {Ink.Number(tall / 2)}t0 {Ink.Number(tall / 2)}";
        return Ink.Thin($"M{new Point(x - half, top)}{wave}M{new Point(x + half, top)}{wave}M{new Point(x - half, top)}h{Ink.Number(half * 2)}M{new Point(x - half, top + tall)}h{Ink.Number(half * 2)}", Tint.Ink)
            + Ink.Thin($"M{new Point(x - half + (bow * 0.25), top + (tall * 0.25))}h{Ink.Number(half * 2)}M{new Point(x - half, top + (tall * 0.5))}h{Ink.Number(half * 2)}M{new Point(x - half - (bow * 0.25), top + (tall * 0.75))}h{Ink.Number(half * 2)}", Tint.Ink);
    }

    private static string Sickle(double x, double y, double degrees)
    {
        double along = Units(Sizes["sickle-shaped-many-celled"].Length) / 2, half = Units(Sizes["sickle-shaped-many-celled"].Width) / 2;
        var middle = new Point(x, y);
        Point Turn(double px, double py) => new Point(x + px, y + py).TurnedAround(middle, degrees);
        var shape = Shape.Smooth(Turn(-along, 3.4), Turn(-along * 0.5, -half + 0.7), Turn(0, -half - 0.4), Turn(along * 0.5, -half + 0.7), Turn(along, 3.4), Turn(along * 0.5, half + 0.8), Turn(0, half), Turn(-along * 0.5, half + 0.8));
        return Ink.FineOutlined(shape, Tint.Sheet) + Ink.Thin($"M{Turn(0, -half)}L{Turn(0, half)}M{Turn(-along * 0.4, -half + 0.5)}L{Turn(-along * 0.4, half + 0.5)}M{Turn(along * 0.4, -half + 0.5)}L{Turn(along * 0.4, half + 0.5)}", Tint.Ink);
    }

    private static string Acervulus
    {
        get
        {
            var (length, width) = Sizes["in-acervuli-with-setae"];
            Laid[] free = [new(12, 12, 20, 0), new(27, 8, -30, 0), new(50, 12, 70, 0), new(56, 29, 10, 0), new(8, 28, -60, 0)];
            return Ink.Fill("M6 54Q32 42 46 54L44 57H8Z", Tint.Ink) + Ink.Line("M14 52L7 38M20 50L16 19M27 49L29 15M33 49L40 18M39 51L48 36") + Ink.Each<double>([12, 17, 22, 27, 32, 37], x => Oval(x + 0.5, 45 - (Math.Abs(x - 25) * -0.15), length, width, 90, Tint.Sheet))
                + Ink.Each(free, spore => Oval(spore.X, spore.Y, length, width, spore.Degrees, Tint.Sheet));
        }
    }

    private static string Mildew(double x, double y, string state) => Ink.Outlined(Shape.Blob(x, y, Units(Sizes[state].Width) / 2, 0, 0, Units(Sizes[state].Length) / 2), Tint.Sheet);

    private static string TwoShapes
    {
        get
        {
            var (length, width) = Sizes["powdery-mildew-two-shapes"];
            double tall = Units(length) / 2, half = Units(width) / 2;
            var lance = Shape.Straight(new(18, 19 - tall), new(18 + half, 24), new(18 + (half * 0.7), 19 + tall), new(18 - (half * 0.7), 19 + tall), new(18 - half, 24));
            var barrel = Shape.Smooth(new(45, 19 - tall), new(45 + (half * 0.9), 20 - tall), new(45 + half, 19), new(45 + (half * 0.9), 18 + tall), new(45, 19 + tall), new(45 - (half * 0.9), 18 + tall), new(45 - half, 19), new(45 - (half * 0.9), 20 - tall));
            return Ink.Line("M6 57H48M18 57V33M45 57V33") + Ink.Outlined(lance, Tint.Sheet) + Ink.Outlined(barrel, Tint.Sheet);
        }
    }

    private static string Oospore(double x, double y)
    {
        double radius = Units(Sizes["thick-walled-oospores"].Length) / 2;
        return Ink.Outlined(Shape.Blob(x, y, radius + 2.2), Tint.Sheet) + Ink.Line(Shape.Blob(x, y, radius - 0.8).Path) + Ink.FineOutlined(Shape.Blob(x, y, radius - 3), Tint.Gray);
    }

    private static string Ball(double x, double y, double radius)
    {
        var ball = Shape.Blob(x, y, radius, 0.06, 3);
        return Ink.Outlined(ball, Tint.Tan) + Ink.Each(Texture.Grid(ball, 4.6, 2, 2), at => Ink.FineOutlined(Shape.Blob(at.X, at.Y, 1.9), Tint.Sheet));
    }
}
