using System.Collections.Immutable;

namespace Abaxial.Knowledge;

/// <summary>Names and sentences for people, from the knowledge's own files. A text that a language lacks is given in English.</summary>
public sealed class Texts
{
    private readonly KnowledgeDocument document;
    private readonly ImmutableArray<Cause> causes;

    internal Texts(KnowledgeDocument document, ImmutableArray<Cause> causes)
    {
        this.document = document;
        this.causes = causes;
    }

    public IEnumerable<string> Languages => document.Texts.Keys.Order(StringComparer.Ordinal);

    public string Character(Character character, string language = "en") =>
        Find(language, texts => texts.Characters.GetValueOrDefault(character.Id)) ?? character.Id;

    public string State(Character character, int state, string language = "en") =>
        Find(language, texts => texts.States.GetValueOrDefault(character.Id)?.GetValueOrDefault(character.States[state])) ?? character.States[state];

    /// <summary>A word of the fixed vocabularies: <c>way.hand-lens</c>, <c>standing.open</c>, <c>host.tomato</c>.</summary>
    public string Word(string key, string language = "en") =>
        Find(language, texts => texts.Words.GetValueOrDefault(key)) ?? key[(key.IndexOf('.', StringComparison.Ordinal) + 1)..];

    /// <summary>A sentence with its places filled: <c>{0}</c>, <c>{1}</c>.</summary>
    public string Sentence(string key, string language, params ReadOnlySpan<string> values)
    {
        string text = Find(language, texts => texts.Sentences.GetValueOrDefault(key)) ?? key;
        for (int i = 0; i < values.Length; i++) text = text.Replace($"{{{i}}}", values[i], StringComparison.Ordinal);
        return text;
    }

    public string Cause(string id, string language = "en")
    {
        foreach (var cause in causes)
        {
            if (cause.Id == id) return cause.Names.GetValueOrDefault(language) ?? cause.Names.GetValueOrDefault("en") ?? id;
        }

        return id;
    }

    private string? Find(string language, Func<TextsDocument, string?> pick) =>
        (document.Texts.TryGetValue(language, out var texts) ? pick(texts) : null)
        ?? (document.Texts.TryGetValue("en", out var english) ? pick(english) : null);
}
