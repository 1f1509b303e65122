using System.Globalization;
using Abaxial.Knowledge;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>How much is known, what it rests on, which causes are hard to tell apart, and what deserves a second look.</summary>
internal static class KnowledgeCountsPage
{
    private const int NameColumns = 40;

    public static void Write(Page page, KnowledgeBase knowledge)
    {
        var speech = new Speech(knowledge);
        page.Line(speech.Say("check.sound", knowledge.Id), Tone.Calm);
        var rows = knowledge.Causes.SelectMany(cause => cause.Rows).ToList();
        page.Text(speech.Say("check.counts", Whole(knowledge.Causes.Length), Whole(knowledge.Characters.Length), Whole(rows.Count), Whole(knowledge.Sources.Length)), indent: 0);

        page.Heading(speech.Say("check.head-sources"));
        page.Line($"  {"".PadRight(NameColumns)}{speech.Say("check.columns")}", Tone.Faint);
        var core = KnowledgeHints.Core.Select(knowledge.FindCause).OfType<Cause>().ToList();
        page.Line(Counts(speech.Say("check.all-rows"), SourceCounts.Of(rows)));
        page.Line(Counts(speech.Say("check.core-rows"), SourceCounts.Of(core.SelectMany(cause => cause.Rows))));
        foreach (var cause in core) page.Line(Counts($"  {speech.Name(cause)}", SourceCounts.Of(cause.Rows)));

        foreach (string host in knowledge.Document.Hosts) WritePoorPairs(page, new HostTable(knowledge, host), speech);
        WriteHints(page, knowledge, speech);
    }

    private static void WritePoorPairs(Page page, HostTable table, Speech speech)
    {
        var pairs = Separation.Poorest(table).ToList();
        string limit = ChanceWords.Number(Separation.Poor);
        page.Heading(speech.Say("check.head-pairs", speech.Word($"host.{table.Host}"), limit));
        if (pairs.Count == 0) page.Text(speech.Say("check.no-pairs"));
        foreach (var pair in pairs)
        {
            string best = pair.Best is null ? speech.Say("check.pair-none") : speech.Say("check.pair-best", speech.Name(pair.Best.Character), ChanceWords.Number(pair.Decibans));
            page.Text($"{speech.Name(pair.One)} / {speech.Name(pair.Other)}: {best}", hanging: 2);
        }
    }

    private static void WriteHints(Page page, KnowledgeBase knowledge, Speech speech)
    {
        var hints = KnowledgeHints.Of(knowledge).ToList();
        page.Heading(speech.Say("check.head-hints"));
        if (hints.Count == 0) page.Text(speech.Say("check.no-hints"));
        foreach (var hint in hints) page.Text(speech.Say($"hint.{hint.Kind}", [.. hint.Values]), hanging: 2);
    }

    private static string Counts(string name, SourceCounts counts)
    {
        string share = string.Create(CultureInfo.InvariantCulture, $"{100 * counts.PublicationShare:0} %");
        return $"  {Page.Cut(name, NameColumns).PadRight(NameColumns)}{counts.Rows,6}{counts.Publication,7}{counts.CommonPractice,7}{counts.Judgement,7}{share,7}";
    }

    private static string Whole(int count) => count.ToString("N0", CultureInfo.InvariantCulture);
}
