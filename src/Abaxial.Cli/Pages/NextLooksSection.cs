using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What to look at next, what each look could show, what it takes, and which looks are held back.</summary>
internal static class NextLooksSection
{
    private const int MostShown = 5;
    private const int MostShownInVain = 2;

    /// <summary>What a look shows less often than this is not told.</summary>
    private const double WorthTelling = 0.01;

    public static void Write(Page page, Answer answer, Speech speech)
    {
        page.Heading(speech.Say("head.next"));
        var worth = answer.NextLooks.Where(look => look.Worth > 0).Take(MostShown).ToList();
        if (worth.Count == 0) page.Text(speech.Say(answer.NextLooks.IsEmpty ? "next.none-left" : "next.none-worth"));
        var shown = worth.Count > 0 ? worth : [.. answer.NextLooks.DistinctBy(look => look.Character).Take(MostShownInVain)];
        for (int i = 0; i < shown.Count; i++) page.Item($"{i + 1}.", Words(shown[i], answer, speech), 3);
        if (answer.HeldBack.IsEmpty) return;
        string names = string.Join(speech.Word("list.comma"), answer.HeldBack.Select(speech.Name));
        var regulated = answer.Causes.Where(chance => chance.Cause.Regulated).Select(chance => speech.Name(chance.Cause)).FirstOrDefault("");
        page.Text(speech.Say("next.held-back", names, regulated), hanging: 2);
    }

    private static string Words(NextLook look, Answer answer, Speech speech)
    {
        string time = look.WaitHours > 0
            ? speech.Say("next.time-and-wait", ChanceWords.Number(look.Minutes), ChanceWords.Number(look.WaitHours))
            : speech.Say("next.time", ChanceWords.Number(look.Minutes));
        string head = speech.Say("next.look", speech.Name(look.Character), speech.Word($"way.{look.How.Word()}"), time);
        return $"{head} {Worth(look, answer, speech)}";
    }

    /// <summary>What the look would make of late blight: by the likeliest thing that would lower it, and by the one that would raise it most.</summary>
    private static string Worth(NextLook look, Answer answer, Speech speech)
    {
        var told = look.Outcomes.Where(outcome => outcome.Chance >= WorthTelling).OrderBy(outcome => outcome.LateBlight).ToList();
        if (told.Count == 0) return "";
        Outcome down = told.Where(outcome => outcome.LateBlight < answer.LateBlight.Probability).MaxBy(outcome => outcome.Chance) ?? told[0], up = told[^1];
        string from = ChanceWords.Of(answer.LateBlight, speech), low = ChanceWords.Becoming(down.LateBlight, answer.LateBlight, speech), high = ChanceWords.Becoming(up.LateBlight, answer.LateBlight, speech);
        if (low == from && high == from) return speech.Say("next.settles-other");
        string state = speech.Name(look.Character, down.State), other = speech.Name(look.Character, up.State);
        if (low == from) return speech.Say("next.up", other, from, high);
        return high == from ? speech.Say("next.down", state, from, low) : speech.Say("next.both", state, from, low, other, high);
    }
}
