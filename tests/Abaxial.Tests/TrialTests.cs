using Abaxial.Files.Trials;
using Abaxial.Tests.Weighing;
using Abaxial.Weighing;

namespace Abaxial.Tests;

/// <summary>Every case that the project keeps with what must come out of it.</summary>
public sealed class TrialTests
{
    private static readonly TrialJudge Judge = new(CaseText.Knowledge);

    private static readonly Dictionary<string, Trial> Trials = TrialFiles.ReadFolder(Path.Combine(AppContext.BaseDirectory, "trials")).ToDictionary(trial => trial.Id);

    public static TheoryData<string> Ids => [.. Trials.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Comes_out_as_its_source_has_it(string id)
    {
        var result = Judge.Judge(Trials[id]);
        string got = result.Answer is { } answer
            ? $"{answer.Causes[0].Cause} {answer.Causes[0].Probability:F3} leads, late blight {answer.LateBlight.Probability:F4}, {answer.Standing.Word()}, {answer.Advice.Word()}"
            : string.Join("; ", result.Problems.Select(problem => $"{problem.At}: {problem.Found}"));
        Assert.True(result.IsPassed, $"{string.Join(", ", result.Misses)}: {got}.");
    }

    [Fact]
    public void At_least_thirty_causes_have_a_textbook_case_whose_source_has_a_name()
    {
        var published = Trials.Values.Where(trial => trial.File == "published.yaml" && trial.Leads.Length > 0 && trial.Sources.Any(source => source is not ("common practice" or "judgement")));
        int causes = published.Select(trial => trial.Leads[0]).Distinct().Count();
        Assert.True(causes >= 30, $"{causes} causes.");
    }

    [Fact]
    public void Every_cause_has_a_textbook_case() =>
        Assert.Empty(CaseText.Knowledge.Causes.Select(cause => cause.Id).Except(Trials.Values.Where(trial => trial.File == "published.yaml").SelectMany(trial => trial.Leads)));

    [Fact]
    public void Every_trial_says_where_it_comes_from() => Assert.All(Trials.Values, trial => Assert.True(!trial.Sources.IsEmpty && trial.Story.Length > 0, trial.Id));

    /// <summary>The cases, for laws that must hold of them too.</summary>
    internal static IEnumerable<Case> Cases => Trials.Values.Select(trial => CaseReader.Read(trial.Case.Span, CaseText.Knowledge).Case!);
}
