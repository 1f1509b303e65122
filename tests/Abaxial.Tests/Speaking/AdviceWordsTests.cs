using Abaxial.Speaking;
using Abaxial.Tests.Cli.Pages;
using Abaxial.Weighing;

namespace Abaxial.Tests.Speaking;

public sealed class AdviceWordsTests
{
    private static readonly Speech English = new(PageRun.Knowledge);

    public static TheoryData<Standing, Advice> All()
    {
        var data = new TheoryData<Standing, Advice>();
        foreach (var standing in Enum.GetValues<Standing>())
        {
            foreach (var advice in Enum.GetValues<Advice>()) data.Add(standing, advice);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Destruction_is_spoken_of_only_where_late_blight_is_confirmed(Standing standing, Advice advice) =>
        Assert.Equal(standing == Standing.Confirmed, Sentences(standing, advice).Contains(English.Say("care.destruction")));

    [Theory]
    [MemberData(nameof(All))]
    public void What_to_do_until_the_answer_is_in_is_told_wherever_it_is_not(Standing standing, Advice advice) =>
        Assert.Equal(standing is not (Standing.Confirmed or Standing.RuledOut), Sentences(standing, advice).Contains(English.Say("care.until-answer")));

    [Theory]
    [MemberData(nameof(All))]
    public void A_licensed_adviser_the_label_and_local_law_come_first_where_something_is_to_be_done(Standing standing, Advice advice) =>
        Assert.Equal(advice is Advice.Act or Advice.Advise, Sentences(standing, advice).Contains(English.Say("care.licensed")));

    [Theory]
    [MemberData(nameof(All))]
    public void Nothing_reads_as_leave_to_skip_a_spray(Standing standing, Advice advice) =>
        Assert.Equal(standing is Standing.Unlikely or Standing.RuledOut, Sentences(standing, advice).Contains(English.Say("care.no-leave")));

    [Fact]
    public void Ruled_out_reads_not_found_in_this_sample_to_a_sender() =>
        Assert.Contains(Sentences(Standing.RuledOut, Advice.Advise), sentence => sentence.Contains("not found in this sample", StringComparison.Ordinal));

    [Fact]
    public void A_regulated_organism_that_cannot_be_set_aside_asks_for_the_authority()
    {
        var answer = PageRun.Answer(Standing.Unlikely, Advice.SendOn, 0.02, PageRun.Chance("bacterial-canker", 0.5, 0.4, 0.6), PageRun.Chance("bacterial-wilt", 0.05, 0.03, 0.08));
        var sentences = AdviceWords.Sentences(PageRun.Case(), answer, English).ToList();
        Assert.Contains(English.Say("care.regulated", "Bacterial canker"), sentences);
        Assert.DoesNotContain(sentences, sentence => sentence.Contains("Bacterial wilt", StringComparison.Ordinal));
    }

    [Fact]
    public void A_used_chamber_and_a_heater_fault_bring_their_cautions()
    {
        var heater = PageRun.Case(PageRun.Look("recent-event", "fumigant-or-heater-fault", Abaxial.Knowledge.Way.Asked));
        var sentences = AdviceWords.Sentences(heater, PageRun.Answer(Standing.Open, Advice.Hold), English).ToList();
        Assert.Contains(English.Say("care.heater"), sentences);
        Assert.Contains(English.Say("care.chamber"), sentences);
        Assert.DoesNotContain(English.Say("care.chamber"), Sentences(Standing.Open, Advice.Act));
    }

    [Fact]
    public void To_advise_gives_the_words_of_the_leading_cause()
    {
        string first = Sentences(Standing.Unlikely, Advice.Advise)[0];
        Assert.Contains("Septoria leaf spot", first, StringComparison.Ordinal);
        Assert.Contains(PageRun.Cause("septoria-leaf-spot").Advice["en"], first, StringComparison.Ordinal);
    }

    private static List<string> Sentences(Standing standing, Advice advice) => [.. AdviceWords.Sentences(PageRun.Case(), PageRun.Answer(standing, advice), English)];
}
