using Abaxial.Knowledge;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>An answer as people read it: late blight first, what else it could be, what to do, why, and what to look at next.</summary>
internal static class AnswerPage
{
    /// <summary>Causes under this chance are not shown.</summary>
    private const double Shown = 0.01;

    /// <summary>Writes an answer.</summary>
    /// <param name="page">Where to.</param>
    /// <param name="weighed">The case.</param>
    /// <param name="answer">Its answer.</param>
    /// <param name="flat">The same case weighed as if every cause were equally common beforehand; null where the answer itself was.</param>
    /// <param name="language">The language, as the knowledge's texts name it.</param>
    public static void Write(Page page, Case weighed, Answer answer, Answer? flat, string language = "en")
    {
        var speech = new Speech(weighed.Knowledge, language);
        var shown = answer.Causes.Where(chance => chance.Cause != answer.LateBlight.Cause && chance.Probability >= Shown).ToList();
        var columns = new Columns(page, [answer.LateBlight, .. shown], speech);

        WriteStanding(page, weighed, answer, speech, columns);
        WriteCauses(page, answer, shown, speech, columns);
        AdviceSection.Write(page, weighed, answer, speech);
        EvidenceSection.Write(page, weighed, answer, speech);
        NextLooksSection.Write(page, answer, speech);
        WriteFoot(page, answer, flat, speech);
    }

    private static void WriteStanding(Page page, Case weighed, Answer answer, Speech speech, Columns columns)
    {
        string mark = Marks.Of(answer.Standing, page.Ascii);
        string title = $"{speech.Name(answer.LateBlight.Cause)}: {mark} {speech.Word($"standing.{answer.Standing.Word()}")}";
        string about = string.Join(" · ", Describe(weighed, speech));
        bool fits = title.Length + 2 + about.Length <= page.Width;
        var tone = answer.Standing switch { Standing.Confirmed or Standing.Likely => Tone.Danger, Standing.Open => Tone.Care, _ => Tone.Calm };
        page.Line(fits ? title + about.PadLeft(page.Width - title.Length) : title, tone);
        if (!fits) page.Text(about, indent: 0);
        page.Line(columns.Row(answer.LateBlight));
        page.Text(speech.Say($"because.{answer.StandingBecause.Word()}"));
        page.Rule();
    }

    private static IEnumerable<string> Describe(Case weighed, Speech speech)
    {
        yield return speech.Word($"host.{weighed.Host}");
        if (weighed.System is not null) yield return speech.Word($"system.{weighed.System}");
        if (weighed.Stage is not null) yield return speech.Word($"stage.{weighed.Stage}");
        yield return speech.Say(weighed.Looks.Length == 1 ? "case.look" : "case.looks", ChanceWords.Number(weighed.Looks.Length));
    }

    private static void WriteCauses(Page page, Answer answer, List<CauseChance> shown, Speech speech, Columns columns)
    {
        page.Line(speech.Say("head.causes"), Tone.Strong);
        foreach (var chance in shown) page.Line(columns.Row(chance));
        page.Line($"  {speech.Word("cause.not-listed").PadRight(columns.Name)}  {ChanceWords.Of(answer.NotListed, speech)}");
        int hidden = answer.Causes.Length - 1 - shown.Count;
        if (hidden > 0) page.Text(speech.Say(hidden == 1 ? "causes.hidden-one" : "causes.hidden", ChanceWords.Number(hidden)), tone: Tone.Faint);
        if (answer.Misfit) page.Text(speech.Say("misfit"), tone: Tone.Care);
    }

    private static void WriteFoot(Page page, Answer answer, Answer? flat, Speech speech)
    {
        page.Heading(speech.Say("head.rests"));
        if (answer.RestsOnJudgement) page.Text(speech.Say("rests.judgement"));
        if (flat is not null)
        {
            var first = flat.Causes[0];
            page.Text(speech.Say("rests.flat", ChanceWords.Of(flat.LateBlight, speech), speech.Word($"standing.{flat.Standing.Word()}"), speech.Name(first.Cause), ChanceWords.Of(first, speech)));
        }
        else page.Text(speech.Say("rests.is-flat"));
        page.Text(speech.Say("rests.knowledge", answer.Knowledge));
        page.Text(speech.Say("care.program"));
    }

    /// <summary>The columns of the table of causes: name, chance, bar, band.</summary>
    private sealed class Columns
    {
        private const int LongestName = 34;

        private readonly Page page;
        private readonly Speech speech;
        private readonly int chanceColumns;
        private readonly int barColumns;

        public Columns(Page page, IReadOnlyList<CauseChance> rows, Speech speech)
        {
            this.page = page;
            this.speech = speech;
            Name = Math.Min(LongestName, Math.Max(rows.Max(row => speech.Name(row.Cause).Length), speech.Word("cause.not-listed").Length));
            chanceColumns = rows.Max(row => ChanceWords.Of(row, speech).Length);
            int bandColumns = rows.Max(row => ChanceWords.Band(row, speech).Length);
            barColumns = Math.Clamp(page.Width - 2 - Name - 2 - chanceColumns - 2 - 2 - bandColumns, 10, 50);
        }

        public int Name { get; }

        public string Row(CauseChance chance)
        {
            string name = Page.Cut(speech.Name(chance.Cause), Name).PadRight(Name);
            return $"  {name}  {ChanceWords.Of(chance, speech).PadRight(chanceColumns)}  {Marks.Bar(chance, barColumns, page.Ascii)}  {ChanceWords.Band(chance, speech)}";
        }
    }
}
