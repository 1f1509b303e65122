using System.Text.RegularExpressions;
using System.Xml.Linq;
using Abaxial.DrawingSheet;
using Abaxial.Knowledge;
using Abaxial.Panel.Drawings;
using Abaxial.Panel.Drawings.States;

namespace Abaxial.Tests.Panel;

/// <summary>The drawings of the states, as text. What they look like is held in the browser tests.</summary>
public sealed partial class DrawingTests
{
    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();

    private static readonly string[] Elements = ["svg", "path"];

    private static readonly string[] Attributes = ["viewBox", "d", "fill", "fill-rule", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin"];

    [Fact]
    public void Every_state_has_a_drawing_or_a_reason_why_not()
    {
        foreach (var (character, state) in KnownStates())
        {
            Assert.True((StateDrawings.Find(character, state) is null) == (Undrawn.Reason(character, state) is not null), $"{character}/{state} has both or neither.");
        }
    }

    [Fact]
    public void Nothing_is_drawn_or_excused_that_the_knowledge_does_not_have()
    {
        var known = KnownStates().ToHashSet();
        Assert.All(StateDrawings.All, drawing => Assert.Contains((drawing.CharacterId, drawing.StateId), known));
        Assert.All(Undrawn.SingleStates.Keys, state => Assert.Contains(state, known));
        Assert.All(Undrawn.WholeCharacters.Keys, id => Assert.NotNull(Knowledge.FindCharacter(id)));
        Assert.True(StateDrawings.All.Count() >= 80);
    }

    [Fact]
    public void Every_drawing_has_a_text_in_each_language_and_no_text_is_left_over()
    {
        var drawn = StateDrawings.All.Select(drawing => (drawing.CharacterId, drawing.StateId)).ToHashSet();
        foreach (string language in DrawingTexts.Languages)
        {
            var texts = DrawingTexts.Of(language);
            Assert.Equal(drawn.Order(), texts.Keys.Order());
            Assert.All(texts, text => Assert.InRange(text.Value.Length, 5, 110));
            Assert.All(texts.GroupBy(text => text.Key.Character), texts => Assert.Equal(texts.Count(), texts.Select(text => text.Value).Distinct().Count()));
        }

        Assert.All(StateDrawings.All, drawing => Assert.NotEqual(drawing.Alt("en"), drawing.Alt("es")));
        Assert.Equal(StateDrawings.All.First().Alt("en"), StateDrawings.All.First().Alt("qu"));
        Assert.Equal(StateDrawings.All.First().Alt("es"), StateDrawings.All.First().Alt("es-MX"));
    }

    [Fact]
    public void Every_drawing_is_a_document_of_plain_paths()
    {
        foreach (var drawing in StateDrawings.All)
        {
            var document = XDocument.Parse(drawing.Svg);
            Assert.Equal("0 0 64 64", document.Root!.Attribute("viewBox")!.Value);
            Assert.All(document.Descendants(), element => Assert.Contains(element.Name.LocalName, Elements));
            Assert.All(document.Descendants().Attributes().Where(attribute => !attribute.IsNamespaceDeclaration), attribute => Assert.Contains(attribute.Name.LocalName, Attributes));
            Assert.All(document.Descendants().Attributes("d"), path => Assert.Matches(PathText(), path.Value));
        }
    }

    [Fact]
    public void There_is_one_pen_and_one_fine_pen()
    {
        foreach (var document in StateDrawings.All.Select(drawing => XDocument.Parse(drawing.Svg)))
        {
            Assert.Equal(Ink.Number(Ink.Pen), document.Root!.Attribute("stroke-width")!.Value);
            Assert.All(document.Root.Elements().Attributes("stroke-width"), width => Assert.Equal(Ink.FinePen, double.Parse(width.Value)));
        }
    }

    [Fact]
    public void Every_color_is_a_token_of_the_style_sheet_in_both_themes()
    {
        string css = File.ReadAllText(Repository.PathOf("src", "Abaxial.Panel", "wwwroot", "drawings.css"));
        string light = css[..css.IndexOf("@media", StringComparison.Ordinal)];
        var used = StateDrawings.All.SelectMany(drawing => XDocument.Parse(drawing.Svg).Descendants().Attributes().Where(attribute => attribute.Name.LocalName is "fill" or "stroke")).Select(attribute => attribute.Value).Distinct();
        foreach (string color in used.Except(["none", "currentColor", "var(--sheet,#fff)"]))
        {
            var token = Token().Match(color);
            Assert.True(token.Success, $"{color} is no token.");
            Assert.Contains($"{token.Groups[1].Value}: {token.Groups[2].Value};", light, StringComparison.Ordinal);
            Assert.Equal(3, Regex.Count(css, $"{token.Groups[1].Value}: #"));
        }
    }

    [Fact]
    public void No_two_states_of_a_character_share_a_picture() =>
        Assert.All(StateDrawings.All.GroupBy(drawing => drawing.CharacterId), states => Assert.Equal(states.Count(), states.Select(drawing => drawing.Elements).Distinct().Count()));

    [Fact]
    public void Spores_are_drawn_as_large_as_the_knowledge_says()
    {
        foreach (var (state, size) in Spores.Sizes)
        {
            InsideMeans($"spore-length/{state}", size.Length);
            if (state != "thick-walled-oospores") InsideMeans($"spore-width/{state}", size.Width); // round: their width is not measured
        }
    }

    [Fact]
    public void The_contact_sheet_in_the_docs_is_the_one_that_is_drawn()
    {
        foreach (var (name, text) in ContactSheet.Files())
        {
            Assert.True(text == File.ReadAllText(Repository.PathOf(["docs", .. name.Split('/')])), $"docs/{name} is old: dotnet run --project build/Abaxial.DrawingSheet -- docs");
        }
    }

    [Fact]
    public void The_panel_needs_no_server() =>
        Assert.All(typeof(StateDrawings).Assembly.GetReferencedAssemblies(), reference =>
            Assert.True(reference.Name == "Abaxial" || reference.Name!.StartsWith("System.", StringComparison.Ordinal) || reference.Name.StartsWith("Microsoft.AspNetCore.Components", StringComparison.Ordinal), reference.Name));

    private static void InsideMeans(string row, double micrometers)
    {
        var means = Knowledge.Document.Causes.SelectMany(cause => cause.Rows.Where(entry => entry.Key == row).Select(entry => entry.Value.Mean!.Value)).ToArray();
        Assert.NotEmpty(means);
        Assert.InRange(micrometers, means.Min(), means.Max());
    }

    private static IEnumerable<(string Character, string State)> KnownStates() =>
        Knowledge.Characters.SelectMany(character => character.States.Select(state => (character.Id, state))).Concat(Vocabulary.Surfaces.Select(surface => (Surfaces.Name, surface)));

    [GeneratedRegex("^[MLHVCQTAZmlhvcqtaz0-9 .-]+$")]
    private static partial Regex PathText();

    [GeneratedRegex("^var\\((--drawn-[a-z-]+),(#[0-9a-f]+)\\)$")]
    private static partial Regex Token();
}
