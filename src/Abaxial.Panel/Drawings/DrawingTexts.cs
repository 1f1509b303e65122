using System.Collections.Frozen;
using System.Text.Json;

namespace Abaxial.Panel.Drawings;

/// <summary>The text alternatives, by language: <c>texts.en.json</c> and its siblings beside this file.</summary>
internal static class DrawingTexts
{
    public static readonly IReadOnlyList<string> Languages = ["en", "es"];

    private static readonly FrozenDictionary<string, Lazy<FrozenDictionary<(string Character, string State), string>>> ByLanguage = Languages.ToFrozenDictionary(
        language => language, language => new Lazy<FrozenDictionary<(string Character, string State), string>>(() => Read(language)), StringComparer.Ordinal);

    public static string Find(string language, string character, string state)
    {
        string code = language.Split('-')[0];
        var texts = ByLanguage.GetValueOrDefault(code) ?? ByLanguage["en"];
        return texts.Value.GetValueOrDefault((character, state)) ?? ByLanguage["en"].Value[(character, state)];
    }

    /// <summary>Every text of one language, by character and state.</summary>
    public static IReadOnlyDictionary<(string Character, string State), string> Of(string language) => ByLanguage[language].Value;

    private static FrozenDictionary<(string Character, string State), string> Read(string language)
    {
        using var stream = typeof(DrawingTexts).Assembly.GetManifestResourceStream($"drawings.texts.{language}.json")
            ?? throw new InvalidOperationException($"The texts of the drawings in {language} are not in the assembly.");
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.EnumerateObject()
            .SelectMany(character => character.Value.EnumerateObject().Select(state => KeyValuePair.Create((character.Name, state.Name), state.Value.GetString()!)))
            .ToFrozenDictionary();
    }
}
