using Abaxial.Files.Trials;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>Results of trials as a page in Markdown.</summary>
internal static class TrialMarkdown
{
    public static void Write(TextWriter writer, List<TrialResult> results, Speech speech)
    {
        writer.WriteLine($"# {speech.Say("trial.title")}");
        writer.WriteLine();
        writer.WriteLine(speech.Say("trial.about"));
        writer.WriteLine();
        writer.WriteLine(TrialWords.Summary(results, speech));
        writer.WriteLine();
        writer.WriteLine(speech.Say("trial.table-files"));
        writer.WriteLine("|---|---:|---:|");
        foreach (var file in results.GroupBy(result => result.Trial.File)) writer.WriteLine($"| {file.Key} | {TrialWords.Whole(file.Count())} | {TrialWords.Whole(file.Count(result => result.IsPassed))} |");
        WriteConfusion(writer, results, speech);
        WriteFailed(writer, results, speech);
    }

    private static void WriteConfusion(TextWriter writer, List<TrialResult> results, Speech speech)
    {
        writer.WriteLine();
        writer.WriteLine($"## {speech.Say("trial.head-confusion")}");
        writer.WriteLine();
        writer.WriteLine(speech.Say("trial.table-confusion"));
        writer.WriteLine("|---|---|---:|");
        foreach (var cell in TrialWords.Confusions(results, speech))
        {
            string leader = cell.Expected == cell.Leader ? cell.Leader : $"**{cell.Leader}**";
            writer.WriteLine($"| {cell.Expected} | {leader} | {TrialWords.Whole(cell.Cases)} |");
        }
    }

    private static void WriteFailed(TextWriter writer, List<TrialResult> results, Speech speech)
    {
        writer.WriteLine();
        writer.WriteLine($"## {speech.Say("trial.head-failed")}");
        writer.WriteLine();
        var failed = results.Where(result => !result.IsPassed).ToList();
        if (failed.Count == 0) writer.WriteLine(speech.Say("trial.none-failed"));
        foreach (var result in failed)
        {
            writer.WriteLine($"- **{result.Trial.Id}** ({result.Trial.File}). {result.Trial.Story}");
            foreach (string miss in TrialWords.Misses(result, speech)) writer.WriteLine($"  - {miss}");
            if (result.Answer is { } answer) writer.WriteLine($"  - {TrialWords.Leaders(answer, speech)}");
        }
    }
}
