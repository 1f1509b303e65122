namespace Abaxial.Knowledge;

/// <summary>What a pathologist may want to look at again. Nothing here keeps the knowledge from being used.</summary>
/// <param name="Kind">What kind of hint: the key of a sentence under <c>hint.</c> in the texts.</param>
/// <param name="Values">What fills the sentence.</param>
public sealed record KnowledgeHint(string Kind, params IReadOnlyList<string> Values);

/// <summary>Finds places in sound knowledge that deserve a second look.</summary>
public static class KnowledgeHints
{
    /// <summary>Late blight and what is most often taken for it: of these, most rows should name a publication.</summary>
    public static IReadOnlyList<string> Core { get; } =
    [
        "late-blight", "early-blight", "brown-leaf-spot", "septoria-leaf-spot", "gray-mold", "leaf-mold", "bacterial-canker", "bacterial-spot", "bacterial-soft-rot", "blackleg",
        "spotted-wilt", "blossom-end-rot", "chemical-burn", "drought-heat-scorch",
    ];

    /// <summary>The share of rows that should name a publication, for each cause of <see cref="Core"/>.</summary>
    public const double PublishedShare = 0.6;

    private const double Seldom = 0.1;
    private const int LongestSentence = 200;

    public static IEnumerable<KnowledgeHint> Of(KnowledgeBase knowledge)
    {
        ArgumentNullException.ThrowIfNull(knowledge);
        return [.. Sources(knowledge), .. Characters(knowledge), .. Texts(knowledge)];
    }

    private static IEnumerable<KnowledgeHint> Sources(KnowledgeBase knowledge)
    {
        foreach (var cause in Core.Select(knowledge.FindCause).OfType<Cause>())
        {
            var counts = SourceCounts.Of(cause.Rows);
            if (counts.PublicationShare < PublishedShare) yield return new KnowledgeHint("few-publications", cause.Id, $"{counts.Publication}", $"{counts.Rows}");
        }

        var named = knowledge.Causes.SelectMany(cause => cause.Rows).SelectMany(row => row.Sources).Select(source => source.Id).ToHashSet(StringComparer.Ordinal);
        named.UnionWith(knowledge.Causes.SelectMany(cause => cause.Seen.Source));
        foreach (var source in knowledge.Sources.Where(source => !named.Contains(source.Id))) yield return new KnowledgeHint("source-unused", source.Id);
    }

    private static IEnumerable<KnowledgeHint> Characters(KnowledgeBase knowledge)
    {
        var rows = knowledge.Causes.SelectMany(cause => cause.Rows).ToLookup(row => row.Character);
        foreach (var character in knowledge.Characters)
        {
            if (!rows[character].Any())
            {
                yield return new KnowledgeHint("character-unused", character.Id);
                continue;
            }

            for (int state = 0; state < character.States.Length; state++)
            {
                bool implied = state == character.EmptyState || character.Voids[state];
                if (!implied && rows[character].All(row => row.Chances[state] < Seldom)) yield return new KnowledgeHint("state-unused", character.Id, character.States[state]);
            }
        }
    }

    private static IEnumerable<KnowledgeHint> Texts(KnowledgeBase knowledge)
    {
        foreach (var character in knowledge.Characters)
        {
            if (knowledge.Texts.Character(character) == character.Id) yield return new KnowledgeHint("name-missing", character.Id);
        }

        foreach (var cause in knowledge.Causes)
        {
            foreach (var row in cause.Rows.Where(row => row.Say["en"].Length > LongestSentence)) yield return new KnowledgeHint("sentence-long", cause.Id, row.Character.Id, $"{row.Say["en"].Length}");
        }
    }
}
