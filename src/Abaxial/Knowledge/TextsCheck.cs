using System.Text.RegularExpressions;

namespace Abaxial.Knowledge;

/// <summary>Every language says what English says: the same keys, and in each text the same places to fill.</summary>
internal static partial class TextsCheck
{
    public static IEnumerable<KnowledgeProblem> Run(KnowledgeDocument document)
    {
        if (!document.Texts.TryGetValue("en", out var english)) return [];
        return document.Texts
            .Where(pair => pair.Key != "en")
            .OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .SelectMany(pair => OfLanguage($"texts/{pair.Key}", english, pair.Value));
    }

    private static IEnumerable<KnowledgeProblem> OfLanguage(string at, TextsDocument english, TextsDocument texts)
    {
        IEnumerable<KnowledgeProblem> problems =
        [
            .. Compare($"{at}/characters", english.Characters, texts.Characters),
            .. Keys($"{at}/states", english.States.Keys, texts.States.Keys),
            .. Compare($"{at}/words", english.Words, texts.Words),
            .. Compare($"{at}/sentences", english.Sentences, texts.Sentences),
        ];
        var states = english.States.Where(pair => texts.States.ContainsKey(pair.Key)).SelectMany(pair => Compare($"{at}/states/{pair.Key}", pair.Value, texts.States[pair.Key]));
        return problems.Concat(states);
    }

    private static IEnumerable<KnowledgeProblem> Compare(string at, Dictionary<string, string> english, Dictionary<string, string> texts)
    {
        foreach (var problem in Keys(at, english.Keys, texts.Keys)) yield return problem;
        foreach (var (key, text) in texts)
        {
            if (string.IsNullOrWhiteSpace(text)) yield return new KnowledgeProblem($"{at}/{key}", "The text is empty.");
            else if (english.TryGetValue(key, out string? original) && Places(text) is var found && Places(original) is var accepted && found != accepted)
            {
                yield return new KnowledgeProblem($"{at}/{key}", $"The places to fill are {found}; accepted: {accepted}, as in English.");
            }
        }
    }

    private static IEnumerable<KnowledgeProblem> Keys(string at, IEnumerable<string> english, IEnumerable<string> texts)
    {
        foreach (string key in english.Except(texts)) yield return new KnowledgeProblem(at, $"'{key}' is missing; English has it.");
        foreach (string key in texts.Except(english)) yield return new KnowledgeProblem($"{at}/{key}", $"'{key}' is no key of the English texts.");
    }

    /// <summary>In the order of their numbers, each once: languages may turn a sentence around, or name a thing twice.</summary>
    private static string Places(string text)
    {
        var places = Place().Matches(text).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal).ToList();
        return places.Count == 0 ? "none" : string.Join(' ', places);
    }

    [GeneratedRegex(@"\{[0-9]+\}")]
    private static partial Regex Place();
}
