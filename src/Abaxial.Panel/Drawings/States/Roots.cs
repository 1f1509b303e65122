namespace Abaxial.Panel.Drawings.States;

/// <summary>The roots of a plant washed free of soil.</summary>
internal static class Roots
{
    public static IEnumerable<Sketch> All => Sketch.Of("roots",
        ("sound", () => Root(Tint.White, FineRoots)),
        ("brown-rotted", () => Root(Tint.Dead, "") + Ink.Thin("M26 24l12-6M26 30l12-6M26 18l12-6M27 37l9-5", Tint.Dark) + Ink.Line("M20 33L13 40M44 33L51 40") + Ink.Fill(Ink.Dots([new(13, 40), new(51, 40), new(29, 52), new(35, 52)], 1.9), Tint.Ink)),
        ("corky", () => Root(Tint.Tan, "") + Ink.Line(Main) + Corky),
        ("galled", () => Root(Tint.White, FineRoots) + string.Concat(Galls.Select((at, index) => Ink.Outlined(Shape.Blob(at.X, at.Y, 4.6 - (index % 3 * 0.7), 0.14, index), Tint.Tan)))));

    private const string Taproot = "M25 2.5L25 18Q27 36 32 56Q37 36 39 18L39 2.5Z";
    private const string Main = "M26 20Q16 24 10 38M38 20Q48 24 54 38M28 34Q22 40 19 54M36 34Q42 40 45 54";
    private const string FineRoots = "M19 25Q12 26 6 30M14 31Q12 38 13 46M45 25Q52 26 58 30M50 31Q52 38 51 46M22 43Q17 46 12 54M42 43Q47 46 52 54M20 48Q24 52 25 59M44 48Q40 52 39 59M30 46Q27 52 30 60M33.5 47Q36 53 34 61";
    private static readonly Point[] Galls = [new(17, 26), new(10, 38), new(47, 26), new(54, 38), new(21, 44), new(43, 44), new(18.5, 55), new(46, 55), new(32, 50), new(32, 33)];

    private static string Root(string tint, string fine) => (fine.Length > 0 ? Ink.Line(Main + fine) : "") + Ink.Outlined(Taproot, tint);

    private static string Corky
    {
        get
        {
            (double Y, double Left, double Right)[] bands = [(8, 25, 39), (13, 25, 39), (18, 25, 39), (24, 26, 38), (30, 27, 37), (36, 28, 36), (43, 29, 35)];
            var rough = string.Concat(bands.Select(band => $"M{Ink.Number(band.Left - 1.5)} {Ink.Number(band.Y)}l2 1.6 2-1.6 2 1.6 2-1.6{(band.Right - band.Left > 9 ? " 2 1.6 2-1.6 2 1.6" : "")}"));
            return Ink.Line(rough, Tint.Dark) + Ink.Line("M20 22l3.5 3.5M15.5 25.5l4 3M11.5 31l4.5 2M44 22l-3.5 3.5M48.5 25.5l-4 3M52.5 31l-4.5 2M22 40l4 2M19.5 46l4 1.5M42 40l-4 2M44.5 46l-4 1.5");
        }
    }
}
