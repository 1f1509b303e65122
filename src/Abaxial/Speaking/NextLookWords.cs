using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Speaking;

/// <summary>What to look at next, what each look could show, what it takes, and which looks are held back.</summary>
public static class NextLookWords
{
    private const int MostShown = 5;
    private const int MostShownInVain = 2;

    /// <summary>What a look shows less often than this is not told.</summary>
    private const double WorthTelling = 0.01;

    /// <summary>The looks to show, best first: those worth their cost, or, where none is, the two that come nearest to it.</summary>
    public static ImmutableArray<NextLook> Shown(Answer answer)
    {
        ImmutableArray<NextLook> worth = [.. answer.NextLooks.Where(look => look.Worth > 0).Take(MostShown)];
        return worth.Length > 0 ? worth : [.. answer.NextLooks.DistinctBy(look => look.Character).Take(MostShownInVain)];
    }

    /// <summary>That no look is worth its cost, or that none is left; null where there is one.</summary>
    public static string? InVain(Answer answer, Speech speech) =>
        answer.NextLooks.Any(look => look.Worth > 0) ? null : speech.Say(answer.NextLooks.IsEmpty ? "next.none-left" : "next.none-worth");

    /// <summary>Which looks are held back, and why; null where none is.</summary>
    public static string? HeldBack(Answer answer, Speech speech)
    {
        if (answer.HeldBack.IsEmpty) return null;
        string names = string.Join(speech.Word("list.comma"), answer.HeldBack.Select(speech.Name));
        var regulated = answer.Causes.Where(chance => chance.Cause.Regulated).Select(chance => speech.Name(chance.Cause)).FirstOrDefault("");
        return speech.Say("next.held-back", names, regulated);
    }

    /// <summary>A look, how it is made, what it takes, and what it could show.</summary>
    public static string Of(NextLook look, Answer answer, Speech speech) => $"{Title(look, speech)} {Worth(look, answer, speech)}";

    /// <summary>A look, how it is made, and what it takes.</summary>
    public static string Title(NextLook look, Speech speech)
    {
        string time = look.WaitHours > 0
            ? speech.Say("next.time-and-wait", ChanceWords.Number(look.Minutes), ChanceWords.Number(look.WaitHours))
            : speech.Say("next.time", ChanceWords.Number(look.Minutes));
        return speech.Say("next.look", speech.Name(look.Character), speech.Word($"way.{look.How.Word()}"), time);
    }

    /// <summary>What the look would make of late blight: by the likeliest thing that would lower it, and by the one that would raise it most.</summary>
    public static string Worth(NextLook look, Answer answer, Speech speech)
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
