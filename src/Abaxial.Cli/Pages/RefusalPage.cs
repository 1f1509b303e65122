using System.Collections.Immutable;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>A refusal as people read it: the place, what stands there, what would do.</summary>
internal static class RefusalPage
{
    /// <summary>Of many accepted words, so many are named, nearest first.</summary>
    private const int Named = 12;

    public static void Write(Page page, string name, ImmutableArray<CaseProblem> problems, Speech speech)
    {
        page.Line(speech.Say("refusal.title", name), Tone.Danger);
        foreach (var problem in problems)
        {
            page.Text(problem.At.Length == 0 ? speech.Say("refusal.at-whole") : speech.Say("refusal.at", problem.At));
            page.Text(speech.Say("refusal.found", problem.Found), indent: 4, hanging: 2);
            if (problem.Accepted.IsEmpty) continue;
            var shown = problem.Accepted.Length > Named ? NearWords.Order(problem.Found, problem.Accepted) : problem.Accepted;
            string accepted = string.Join(speech.Word("list.comma"), shown.Take(Named));
            int more = problem.Accepted.Length - Named;
            page.Text(more > 0 ? speech.Say("refusal.accepted-more", accepted, ChanceWords.Number(more)) : speech.Say("refusal.accepted", accepted), indent: 4, hanging: 2);
        }
    }
}
