using System.Globalization;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Panel.Drawings;

namespace Abaxial.DrawingSheet;

/// <summary>The page of words around the sheets.</summary>
internal static class SheetPage
{
    public static string Text(KnowledgeBase knowledge, IReadOnlyList<(string Name, string Title, StateDrawing[] Drawings)> groups)
    {
        int drawings = groups.Sum(group => group.Drawings.Length);
        int pictures = groups.SelectMany(group => group.Drawings).Select(drawing => drawing.Elements).Distinct(StringComparer.Ordinal).Count();
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # The drawings

            {drawings} states and surfaces have a line drawing of our own, {pictures} different pictures: where two looks show the same thing, they share it. All are made of
            the same parts (one leaf, one lesion, one fruit, one stem, one tuber, one plant, spores to one scale) in a box of 64 x 64 with a pen of 1.6 and a fine pen of 0.8 for
            texture. A picture shows what differs and nothing else. Nothing is told by color alone: brown is hatched, yellow is dotted, purple is lined upright, bronze is
            flecked, wet is dashed, down has hairs, cotton has curls, powder has grains, fuzz has heads, velvet has a nap.

            They are drawn by `src/Abaxial.Panel/Drawings`: parts in `Parts/`, one line for each state in `States/`, texts in `texts.en.json` and `texts.es.json`, colors in
            `wwwroot/drawings.css`. On a page, `<Drawing Of="leaf-lesion-shape" State="round" Size="64" />` puts one in place; `StateDrawings.Find` gives its SVG and its text.

            The leaf is 1.1 mm to the unit. Spores are 2 µm to the unit, with a bar of 20 µm; lengths and widths are means of the knowledge, where their sources stand. The
            details of sporangia and threads and the insects are enlarged further and are not to that scale. Shapes are from general knowledge of the trade, drawn for this
            project, not after any published figure.

            This page and its sheets are written by `dotnet run --project build/Abaxial.DrawingSheet -- docs`. The sheets follow the light or dark theme of the reader.


            """);
        foreach (var (name, title, _) in groups) page.Append(CultureInfo.InvariantCulture, $"## {title}\n\n![{title}]({ContactSheet.Folder}/{name}.svg)\n\n");
        page.Append("## Not drawn\n\n| what | why |\n|---|---|\n");
        foreach (var (character, reason) in Undrawn.WholeCharacters) page.Append(CultureInfo.InvariantCulture, $"| {Named(knowledge, character)} | {reason} |\n");
        foreach (var ((character, state), reason) in Undrawn.SingleStates)
        {
            var known = knowledge.FindCharacter(character)!;
            page.Append(CultureInfo.InvariantCulture, $"| {Named(knowledge, character)}: {knowledge.Texts.State(known, known.StateIndex(state))} | {reason} |\n");
        }

        return page.Append("\nMeasured characters (lengths in micrometers) have no states to draw.\n").ToString();
    }

    private static string Named(KnowledgeBase knowledge, string character) => knowledge.Texts.Character(knowledge.FindCharacter(character)!);
}
