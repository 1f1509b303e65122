using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>What to do, with the cautions that go with it.</summary>
internal static class AdviceSection
{
    public static void Write(Page page, Case weighed, Answer answer, Speech speech)
    {
        page.Heading(speech.Say("head.advice", speech.Word($"advice.{answer.Advice.Word()}")));
        foreach (string sentence in AdviceWords.Sentences(weighed, answer, speech)) page.Text(sentence, hanging: 2);
    }
}
