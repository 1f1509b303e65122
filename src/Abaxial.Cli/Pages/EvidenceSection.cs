using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What speaks for late blight and what against it, and what does not agree with the rest.</summary>
internal static class EvidenceSection
{
    private const int Longest = 6;

    public static void Write(Page page, Case weighed, Answer answer, Speech speech)
    {
        var table = new HostTable(weighed.Knowledge, weighed.Host);
        WriteSide(page, weighed, answer, table, speech, "for", EvidenceWords.For(answer));
        WriteSide(page, weighed, answer, table, speech, "against", EvidenceWords.Against(answer));
        if (EvidenceWords.Little(answer, speech) is { } little) page.Text(little, tone: Tone.Faint);
        if (answer.Conflicts.IsEmpty) return;
        page.Heading(speech.Say("head.conflicts"));
        foreach (var conflict in answer.Conflicts) page.Text(EvidenceWords.Of(conflict, weighed, answer, speech), hanging: 2);
    }

    private static void WriteSide(Page page, Case weighed, Answer answer, HostTable table, Speech speech, string side, ImmutableArray<Evidence> evidence)
    {
        page.Heading(speech.Say($"head.{side}"));
        if (evidence.IsEmpty) page.Text(speech.Say("evidence.none"));
        foreach (var one in evidence.Take(Longest)) page.Item(Signs(one.Decibans), EvidenceWords.Of(one, weighed, answer, table, speech), 5);
        if (evidence.Length > Longest) page.Text(speech.Say("evidence.more", ChanceWords.Number(evidence.Length - Longest)), tone: Tone.Faint);
    }

    /// <summary>One sign moves the odds by up to 3 times, two by up to 10, three by up to 100, four by more.</summary>
    private static string Signs(double decibans) => new(decibans > 0 ? '+' : '-', Math.Abs(decibans) switch { < 5 => 1, < 10 => 2, < 20 => 3, _ => 4 });
}
