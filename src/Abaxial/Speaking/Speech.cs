using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Speaking;

/// <summary>The words and sentences of one language, from the knowledge. No sentence for people stands in the code.</summary>
public sealed class Speech(KnowledgeBase knowledge, string language = "en")
{
    public KnowledgeBase Knowledge => knowledge;

    /// <summary>A sentence of the knowledge's texts with values put in.</summary>
    public string Say(string key, params ReadOnlySpan<string> values) => knowledge.Texts.Sentence(key, language, values);

    /// <summary>A word of the knowledge's texts.</summary>
    public string Word(string key) => knowledge.Texts.Word(key, language);

    /// <summary>What people call a cause.</summary>
    public string Name(Cause cause) => knowledge.Texts.Cause(cause.Id, language);

    /// <summary>What people call a character.</summary>
    public string Name(Character character) => knowledge.Texts.Character(character, language);

    /// <summary>What people call a state of a character.</summary>
    public string Name(Character character, int state) => knowledge.Texts.State(character, state, language);

    /// <summary>What to do about a cause.</summary>
    public string Advice(Cause cause) => cause.Advice.GetValueOrDefault(language) ?? cause.Advice["en"];

    /// <summary>What a row says of its cause.</summary>
    public string Sentence(Row row) => row.Say.GetValueOrDefault(language) ?? row.Say["en"];

    /// <summary>What was seen, and how: "white down, with a hand lens".</summary>
    public string Seen(Look look)
    {
        string seen = look.IsUnsure ? Word("look.unsure")
            : look.Character.IsMeasured ? Say("look.measured", ChanceWords.Number(look.Values.Average()), ChanceWords.Number(look.Values.Length))
            : string.Join(Word("list.semicolon"), look.States.Select(state => Name(look.Character, state)));
        string how = look.Surface is { } surface && look.How != Way.MoistChamber ? $"{Word($"way.{look.How.Word()}")} {Word($"surface.{surface.Word()}")}" : Word($"way.{look.How.Word()}");
        return $"{seen}, {how}";
    }

    /// <summary>With a capital letter first.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
