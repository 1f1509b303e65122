namespace Abaxial.Panel.Drawings.States;

/// <summary>The planting from above: a plant is a dot, an affected one is large and dark.</summary>
internal static class Fields
{
    private const int Rows = 8;

    public static IEnumerable<Sketch> All => Sketch.Of("field-pattern",
        ("scattered-plants", () => Field((row, column) => (row, column) is (0, 5) or (1, 1) or (3, 4) or (4, 7) or (6, 2) or (7, 5))),
        ("spreading-patch", () => Field((row, column) => Near(row, column, 3.4, 3.6) < 1.7 || (row, column) is (1, 5) or (5, 1) or (3, 6) or (6, 4) or (5, 5)) + Ink.Line("M47 47L54 54M54 49.5V54H49.5M17 17L10 10M10 14.5V10H14.5")),
        ("sharp-round-patch-not-spreading", () => Field((row, column) => Near(row, column, 3.5, 3.5) < 2.3) + Ink.Line(Shape.Blob(32, 32, 19.5).Path)),
        ("row-or-spray-pattern", () => Field((_, column) => column is 2 or 5)),
        ("low-or-shaded-spot", () => Field((row, column) => row is 5 or 6 && Math.Abs(column - 3.5) < 2) + Hollow),
        ("field-edge", () => Field((_, column) => column <= 1)),
        ("uniform", () => Field((_, _) => true)),
        ("single-plant", () => Field((row, column) => (row, column) == (3, 4))));

    /// <summary>The map maker's sign for a hollow: a line with strokes to the inside.</summary>
    private static string Hollow
    {
        get
        {
            var rim = Shape.Blob(32, 48.5, 18.5, 0.04, 2, 11.5);
            return Ink.Line(rim.Path) + Ink.Line(string.Concat(rim.Along(16).Select(point => $"M{point}L{point + ((rim.Middle - point) * (2.6 / (rim.Middle - point).Length))}")));
        }
    }

    private static double Near(int row, int column, double toRow, double toColumn) => new Point(column - toColumn, row - toRow).Length;

    private static string Field(Func<int, int, bool> affected)
    {
        var all = Enumerable.Range(0, Rows * Rows).Select(index => (Row: index / Rows, Column: index % Rows, At: new Point(7.5 + (index % Rows * 7), 7.5 + (index / Rows * 7)))).ToArray();
        return Ink.Line("M2 2H62V62H2Z") + Ink.Fill(Ink.Dots(all.Where(plant => !affected(plant.Row, plant.Column)).Select(plant => plant.At), 1.4), Tint.Vein)
            + Ink.Fill(Ink.Dots(all.Where(plant => affected(plant.Row, plant.Column)).Select(plant => plant.At), 2.9), Tint.Ink);
    }
}
