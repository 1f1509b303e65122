using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What to look at next, what each look could show, what it takes, and which looks are held back.</summary>
internal static class NextLooksSection
{
    public static void Write(Page page, Answer answer, Speech speech)
    {
        page.Heading(speech.Say("head.next"));
        if (NextLookWords.InVain(answer, speech) is { } inVain) page.Text(inVain);
        foreach (var (place, look) in NextLookWords.Shown(answer).Index()) page.Item($"{place + 1}.", NextLookWords.Of(look, answer, speech), 3);
        if (NextLookWords.HeldBack(answer, speech) is { } heldBack) page.Text(heldBack, hanging: 2);
    }
}
