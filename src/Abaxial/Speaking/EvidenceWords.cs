using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Speaking;

/// <summary>What speaks for late blight and what against it, and what does not agree with the rest.</summary>
public static class EvidenceWords
{
    /// <summary>In decibans: what moves the odds by less than a quarter is not worth a line.</summary>
    private const double Noticeable = 1;

    /// <summary>A cause's sentence explains a look where the cause shows what was seen at least this often.</summary>
    private const double Shown = 0.15;

    /// <summary>A cause under this probability explains nothing.</summary>
    private const double Standing = 0.02;

    /// <summary>What speaks for late blight, strongest first.</summary>
    public static ImmutableArray<Evidence> For(Answer answer) => [.. answer.Evidence.Where(one => one.Decibans >= Noticeable)];

    /// <summary>What speaks against it, strongest first.</summary>
    public static ImmutableArray<Evidence> Against(Answer answer) => [.. answer.Evidence.Where(one => one.Decibans <= -Noticeable)];

    /// <summary>How many looks hardly move late blight; null where none is of that kind.</summary>
    public static string? Little(Answer answer, Speech speech)
    {
        int little = answer.Evidence.Count(one => Math.Abs(one.Decibans) < Noticeable);
        return little == 0 ? null : speech.Say(little == 1 ? "evidence.little-one" : "evidence.little", ChanceWords.Number(little));
    }

    /// <summary>What was seen, and the sentence that says what it means.</summary>
    public static string Of(Evidence evidence, Case weighed, Answer answer, HostTable table, Speech speech)
    {
        var looks = evidence.Looks.Select(place => weighed.Looks[place]).Where(look => !look.IsUnsure).ToList();
        string seen = $"{speech.Name(evidence.Character)}: {string.Join(speech.Word("list.semicolon"), looks.Select(speech.Seen).Distinct())}.";
        string? facet = looks.Select(look => look.Facet).FirstOrDefault(other => other is not null);
        // Where one cause is all but sure, another may rise more by a look: the sentence stays with late blight, or with the cause that leads.
        var spokenFor = evidence.Decibans > 0 ? weighed.Knowledge.Subject : Leader(evidence, answer, weighed);
        var question = table.Find(evidence.Character, facet);
        int place = table.IndexOf(spokenFor);
        bool isShownByIt = question.Character.IsMeasured || looks.Any(look => look.States.Any(state => question.Chance(place, state) >= Shown));
        return isShownByIt && question.Rows[place] is { } row ? $"{seen} {speech.Say("evidence.row", speech.Name(spokenFor), speech.Sentence(row))}" : seen;
    }

    private static Cause Leader(Evidence evidence, Answer answer, Case weighed)
    {
        bool isOut = answer.Causes.FirstOrDefault(cause => cause.Cause == evidence.Towards) is { Probability: < Standing };
        return isOut ? answer.Causes.First(cause => cause.Cause != weighed.Knowledge.Subject).Cause : evidence.Towards;
    }

    /// <summary>What does not agree.</summary>
    public static string Of(Conflict conflict, Case weighed, Answer answer, Speech speech)
    {
        var looks = conflict.Looks.Select(place => weighed.Looks[place]).ToList();
        string character = speech.Name(looks[0].Character);
        switch (conflict.Why)
        {
            case ConflictReason.ReadingsDiffer:
                return speech.Say("conflict.readings-differ", character, string.Join(speech.Word("list.semicolon"), looks.Select(speech.Seen)));
            case ConflictReason.ParentSaysOtherwise:
                string parent = looks[0].Character.WhenParent is { } other ? speech.Name(other) : "";
                return speech.Say("conflict.parent-says-otherwise", character, parent);
            default:
                return speech.Say("conflict.unexpected", character, speech.Seen(looks[0]), speech.Name(answer.Causes[0].Cause), ChanceWords.Of(conflict.Chance ?? 0, speech));
        }
    }
}
