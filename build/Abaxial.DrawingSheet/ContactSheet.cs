using System.Globalization;
using System.Text;
using Abaxial.Knowledge;
using Abaxial.Panel.Drawings;

namespace Abaxial.DrawingSheet;

/// <summary>The contact sheet: a page of words, and one SVG for each group of characters, which follows the reader's theme.</summary>
internal static class ContactSheet
{
    public const string Folder = "drawings";

    private const int Across = 8;
    private const int Cell = 104;
    private const int Size = 64;

    private static readonly (string Name, string Title, string[] Characters)[] Groups =
    [
        ("plant", "The plant and the planting", ["organs-affected", "field-pattern", "leaf-position", "wilting", "watering", "sample-condition", "roots"]),
        ("leaf-spots", "Spots of the leaf", ["leaf-lesion-size", "leaf-lesion-shape", "leaf-lesion-color", "leaf-lesion-border", "concentric-rings", "pycnidia", "shot-holes", "dead-center"]),
        ("leaf", "Color and shape of the leaf, growth, insects", ["leaf-yellowing", "leaf-distortion", "leaf-upper-growth", "leaf-underside-growth", "leaf-underside-growth-place", "surface", "insects-or-mites"]),
        ("stem", "Stem", ["stem-lesion", "stem-lesion-place", "stem-growth", "stem-inside"]),
        ("fruit", "Tomato fruit", ["fruit-lesion-place", "fruit-lesion-color", "fruit-lesion-size", "fruit-marks", "fruit-growth", "fruit-height", "fruit-ripeness", "fruit-flesh"]),
        ("tuber", "Potato tuber", ["tuber-surface", "tuber-flesh", "tuber-rot-edge", "tuber-rot-start", "tuber-growth", "tuber-rot-depth"]),
        ("bench", "Microscope and bench", []),
    ];

    /// <summary>Every file of the sheet, by its name under the docs folder. The same knowledge and drawings give the same bytes.</summary>
    public static IEnumerable<(string Name, string Text)> Files()
    {
        var knowledge = BuiltIn.Solanum();
        var drawings = StateDrawings.All.ToLookup(drawing => drawing.CharacterId);
        string[] rest = [.. drawings.Select(group => group.Key).Except(Groups.SelectMany(group => group.Characters))];
        var groups = Groups.Select(group => group.Characters.Length > 0 ? group : group with { Characters = rest }).ToArray();
        foreach (var (name, _, characters) in groups) yield return ($"{Folder}/{name}.svg", Sheet(knowledge, characters.Select(character => drawings[character].ToArray())));
        yield return ("drawings.md", SheetPage.Text(knowledge, groups.Select(group => (group.Name, group.Title, group.Characters.SelectMany(character => drawings[character]).ToArray())).ToArray()));
    }

    private static string Sheet(KnowledgeBase knowledge, IEnumerable<StateDrawing[]> characters)
    {
        var body = new StringBuilder();
        int y = 8;
        foreach (var states in characters)
        {
            var character = knowledge.FindCharacter(states[0].CharacterId); // none for the surfaces, whose words are of the vocabulary
            string title = character is null ? "Surface when growth was looked for" : knowledge.Texts.Character(character);
            body.Append(CultureInfo.InvariantCulture, $"<text x=\"8\" y=\"{y + 14}\" class=\"title\">{Escaped(title)}</text>\n");
            y += 24;
            for (int i = 0; i < states.Length; i++)
            {
                int x = 8 + (i % Across * Cell), top = y + (i / Across * Cell);
                body.Append(CultureInfo.InvariantCulture, $"<g transform=\"translate({x} {top})\" class=\"pen\">{states[i].Elements}</g>\n");
                int line = 0;
                string name = character is null ? knowledge.Texts.Word($"{states[i].CharacterId}.{states[i].StateId}") : knowledge.Texts.State(character, character.StateIndex(states[i].StateId));
                foreach (string words in Lines(name))
                {
                    body.Append(CultureInfo.InvariantCulture, $"<text x=\"{x}\" y=\"{top + Size + 10 + (line++ * 10)}\">{Escaped(words)}</text>\n");
                }
            }

            y += (states.Length + Across - 1) / Across * Cell;
        }

        int wide = 8 + (Across * Cell);
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {wide} {y}\" width=\"{wide}\" height=\"{y}\">\n<style>{Style()}</style>\n<rect width=\"{wide}\" height=\"{y}\" class=\"sheet\"/>\n{body}</svg>\n";
    }

    private static string Style()
    {
        string dark = string.Concat(SheetColors.Dark().Select(color => $"{color.Name}:{color.Value};"));
        return "svg{color:#1d2420;--sheet:#fff}.sheet{fill:var(--sheet)}text{font:9px sans-serif;fill:currentColor}.title{font-weight:700;font-size:13px}"
            + ".pen{fill:none;stroke:currentColor;stroke-width:1.6;stroke-linecap:round;stroke-linejoin:round}"
            + $"@media (prefers-color-scheme:dark){{svg{{color:#ecebe4;--sheet:#1c2122;{dark}}}}}";
    }

    /// <summary>Words broken into lines that fit under a drawing.</summary>
    private static IEnumerable<string> Lines(string text)
    {
        var line = new StringBuilder();
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > 19)
            {
                yield return line.ToString();
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : "").Append(word);
        }

        yield return line.ToString();
    }

    private static string Escaped(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);
}
