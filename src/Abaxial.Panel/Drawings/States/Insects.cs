using Abaxial.Panel.Drawings.Parts;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Insects and mites, each by its outline, enlarged; not to one scale.</summary>
internal static class Insects
{
    public static IEnumerable<Sketch> All => Sketch.Of("insects-or-mites",
        ("none", () => LeafPart.Upper),
        ("leafhoppers", () => Ink.Line("M20 26L8 20M20 38L8 44M30 40L22 54M30 24L22 10M42 40L40 55L50 60M42 24L40 9L50 4M12 30L3 25M12 34L3 39") + Ink.Outlined("M8 32Q10 24 20 23L46 27L61 32L46 37L20 41Q10 40 8 32Z", Tint.Pale) + Ink.Line("M21 23.5Q26 32 21 40.5M24 32H60") + Eyes(11.5, 28.5, 35.5)),
        ("psyllids", () => Ink.Line("M16 24L4 15M16 40L4 49M22 26L14 10M22 38L14 54M30 24L30 10M30 40L30 54") + Ink.Outlined("M10 32Q11 24 20 24Q34 26 41 32Q34 38 20 40Q11 40 10 32Z", Tint.Gray) + Ink.Outlined("M22 29Q38 12 60 17Q62 24 30 31Z", Tint.Water) + Ink.Outlined("M22 35Q38 52 60 47Q62 40 30 33Z", Tint.Water) + Ink.Line("M28 28Q42 20 54 20.5M28 36Q42 44 54 43.5M38 25L50 26M38 39L50 38") + Eyes(12.5, 27.5, 36.5)),
        ("thrips", () => Ink.Line("M8 28L3 23M8 36L3 41M18 26L14 18M18 38L14 46M26 26L25 17M26 38L25 47") + Ink.Outlined("M7 32Q7 27 13 26Q36 25 50 28L61 32L50 36Q36 39 13 38Q7 37 7 32Z", Tint.Bronze) + Ink.Thin("M34 26V38M40 26.5V37.5M46 27.5V36.5M52 29V35", Tint.Dark) + Ink.Line("M20 28Q38 16 57 20M20 36Q38 48 57 44") + Ink.Line("M34 20L33 14M40 18.5L40 12M46 18.5L47 12M52 19L54 13M34 44L33 50M40 45.5L40 52M46 45.5L47 52M52 45L54 51")),
        ("mites-or-webbing", () => Ink.Thin("M2 8L62 26M2 26L62 12M4 54L60 60M4 62L62 46M10 3L4 60M58 3L60 60", Tint.Ink) + Ink.Line("M24 26L15 17L8 19M22 31L12 28L6 32M22 37L12 40L6 37M25 43L17 51L10 50M40 26L49 17L56 19M42 31L52 28L58 32M42 37L52 40L58 37M39 43L47 51L54 50") + Ink.Outlined(Shape.Blob(32, 34, 11.5, 0, 0, 14), Tint.Yellow) + Ink.Fill(Ink.Dots([new(27, 32), new(37, 32)], 2.6), Tint.Dark)),
        ("aphids", () => Ink.Line("M16 27L8 14L3 13M16 37L8 50L3 51M22 24L17 13M22 40L17 51M32 22L32 11L28 6M32 42L32 53L28 58M42 24L47 13M42 40L47 51") + Ink.Line("M50 25L57 18M50 39L57 46") + Ink.Outlined("M11 32Q12 26 20 23Q34 15 48 22Q58 28 59 32Q58 36 48 42Q34 49 20 41Q12 38 11 32Z", Tint.Leaf) + Ink.Thin("M30 19.5Q33 32 30 44.5M38 19.5Q41 32 38 44.5M46 22.5Q49 32 46 41.5", Tint.Dark) + Eyes(15, 28, 36)),
        ("whiteflies", () => Ink.Line("M26 14L20 4M38 14L44 4") + Ink.Outlined("M32 12Q39 13 37 22L36 52Q32 60 28 52L27 22Q25 13 32 12Z", Tint.Yellow) + Ink.Outlined("M29 20Q8 30 7 54Q18 62 31 34Z", Tint.White) + Ink.Outlined("M35 20Q56 30 57 54Q46 62 33 34Z", Tint.White) + Ink.Fill(Ink.Dots([new(28.5, 15.5), new(35.5, 15.5)], 1.5), Tint.Dark)),
        ("flea-beetles", () => Ink.Outlined("M40 43L51 38Q58 42 54 48L44 50Z", Tint.Dark) + Ink.Outlined("M40 21L51 26Q58 22 54 16L44 14Z", Tint.Dark) + Ink.Line("M53 47L61 55M53 17L61 9M22 24L16 12M22 40L16 52M13 29Q8 22 2.5 21M13 35Q8 42 2.5 43") + Ink.Outlined("M9 32Q10 25 17 24Q22 18 36 18Q52 21 54 32Q52 43 36 46Q22 46 17 40Q10 39 9 32Z", Tint.Dark) + Ink.Line("M20 32H53", Tint.White) + Ink.Thin("M18 25Q21 32 18 39", Tint.White)),
        ("beetles", () => Ink.Line("M18 24L10 12M18 40L10 52M30 16L26 5M30 48L26 59M44 17L48 6M44 47L48 58M9 29L3 24M9 35L3 40") + Ink.Outlined("M6 32Q7 25 14 24Q17 16 34 14Q58 17 60 32Q58 47 34 50Q17 48 14 40Q7 39 6 32Z", Tint.Yellow) + Ink.Line("M20 18.5Q24 32 20 45.5M22 32H60") + Ink.Line("M25 27Q42 22 56 27M25 22Q40 15 51 20M25 37Q42 42 56 37M25 42Q40 49 51 44", Tint.Dark) + Ink.Fill(Ink.Dots([new(15, 28), new(15, 36), new(17, 32)], 1.2), Tint.Dark)),
        ("other", () => Ink.Outlined(Caterpillar, Tint.Leaf) + Ink.Line("M14 47V52M20 46V51M26 44V49M40 45V51M46 47V52M52 48V53") + Ink.Thin("M17 34Q20 40 18 47M24 29Q27 36 25 44M32 26V40M40 29Q37 36 39 44M47 34Q44 40 46 47", Tint.Dark) + Ink.Fill(Ink.Dots([new(8.5, 39)], 1.3), Tint.Dark)));

    private static readonly Shape Caterpillar = Shape.Smooth(new(4, 41), new(7, 34), new(14, 34), new(22, 28), new(32, 25), new(42, 29), new(50, 36), new(59, 42), new(57, 48), new(48, 48), new(40, 44), new(32, 40), new(24, 44), new(15, 48), new(7, 47));

    private static string Eyes(double x, double left, double right) => Ink.Fill(Ink.Dots([new(x, left), new(x, right)], 1.6), Tint.Dark);
}
