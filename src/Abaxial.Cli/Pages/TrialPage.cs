using Abaxial.Files.Trials;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>Results of trials on a terminal.</summary>
internal static class TrialPage
{
    private const int CauseColumns = 34;

    public static void Write(Page page, List<TrialResult> results, Speech speech)
    {
        page.Line(TrialWords.Summary(results, speech), results.All(result => result.IsPassed) ? Tone.Calm : Tone.Danger);
        page.Heading(speech.Say("trial.head-confusion"));
        foreach (var cell in TrialWords.Confusions(results, speech))
        {
            string row = $"{Page.Cut(cell.Expected, CauseColumns).PadRight(CauseColumns)}  {Page.Cut(cell.Leader, CauseColumns).PadRight(CauseColumns)} {cell.Cases,4}";
            page.Line($"  {row}", cell.Expected == cell.Leader ? Tone.Plain : Tone.Care);
        }

        var failed = results.Where(result => !result.IsPassed).ToList();
        if (failed.Count > 0) page.Heading(speech.Say("trial.head-failed"));
        foreach (var result in failed)
        {
            page.Text($"{result.Trial.Id} ({result.Trial.File}:{TrialWords.Whole(result.Trial.Line)})", tone: Tone.Strong);
            page.Text(result.Trial.Story, indent: 4);
            foreach (string miss in TrialWords.Misses(result, speech)) page.Text(miss, indent: 4, hanging: 2, tone: Tone.Care);
            if (result.Answer is not { } answer) continue;
            page.Text(TrialWords.Leaders(answer, speech), indent: 4, hanging: 2);
            page.Text(TrialWords.Evidence(answer, speech), indent: 4, hanging: 2, tone: Tone.Faint);
        }
    }
}
