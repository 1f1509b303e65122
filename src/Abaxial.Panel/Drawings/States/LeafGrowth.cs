using static Abaxial.Panel.Drawings.Parts.GrowthPart;
using static Abaxial.Panel.Drawings.Parts.LeafPart;
using static Abaxial.Panel.Drawings.Parts.LesionPart;

namespace Abaxial.Panel.Drawings.States;

/// <summary>Growth on the leaf, above and below, and where it sits.</summary>
internal static class LeafGrowth
{
    public static IEnumerable<Sketch> All =>
    [
        .. Sketch.Of("leaf-upper-growth",
            ("none", () => LeafSpots.PlainSpot),
            ("white-powder", () => Upper + Powder(Patches)),
            ("gray-brown-fuzz", () => Upper + Ink.Edged(Large, Tint.Dead) + Fuzz(Large)),
            ("white-down", () => LeafSpots.PlainSpot + Tufts),
            ("dark-velvet", () => Upper + Velvet(Large, Tint.Dark, Tint.Gray))),
        .. Sketch.Of("leaf-underside-growth",
            ("none", () => Lesion),
            ("white-down", () => Lesion + Tufts),
            ("gray-brown-fuzz", () => Under + Ink.Edged(Large, Tint.Dead) + Fuzz(Large)),
            ("olive-velvet", () => Under + Velvet(Large, Tint.Olive, Tint.Pale)),
            ("white-powder", () => Under + Powder(Patches)),
            ("dark-specks", () => Under + Specks(Outline.Times(0.8), 6.4)),
            ("dark-velvet", () => Under + Velvet(Large, Tint.Dark, Tint.Gray)),
            ("white-cotton", () => Under + Cotton(Shape.Blob(31, 35, 16, 0.12, 2)))),
        .. Sketch.Of("leaf-underside-growth-place",
            ("ring-at-lesion-edge", () => Under + DownRing(Large.Times(1.16), Large.Times(0.74), 3.8) + Dead(Large.Times(0.74))),
            ("across-whole-lesion", () => Lesion + Down(Large.Times(1.06))),
            ("at-center", () => Lesion + Down(Large.Times(0.42))),
            ("off-the-lesions", () => Under + Patch(Shape.Blob(23, 41, 8.5, 0.06, 2)) + DownTufts(4.8, new(43, 43), new(45, 30), new(31, 21)))),
    ];

    private static readonly Shape[] Patches = [Shape.Blob(21, 40, 6.5, 0.12, 1), Shape.Blob(43, 36, 7, 0.12, 3), Shape.Blob(30, 21, 6, 0.12, 5)];

    private static string Tufts => DownTufts(5, new(24, 26.5), new(38, 25), new(43, 38), new(31, 35), new(22, 40), new(34, 46));

    private static string Lesion => Under + Patch(Large);
}
