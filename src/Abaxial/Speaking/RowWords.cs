using System.Globalization;
using Abaxial.Knowledge;

namespace Abaxial.Speaking;

/// <summary>A row of a cause in words.</summary>
public static class RowWords
{
    /// <summary>The character, what was measured or where it came from, and the host where it holds for one only.</summary>
    public static string Title(Row row, Speech speech)
    {
        string title = row.Facet is null ? speech.Name(row.Character) : $"{speech.Name(row.Character)} ({Facet(row.Character, row.Facet, speech)})";
        return row.Host is null ? title : speech.Say("row.on-host", title, speech.Word($"host.{row.Host}"));
    }

    /// <summary>What is asked: the character, and what was measured or where it came from.</summary>
    public static string Title(Question question, Speech speech) =>
        question.Facet is null ? speech.Name(question.Character) : $"{speech.Name(question.Character)} ({Facet(question.Character, question.Facet, speech)})";

    public static string Facet(Character character, string facet, Speech speech) =>
        character.OfCharacter is { } kinds && kinds.StateIndex(facet) is >= 0 and var state ? speech.Name(kinds, state) : speech.Word($"from.{facet}");

    /// <summary>Every state that has more than the chance of <c>never</c>, most often first, in the words of the tables where one fits.</summary>
    public static string Chances(Row row, Speech speech)
    {
        if (row.Range is { } range) return speech.Say("row.range", ChanceWords.Number(range.Mean), ChanceWords.Number(range.Between), ChanceWords.Number(range.Within));
        var states = States(row, speech.Knowledge).Select(state => speech.Say("row.state", speech.Name(row.Character, state), Chance(row.Chances[state], speech))).ToList();
        return states.Count == 0 ? speech.Say("row.nothing") : string.Join(speech.Word("list.semicolon"), states);
    }

    /// <summary>Every state that has more than the chance of <c>never</c>, most often first.</summary>
    public static IEnumerable<int> States(Row row, KnowledgeBase knowledge)
    {
        double never = knowledge.Document.Words["never"];
        return Enumerable.Range(0, row.Chances.Length).Where(state => row.Chances[state] > never && state != EmptyOfMany(row.Character)).OrderByDescending(state => row.Chances[state]);
    }

    public static string Source(Row row, Speech speech)
    {
        string strength = ChanceWords.Number(row.Strength);
        return row.SourceKind switch
        {
            SourceKind.Publication => speech.Say("row.source", string.Join(speech.Word("list.semicolon"), row.Sources.Select(source => $"{source.Authors} ({source.Year}), {source.Title}. {source.Publisher}")), strength),
            SourceKind.CommonPractice => speech.Say("row.source", speech.Word("source.common-practice"), strength),
            _ => speech.Say("row.source", speech.Word("source.judgement"), strength),
        };
    }

    /// <summary>The kind of source and the strength.</summary>
    public static string Worth(Row row, Speech speech)
    {
        string kind = row.SourceKind switch { SourceKind.Publication => "source.publication", SourceKind.CommonPractice => "source.common-practice", _ => "source.judgement" };
        return speech.Say("row.worth", speech.Word(kind), ChanceWords.Number(row.Strength));
    }

    /// <summary>The empty state of a character with several states has no chance of its own in a row.</summary>
    public static int EmptyOfMany(Character character) => character.IsMany ? character.EmptyState : -1;

    private static string Chance(double chance, Speech speech)
    {
        foreach (var (word, value) in speech.Knowledge.Document.Words)
        {
            if (value == chance) return speech.Word($"chance.{word}");
        }

        return chance.ToString("0.###", CultureInfo.InvariantCulture);
    }
}
