using System.Globalization;
using Abaxial.Files.Trials;
using Abaxial.Speaking;
using Abaxial.Weighing;

namespace Abaxial.Cli.Pages;

/// <summary>Results of trials in words, for the terminal and for the Markdown page alike.</summary>
internal static class TrialWords
{
    /// <summary>A cell of the confusion table.</summary>
    /// <param name="Expected">The cause that should lead.</param>
    /// <param name="Leader">The cause that leads.</param>
    /// <param name="Cases">How many cases.</param>
    public sealed record Confusion(string Expected, string Leader, int Cases);

    /// <summary>Which expected cause was led by which, for the trials that expect one; where several may lead and none of them does, the first named counts as expected.</summary>
    public static List<Confusion> Confusions(IEnumerable<TrialResult> results, Speech speech)
    {
        var led = results.Where(result => !result.Trial.Leads.IsEmpty && result.Leader is not null);
        return [.. led.GroupBy(result => (Expected: ExpectedOf(result), Leader: result.Leader!.Id))
            .OrderBy(group => group.Key.Expected, StringComparer.Ordinal)
            .ThenByDescending(group => group.Count())
            .ThenBy(group => group.Key.Leader, StringComparer.Ordinal)
            .Select(group => new Confusion(NameOf(group.Key.Expected, speech), NameOf(group.Key.Leader, speech), group.Count()))];
    }

    public static string Summary(IReadOnlyCollection<TrialResult> results, Speech speech) =>
        speech.Say("trial.summary", Whole(results.Count), Whole(results.Count(result => result.IsPassed)), Whole(results.Count(result => !result.IsPassed)), speech.Knowledge.Id);

    /// <summary>Why a trial fails, a sentence for each miss.</summary>
    public static IEnumerable<string> Misses(TrialResult result, Speech speech)
    {
        var trial = result.Trial;
        foreach (var miss in result.Misses)
        {
            yield return miss switch
            {
                TrialMiss.Refused => speech.Say("trial.refused", string.Join("; ", result.Problems.Select(problem => $"{problem.At}: {problem.Found}"))),
                TrialMiss.Leader => speech.Say("trial.leader", string.Join(", ", trial.Leads.Select(id => NameOf(id, speech))), speech.Name(result.Leader!)),
                TrialMiss.TooProbable => speech.Say("trial.too-probable", Percent(result.Answer!.LateBlight.Probability), Percent(trial.AtMost!.Value)),
                TrialMiss.TooImprobable => speech.Say("trial.too-improbable", Percent(result.Answer!.LateBlight.Probability), Percent(trial.AtLeast!.Value)),
                TrialMiss.Standing => speech.Say("trial.standing", result.Answer!.Standing.Word(), string.Join(", ", trial.Standings)),
                _ => speech.Say("trial.advice", result.Answer!.Advice.Word(), string.Join(", ", trial.Advice.IsEmpty ? trial.AdviceNot.Select(word => $"not {word}") : trial.Advice)),
            };
        }
    }

    /// <summary>The causes that stand highest, with their chances.</summary>
    public static string Leaders(Answer answer, Speech speech) =>
        string.Join(", ", answer.Causes.Take(4).Select(chance => $"{speech.Name(chance.Cause)} {Percent(chance.Probability)}"));

    /// <summary>What moved late blight most, in decibans.</summary>
    public static string Evidence(Answer answer, Speech speech) =>
        string.Join(", ", answer.Evidence.Take(6).Select(one => string.Create(CultureInfo.InvariantCulture, $"{speech.Name(one.Character)} {one.Decibans:+0.0;-0.0;0.0}")));

    public static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string ExpectedOf(TrialResult result) => result.Trial.Leads.Contains(result.Leader!.Id) ? result.Leader.Id : result.Trial.Leads[0];

    private static string NameOf(string id, Speech speech) => speech.Knowledge.FindCause(id) is { } cause ? speech.Name(cause) : id;

    private static string Percent(double probability) => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0.0} %");
}
