using System.Text;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

public sealed class CaseWriterTests
{
    [Fact]
    public void The_example_comes_back_in_canonical_form() => Assert.Equal(
        """
        {"format":"abaxial-case/1","host":"tomato","system":"high-tunnel","stage":"fruiting","purpose":"market","noticed":"2026-07-14","place":{"latitude":55.21,"longitude":-4.02,"uncertaintyMeters":2000},
        "priorFactors":[{"cause":"late-blight","factor":2.5,"reason":"21 days of weather at the nearest station"}],"looks":[
        {"character":"organs-affected","states":["leaf"],"how":"naked-eye","by":"scout","observer":"s-07"},
        {"character":"leaf-underside-growth","states":["none"],"how":"hand-lens","surface":"dry-day","by":"diagnostician"},
        {"character":"pycnidia","state":"present","how":"hand-lens","by":"diagnostician"},
        {"character":"concentric-rings","state":"unsure","how":"photo","by":"grower"},
        {"character":"spore-length","of":"lemon-shaped-sporangia","values":[28.1,31,33.4],"how":"microscope","by":"diagnostician"}]}
        """.ReplaceLineEndings(""),
        Encoding.UTF8.GetString(CaseWriter.ToUtf8(CaseText.Accepted(CaseText.Example))));

    [Fact]
    public void What_is_written_is_read_as_the_same_case() => GenCase.Any.Sample(written =>
    {
        byte[] bytes = CaseWriter.ToUtf8(written);
        var reading = CaseText.Read(bytes);
        Assert.Empty(reading.Problems);
        AssertSame(written, reading.Case!);
        Assert.Equal(bytes, CaseWriter.ToUtf8(reading.Case!));
    }, iter: 2_000);

    [Fact]
    public void A_line_break_in_a_text_does_not_break_the_line() => GenCase.Any.Sample(written => !CaseWriter.ToUtf8(written).Contains((byte)'\n'), iter: 500);

    private static void AssertSame(Case expected, Case actual)
    {
        Assert.Equal((expected.Host, expected.System, expected.Stage, expected.Purpose, expected.Noticed, expected.Place), (actual.Host, actual.System, actual.Stage, actual.Purpose, actual.Noticed, actual.Place));
        Assert.Equal(expected.PriorFactors, actual.PriorFactors);
        Assert.Equal(expected.Looks.Length, actual.Looks.Length);
        foreach (var (one, other) in expected.Looks.Zip(actual.Looks))
        {
            Assert.True(one.IsSameAs(other));
            Assert.Equal((one.By, one.Hours, one.At, one.Note), (other.By, other.Hours, other.At, other.Note));
        }
    }
}
