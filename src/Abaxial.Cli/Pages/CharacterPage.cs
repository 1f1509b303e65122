using System.Globalization;
using Abaxial.Knowledge;
using Abaxial.Speaking;

namespace Abaxial.Cli.Pages;

/// <summary>One character across all causes, so that they can be compared.</summary>
internal static class CharacterPage
{
    private const int CellColumns = 5;

    /// <summary>Writes a character.</summary>
    /// <param name="page">Where to.</param>
    /// <param name="character">The character.</param>
    /// <param name="host">Only what holds for this host; null for all.</param>
    /// <param name="speech">The words.</param>
    public static void Write(Page page, Character character, string? host, Speech speech)
    {
        page.Line($"{speech.Name(character)} ({character.Id})", Tone.Strong);
        page.Text(speech.Say("show.ways", string.Join(speech.Word("list.comma"), character.Ways.Select(way => speech.Word($"way.{way.Word()}"))), ChanceWords.Number(character.Minutes)));
        if (character.WhenParent is { } parent)
        {
            page.Text(speech.Say("show.when", speech.Name(parent), string.Join(speech.Word("list.comma"), character.WhenStates.Select(state => speech.Name(parent, state)))));
        }

        page.Text(speech.Say(character.IsMeasured ? "show.is-measured" : character.IsMany ? "show.is-many" : "show.is-one"));
        page.Text(speech.Say("show.group", character.Group, ChanceWords.Number(character.GroupWeight)));
        var rows = speech.Knowledge.Causes.Where(cause => host is null || cause.Hosts.Contains(host))
            .SelectMany(cause => cause.Rows.Where(row => row.Character == character && (host is null || row.Host is null || row.Host == host)).Select(row => (Cause: cause, Row: row)))
            .ToList();
        page.Heading(speech.Say(character.IsMeasured ? "show.head-ranges" : "show.head-matrix"));
        if (character.IsMeasured) WriteRanges(page, rows, speech);
        else WriteMatrix(page, character, rows, speech);

        var silent = speech.Knowledge.Causes.Where(cause => (host is null || cause.Hosts.Contains(host)) && cause.Hosts.Any(character.AppliesTo) && rows.All(row => row.Cause != cause)).ToList();
        if (silent.Count > 0) page.Text(speech.Say("show.silent", string.Join(speech.Word("list.comma"), silent.Select(speech.Name))), tone: Tone.Faint);
    }

    private static void WriteMatrix(Page page, Character character, List<(Cause Cause, Row Row)> rows, Speech speech)
    {
        var states = Enumerable.Range(0, character.States.Length).Where(state => state != RowWords.EmptyOfMany(character) && !character.Voids[state]).ToList();
        for (int i = 0; i < states.Count; i++) page.Text($"{Letter(i)} = {speech.Name(character, states[i])}", indent: 4);
        page.Blank();
        int nameColumns = Math.Max(16, page.Width - 2 - (CellColumns * states.Count) - 3);
        page.Line($"  {"".PadRight(nameColumns)}{string.Concat(states.Select((_, i) => Letter(i).ToString().PadLeft(CellColumns)))}", Tone.Strong);
        foreach (var (cause, row) in rows)
        {
            string cells = string.Concat(states.Select(state => Percent(row.Chances[state]).PadLeft(CellColumns)));
            page.Line($"  {Name(cause, row, nameColumns, speech)}{cells}  {SourceSign(row)}");
        }

        var background = speech.Knowledge.Document.Characters[character.Index].Background;
        page.Line($"  {Page.Cut(speech.Say("show.background"), nameColumns).PadRight(nameColumns)}{string.Concat(states.Select(state => Percent(background[character.States[state]]).PadLeft(CellColumns)))}", Tone.Faint);
        page.Text(speech.Say("show.legend"), tone: Tone.Faint);
    }

    private static void WriteRanges(Page page, List<(Cause Cause, Row Row)> rows, Speech speech)
    {
        foreach (var (cause, row) in rows) page.Text($"{speech.Name(cause)}, {RowWords.Title(row, speech)}: {RowWords.Chances(row, speech)} {SourceSign(row)}", hanging: 2);
    }

    private static string Name(Cause cause, Row row, int columns, Speech speech)
    {
        string mark = (row.Facet is null ? "" : $"/{row.Facet}") + (row.Host is null ? "" : $"@{row.Host}");
        return (Page.Cut(speech.Name(cause), Math.Max(8, columns - mark.Length - 1)) + " " + mark).PadRight(columns)[..columns];
    }

    private static char Letter(int index) => (char)('a' + index);

    /// <summary>Percents without the sign, to a tenth under one.</summary>
    private static string Percent(double chance) => (100 * chance).ToString(chance < 0.0095 ? "0.0" : "0", CultureInfo.InvariantCulture);

    private static char SourceSign(Row row) => row.SourceKind switch { SourceKind.Publication => 'P', SourceKind.CommonPractice => 'C', _ => 'J' };
}
