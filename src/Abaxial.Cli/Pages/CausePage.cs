using Abaxial.Knowledge;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>What is known of one cause.</summary>
internal static class CausePage
{
    private const int LooksTold = 5;
    private const int RivalsTold = 10;

    /// <summary>Writes a cause.</summary>
    /// <param name="page">Where to.</param>
    /// <param name="cause">The cause.</param>
    /// <param name="host">Only what holds for this host; null for all of its hosts.</param>
    /// <param name="speech">The words.</param>
    public static void Write(Page page, Cause cause, string? host, Speech speech)
    {
        page.Line($"{speech.Name(cause)} ({cause.Id})", Tone.Strong);
        if (cause.Scientific is not null) page.Text(cause.Scientific);
        if (!cause.OlderNames.IsEmpty) page.Text(speech.Say("show.older-names", Listed(cause.OlderNames, speech)));
        if (cause.Eppo is not null) page.Text(speech.Say("show.eppo", cause.Eppo));
        page.Text(speech.Say("show.kind", speech.Word($"kind.{cause.Kind}"), Listed(cause.Hosts.Select(other => speech.Word($"host.{other}")), speech)));
        if (cause.Regulated) page.Text(speech.Say("show.regulated"));
        if (cause.TissueOpener) page.Text(speech.Say("show.tissue-opener"));
        page.Text(speech.Advice(cause));

        foreach (string one in cause.Hosts.Where(other => host is null || other == host)) WriteTold(page, cause, new HostTable(speech.Knowledge, one), speech);
        WriteRows(page, cause, host, speech);
    }

    private static void WriteTold(Page page, Cause cause, HostTable table, Speech speech)
    {
        int subject = table.IndexOf(speech.Knowledge.Subject), mine = table.IndexOf(cause);
        string host = speech.Word($"host.{table.Host}");
        if (mine == subject)
        {
            page.Heading(speech.Say("show.head-rivals", host));
            foreach (var pair in Separation.Nearest(table, subject).Take(RivalsTold)) WriteDecibans(page, pair.Decibans, speech.Say("show.rival", speech.Name(pair.Other), pair.Best is null ? "" : RowWords.Title(pair.Best, speech)));
            return;
        }

        page.Heading(speech.Say("show.head-told", speech.Name(speech.Knowledge.Subject), host));
        foreach (var (question, decibans) in Separation.Looks(table, mine, subject).Take(LooksTold)) WriteDecibans(page, decibans, RowWords.Title(question, speech));
    }

    private static void WriteDecibans(Page page, double decibans, string text) => page.Item(ChanceWords.Number(decibans).PadLeft(5), text, 7);

    private static void WriteRows(Page page, Cause cause, string? host, Speech speech)
    {
        page.Heading(speech.Say("show.head-rows"));
        var rows = cause.Rows.Where(row => host is null || row.Host is null || row.Host == host).OrderBy(row => row.Character.Index);
        foreach (var row in rows)
        {
            page.Text(RowWords.Title(row, speech), hanging: 2, tone: Tone.Strong);
            page.Text(RowWords.Chances(row, speech), indent: 4, hanging: 2);
            page.Text(speech.Sentence(row), indent: 4, hanging: 2);
            page.Text(RowWords.Source(row, speech), indent: 4, hanging: 2, tone: Tone.Faint);
        }
    }

    private static string Listed(IEnumerable<string> items, Speech speech) => string.Join(speech.Word("list.comma"), items);
}
