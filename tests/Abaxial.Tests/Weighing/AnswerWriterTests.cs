using System.Text;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

public sealed class AnswerWriterTests
{
    public static Answer Sample { get; } = Make();

    [Fact]
    public void An_answer_has_its_members_in_order_with_fixed_digits() => Assert.Equal(
        """
        {"format":"abaxial-answer/1","knowledge":"solanum 2026.1 3f9c2a71","standing":"unlikely","standingBecause":"probability","advice":"hold",
        "lateBlight":{"probability":0.012345,"low":0.003210,"high":0.031000},
        "causes":[{"id":"septoria-leaf-spot","probability":0.930000,"low":0.860000,"high":0.970000},{"id":"late-blight","probability":0.012345,"low":0.003210,"high":0.031000}],
        "notListed":{"probability":0.010000},
        "evidence":[{"character":"pycnidia","looks":[0,2],"decibans":-14.20,"towards":"septoria-leaf-spot"}],
        "nextLooks":[{"character":"leaf-underside-growth","how":"moist-chamber","worth":0.812,"minutes":1,"waitHours":24,"outcomes":[{"state":"none","chance":0.950000,"lateBlight":0.001000}]},
        {"character":"smell","how":"smell","worth":-0.002,"minutes":0.5,"waitHours":0,"outcomes":[]}],
        "conflicts":[{"looks":[4],"why":"unexpected","chance":0.011000},{"looks":[0,2],"why":"readings-differ"},{"looks":[1],"why":"parent-says-otherwise"}],
        "misfit":false}
        """.ReplaceLineEndings(""),
        Encoding.UTF8.GetString(AnswerWriter.ToUtf8(Sample)));

    [Fact]
    public void No_number_is_a_negative_zero()
    {
        var pycnidia = CaseText.Knowledge.FindCharacter("pycnidia")!;
        string text = Encoding.UTF8.GetString(AnswerWriter.ToUtf8(Sample with
        {
            NotListed = -0.0,
            Evidence = [new Evidence(pycnidia, [0], -0.0049, CaseText.Knowledge.Subject)],
            NextLooks = [new NextLook(pycnidia, Way.HandLens, -0.0004, -0.0, -0.0, [])],
        }));
        Assert.Contains("\"decibans\":0.00,", text, StringComparison.Ordinal);
        Assert.Contains("\"worth\":0.000,\"minutes\":0,\"waitHours\":0,", text, StringComparison.Ordinal);
        Assert.Contains("\"notListed\":{\"probability\":0.000000}", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_with_a_number_that_is_none_is_a_fault() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AnswerWriter.ToUtf8(Sample with { NotListed = double.NaN }));

    [Fact]
    public void Every_value_of_the_enumerations_has_its_word()
    {
        Assert.Equal(["ruled-out", "unlikely", "open", "likely", "confirmed"], Enum.GetValues<Standing>().Select(value => value.Word()));
        Assert.Equal(["probability", "bench-proof", "showing-look", "bench-contradiction"], Enum.GetValues<StandingReason>().Select(value => value.Word()));
        Assert.Equal(["act", "hold", "advise", "send-on"], Enum.GetValues<Advice>().Select(value => value.Word()));
        Assert.Equal(["unexpected", "readings-differ", "parent-says-otherwise"], Enum.GetValues<ConflictReason>().Select(value => value.Word()));
    }

    [Fact]
    public void A_refusal_is_the_one_the_interface_shows() => Assert.Equal(
        """{"format":"abaxial-refusal/1","case":3,"problems":[{"at":"/looks/2/state","found":"ringed","accepted":["clear","faint","absent"]}]}""",
        Encoding.UTF8.GetString(RefusalWriter.ToUtf8(3, [new CaseProblem("/looks/2/state", "ringed", ["clear", "faint", "absent"])])));

    [Fact]
    public void Cases_count_from_one() => Assert.Throws<ArgumentOutOfRangeException>(() => RefusalWriter.ToUtf8(0, CaseLimits.TooLong.Problems));

    private static Answer Make()
    {
        var knowledge = CaseText.Knowledge;
        var septoria = knowledge.FindCause("septoria-leaf-spot")!;
        var lateBlight = new CauseChance(knowledge.Subject, 0.012345, 0.00321, 0.031);
        return new Answer
        {
            Knowledge = "solanum 2026.1 3f9c2a71",
            Standing = Standing.Unlikely,
            StandingBecause = StandingReason.Probability,
            Advice = Advice.Hold,
            LateBlight = lateBlight,
            Causes = [new CauseChance(septoria, 0.93, 0.86, 0.97), lateBlight],
            NotListed = 0.01,
            Evidence = [new Evidence(knowledge.FindCharacter("pycnidia")!, [0, 2], -14.2, septoria)],
            NextLooks =
            [
                new NextLook(knowledge.FindCharacter("leaf-underside-growth")!, Way.MoistChamber, 0.8124, 1, 24, [new Outcome(0, 0.95, 0.001)]),
                new NextLook(knowledge.FindCharacter("smell")!, Way.Smell, -0.0021, 0.5, 0, []),
            ],
            Conflicts =
            [
                new Conflict([4], ConflictReason.Unexpected, 0.011),
                new Conflict([0, 2], ConflictReason.ReadingsDiffer, null),
                new Conflict([1], ConflictReason.ParentSaysOtherwise, null),
            ],
            Misfit = false,
        };
    }
}
