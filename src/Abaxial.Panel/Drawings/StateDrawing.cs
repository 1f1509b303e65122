namespace Abaxial.Panel.Drawings;

/// <summary>The line drawing of one state of a character.</summary>
/// <param name="CharacterId">The character, as the knowledge names it.</param>
/// <param name="StateId">The state, as the knowledge names it.</param>
/// <param name="Elements">What stands inside the <c>svg</c> element: a box of 64 x 64, to be drawn with the attributes of <see cref="Svg"/>.</param>
public sealed record StateDrawing(string CharacterId, string StateId, string Elements)
{
    /// <summary>A whole SVG document. It needs no style sheet, no script and nothing from elsewhere; custom properties of the page color it.</summary>
    public string Svg => Ink.Box(Elements);

    /// <summary>What the picture shows, in a few words for those who do not see it.</summary>
    /// <param name="language">A language code such as <c>en</c> or <c>es</c>; a language without texts gives English.</param>
    public string Alt(string language) => DrawingTexts.Find(language, CharacterId, StateId);
}
