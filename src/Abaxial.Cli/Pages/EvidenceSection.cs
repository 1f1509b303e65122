using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What speaks for late blight and what against it, and what does not agree with the rest.</summary>
internal static class EvidenceSection
{
    /// <summary>In decibans: what moves the odds by less than a quarter is not worth a line.</summary>
    private const double Noticeable = 1;

    private const int Longest = 6;

    /// <summary>A cause's sentence explains a look where the cause shows what was seen at least this often.</summary>
    private const double Shown = 0.15;

    /// <summary>A cause under this probability explains nothing.</summary>
    private const double Standing = 0.02;

    public static void Write(Page page, Case weighed, Answer answer, Speech speech)
    {
        var table = new HostTable(weighed.Knowledge, weighed.Host);
        WriteSide(page, weighed, answer, table, speech, "for", [.. answer.Evidence.Where(one => one.Decibans >= Noticeable)]);
        WriteSide(page, weighed, answer, table, speech, "against", [.. answer.Evidence.Where(one => one.Decibans <= -Noticeable)]);
        int little = answer.Evidence.Count(one => Math.Abs(one.Decibans) < Noticeable);
        if (little > 0) page.Text(speech.Say(little == 1 ? "evidence.little-one" : "evidence.little", ChanceWords.Number(little)), tone: Tone.Faint);
        if (answer.Conflicts.IsEmpty) return;
        page.Heading(speech.Say("head.conflicts"));
        foreach (var conflict in answer.Conflicts) page.Text(Words(conflict, weighed, answer, speech), hanging: 2);
    }

    private static void WriteSide(Page page, Case weighed, Answer answer, HostTable table, Speech speech, string side, List<Evidence> evidence)
    {
        page.Heading(speech.Say($"head.{side}"));
        if (evidence.Count == 0) page.Text(speech.Say("evidence.none"));
        foreach (var one in evidence.Take(Longest)) page.Item($"{Signs(one.Decibans)}", Words(one, weighed, answer, table, speech), 5);
        if (evidence.Count > Longest) page.Text(speech.Say("evidence.more", ChanceWords.Number(evidence.Count - Longest)), tone: Tone.Faint);
    }

    /// <summary>One sign moves the odds by up to 3 times, two by up to 10, three by up to 100, four by more.</summary>
    private static string Signs(double decibans) => new(decibans > 0 ? '+' : '-', Math.Abs(decibans) switch { < 5 => 1, < 10 => 2, < 20 => 3, _ => 4 });

    private static string Words(Evidence evidence, Case weighed, Answer answer, HostTable table, Speech speech)
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

    private static string Words(Conflict conflict, Case weighed, Answer answer, Speech speech)
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
