namespace Abaxial.Panel.Drawings;

/// <summary>How the picture of one state is drawn.</summary>
internal sealed record Sketch(string Character, string State, Func<string> Elements)
{
    public static IEnumerable<Sketch> Of(string character, params (string State, Func<string> Elements)[] states) =>
        states.Select(state => new Sketch(character, state.State, state.Elements));
}
