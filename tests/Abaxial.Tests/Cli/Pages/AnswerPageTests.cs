using System.Text.RegularExpressions;
using Abaxial.Cli.Pages;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Cli.Pages;

public sealed partial class AnswerPageTests
{
    [Fact]
    public void An_open_case_reads_as_expected()
    {
        var weighed = PageRun.Case(
            PageRun.Look("pycnidia", "absent"),
            PageRun.Look("leaf-underside-growth", "none") with { Surface = Surface.DryDay },
            PageRun.Look("concentric-rings", "clear", Way.HandLens));
        var answer = PageRun.Answer(Standing.Open, Advice.Hold, 0.2, PageRun.Chance("septoria-leaf-spot", 0.6, 0.45, 0.73), PageRun.Chance("bacterial-canker", 0.12, 0.08, 0.17), PageRun.Chance("anthracnose", 0.002, 0.001, 0.004)) with
        {
            Evidence =
            [
                new Evidence(weighed.Looks[2].Character, [2], -6.4, PageRun.Cause("early-blight")),
                new Evidence(weighed.Looks[0].Character, [0], 2.5, PageRun.Cause("late-blight")),
                new Evidence(weighed.Looks[1].Character, [1], -0.4, PageRun.Cause("septoria-leaf-spot")),
            ],
            Conflicts = [new Conflict([2], ConflictReason.Unexpected, 0.012)],
            HeldBack = [PageRun.Knowledge.FindCharacter("culture")!],
            Misfit = true,
            RestsOnJudgement = true,
        };
        var flat = PageRun.Answer(Standing.Open, Advice.Hold, 0.31);
        ExpectedText.Check("open.txt", PageRun.Write(page => AnswerPage.Write(page, weighed, answer, flat)));
        ExpectedText.Check("open-ascii.txt", PageRun.Write(page => AnswerPage.Write(page, weighed, answer, flat), width: 64, ascii: true));
        ExpectedText.Check("open-es.txt", PageRun.Write(page => AnswerPage.Write(page, weighed, answer, flat, "es")));
    }

    [Fact]
    public void A_confirmed_case_reads_as_expected()
    {
        var answer = PageRun.Answer(Standing.Confirmed, Advice.Act, 0.9999) with { StandingBecause = StandingReason.BenchProof, NextLooks = [] };
        ExpectedText.Check("confirmed.txt", PageRun.Write(page => AnswerPage.Write(page, PageRun.Case(), answer, null)));
    }

    public static TheoryData<string> DemoCases() => [.. Directory.EnumerateFiles(Repository.PathOf("demo", "cases"), "*.json").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(DemoCases))]
    public void Every_demo_case_is_answered_within_80_columns_and_every_sentence_has_its_words(string name)
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", Repository.PathOf("demo", "cases", name));
        Assert.Equal(0, result.ExitCode);
        Assert.All(result.Lines.Skip(1), line => Assert.True(line.Length <= 80, $"{line.Length} columns: {line}"));
        Assert.DoesNotMatch(KeyOrGap(), string.Join('\n', result.Lines.Skip(1)));
    }

    /// <summary>The key of a sentence that the texts lack, or a gap that nothing filled.</summary>
    [GeneratedRegex(@"\b(percent|because|do|care|evidence|conflict|next|rests|head|case|causes|look|list|way|surface|standing|advice|host|system|stage)\.[a-z]|\{\d\}")]
    private static partial Regex KeyOrGap();
}
