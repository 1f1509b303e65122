using Abaxial.Files.Trials;
using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What differs between two versions of the knowledge, and what that does to the project's cases.</summary>
internal static class DifferencePage
{
    public static void Write(Page page, KnowledgeDifference difference, List<(TrialResult Before, TrialResult After)> results, KnowledgeBase before, KnowledgeBase after)
    {
        Speech old = new(before), now = new(after);
        page.Line(now.Say("diff.title", before.Id, after.Id), Tone.Strong);
        WriteCases(page, results, old, now);
        WriteList(page, "diff.causes-added", difference.CausesAdded, now);
        WriteList(page, "diff.causes-removed", difference.CausesRemoved, now);
        WriteList(page, "diff.seen", difference.SeenChanged, now);
        WriteList(page, "diff.characters", difference.CharactersChanged, now);
        WriteList(page, "diff.settings", difference.SettingsChanged, now);
        WriteRows(page, difference, old, now);
    }

    private static void WriteCases(Page page, List<(TrialResult Before, TrialResult After)> results, Speech old, Speech now)
    {
        var changed = results.Where(pair => Of(pair.Before, old) != Of(pair.After, now)).ToList();
        page.Heading(now.Say("diff.head-cases", TrialWords.Whole(changed.Count), TrialWords.Whole(results.Count)));
        foreach (var (was, becomes) in changed)
        {
            page.Text(was.Trial.Id, tone: Tone.Strong);
            page.Text(now.Say("diff.before", Of(was, old)), indent: 4, hanging: 2);
            page.Text(now.Say("diff.after", Of(becomes, now)), indent: 4, hanging: 2);
        }
    }

    /// <summary>Leader and standing; what is said of a case is the same exactly where these are.</summary>
    private static string Of(TrialResult result, Speech speech) => result.Answer is { } answer
        ? speech.Say("diff.case", speech.Name(result.Leader!), speech.Word($"standing.{answer.Standing.Word()}"))
        : speech.Say("diff.refused");

    private static void WriteList(Page page, string key, IReadOnlyCollection<string> ids, Speech speech)
    {
        if (ids.Count > 0) page.Text(speech.Say(key, string.Join(speech.Word("list.comma"), ids)), indent: 0, hanging: 2);
    }

    private static void WriteRows(Page page, KnowledgeDifference difference, Speech old, Speech now)
    {
        var counted = difference.Rows.Where(row => !row.IsOnlyWording).ToList();
        page.Heading(now.Say("diff.head-rows", TrialWords.Whole(counted.Count)));
        foreach (var change in counted)
        {
            page.Text($"{change.CauseId}: {change.Key}", tone: Tone.Strong);
            page.Text(now.Say("diff.before", Of(change.Before, old)), indent: 4, hanging: 2);
            page.Text(now.Say("diff.after", Of(change.After, now)), indent: 4, hanging: 2);
        }

        int worded = difference.Rows.Length - counted.Count;
        if (worded > 0) page.Text(now.Say("diff.worded", TrialWords.Whole(worded)), tone: Tone.Faint);
    }

    private static string Of(Row? row, Speech speech) => row is null ? speech.Say("diff.no-row") : $"{RowWords.Chances(row, speech)} [{RowWords.Worth(row, speech)}]";
}
