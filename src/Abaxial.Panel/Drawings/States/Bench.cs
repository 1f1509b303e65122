namespace Abaxial.Panel.Drawings.States;

/// <summary>Results of the bench: strips, bands on a gel, curves, a glass of water, a slice, a plate.</summary>
internal static class Bench
{
    private static readonly string[] Strips = ["phytophthora-strip", "spotted-wilt-strip", "clavibacter-strip", "potato-virus-y-strip", "tobamovirus-strip", "ralstonia-strip"];

    public static IEnumerable<Sketch> All =>
    [
        .. Strips.SelectMany(character => Sketch.Of(character, ("positive", () => Strip(control: true, test: true)), ("negative", () => Strip(control: true, test: false)), ("invalid", () => Strip(control: false, test: true)))),
        .. Sketch.Of("pcr-p-infestans",
            ("positive", () => Axes + Curve("M10 50H22Q30 50 34 30T56 10") + Ink.Thin("M10 45H30Q38 45 41 36T56 26", Tint.Gray)),
            ("negative", () => Axes + Curve("M10 50H58") + Ink.Thin("M10 45H30Q38 45 41 36T56 26", Tint.Gray)),
            ("inconclusive", () => Axes + Curve("M10 50H46Q52 50 58 31") + Ink.Thin("M10 45H30Q38 45 41 36T56 26", Tint.Gray) + Question(22, 16)),
            ("inhibited", () => Axes + Curve("M10 50H58") + Ink.Thin("M10 45H58", Tint.Gray) + Ink.Line("M34 12V24M34 29V29.5M25 32L34 6L43 32Z")),
            ("control-failed", () => Axes + Curve("M10 50H22Q30 50 34 30T56 10M10 54H30Q42 54 46 34T58 18") + Ink.Line("M12 10L26 24M26 10L12 24"))),
        .. Sketch.Of("ring-rot-test",
            ("positive", () => Gel(true, true)),
            ("negative", () => Gel(false, true)),
            ("invalid", () => Gel(true, false))),
        .. Sketch.Of("bacterial-streaming",
            ("present", () => Glass(Ink.Fill("M26 28Q20 40 24 56Q28 48 27 40Q31 48 30 57Q35 50 33 40Q37 48 38 56Q43 42 38 28Z", Tint.White) + Ink.Thin("M27 29Q22 42 25 54M31 29Q28 42 30 56M34 29Q36 42 34 55M37 29Q42 42 39 54", Tint.Dark))),
            ("absent", () => Glass(""))),
        .. Sketch.Of("soft-rot-slice",
            ("rots", () => Slice(RottenPit)),
            ("sound", () => Slice(Ink.Line("M24 27L40 35M40 27L24 35", Tint.Dark)))),
        .. Sketch.Of("culture",
            ("bacteria-only", () => Plate(string.Concat(Colonies.Select(at => Ink.Edged(Shape.Blob(at.X, at.Y, 3.4), Tint.Yellow) + Ink.Fill(Ink.Dots([at + new Point(-1, -1)], 0.8), Tint.White))))),
            ("nothing", () => Plate(""))),
    ];

    private static readonly Point[] Colonies = [new(18, 22), new(28, 15), new(41, 18), new(49, 29), new(45, 43), new(32, 50), new(19, 44), new(12, 33), new(43, 33), new(22, 33)];

    private static string Axes => Ink.Line("M6 4V58H61") + Ink.Thin("M6 33H9M12 33H15M18 33H21M24 33H27M30 33H33M36 33H39M42 33H45M48 33H51M54 33H57M60 33H61", Tint.Ink);

    /// <summary>A lateral-flow strip: the line at C is the control, the line at T the test.</summary>
    private static string Strip(bool control, bool test)
    {
        string lines = (control ? Ink.Fill("M20 20.5H37V25H20Z", Tint.Ink) : "") + (test ? Ink.Fill("M20 31.5H37V36H20Z", Tint.Ink) : "");
        const string Letters = "M46 21Q42 19.5 42 22.8T46 24.6M41.5 31.5H46.5M44 31.5V36";
        return Ink.Outlined("M13 3H51V61H13Z", Tint.Sheet) + Ink.Line("M19 14H38V42H19Z") + lines + Ink.Line(Letters) + Ink.Outlined(Shape.Blob(28.5, 51.5, 5, 0, 0, 4), Tint.Water);
    }

    private static string Curve(string path) => Ink.Line(path);

    private static string Question(double x, double y) => Ink.Line($"M{new Point(x - 5, y - 3)}q0-6 5-6t5 5q0 3-5 6v3M{new Point(x, y + 9)}v.5");

    /// <summary>Three lanes: ladder, sample, positive control.</summary>
    private static string Gel(bool sample, bool control) =>
        Ink.Outlined("M3 5H61V60H3Z", Tint.Sheet) + Ink.Line("M8 11H20M26 11H38M44 11H56") + Ink.Fill("M8 18H20V20H8ZM8 25H20V27H8ZM8 33H20V35H8ZM8 43H20V45H8ZM8 52H20V54H8Z", Tint.Gray)
        + (sample ? Ink.Fill(Band(26), Tint.Ink) : "") + (control ? Ink.Fill(Band(44), Tint.Ink) : Ink.Line("M44 30L56 42M56 30L44 42"));

    private static string Band(int left) => $"M{left} 33H{left + 12}V39H{left}Z";

    private static string Glass(string strands) => Ink.Fill("M13 20H51L48 60H16Z", Tint.Water) + strands + Ink.Line("M12 8L16 60.5H48L52 8M13 20H51") + Ink.Outlined("M25 4H39V28H25Z", Tint.Stem) + Ink.Thin("M29 5V27M35 5V27", Tint.Dead);

    private static string Slice(string middle) => Ink.Outlined(Shape.Blob(32, 31, 29, 0, 0, 22), Tint.Skin) + Ink.Edged(Shape.Blob(32, 30, 26, 0, 0, 19), Tint.Flesh) + middle + Ink.Line("M3.5 36Q6 58 32 58T60.5 36");

    private static string RottenPit
    {
        get
        {
            var pit = Shape.Blob(32, 31, 15, 0.14, 2, 10);
            return Ink.Edged(pit, Tint.Dead) + Texture.Dashes(pit, 4.4, Tint.White) + Ink.Line("M19 27Q24 21.5 32 22Q42 22 45.5 28", Tint.Dark);
        }
    }

    private static string Plate(string colonies) => Ink.Outlined(Shape.Blob(32, 32, 29), Tint.Sheet) + Ink.Outlined(Shape.Blob(32, 32, 25), Tint.Flesh) + Ink.Outlined(Shape.Smooth(new(28, 29), new(35, 28), new(37, 34), new(31, 37), new(27, 34)), Tint.Dead) + colonies;
}
