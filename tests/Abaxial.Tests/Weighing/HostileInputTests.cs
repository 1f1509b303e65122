using System.Text;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

public sealed class HostileInputTests
{
    private const string Frame = """{"format":"abaxial-case/1","host":"tomato","looks":[""";

    [Theory]
    [InlineData("", "", "the end of the text (line 1, byte 1)")]
    [InlineData("   \n ", "", "the end of the text (line 2, byte 2)")]
    [InlineData("leaves are brown", "", "leaves (line 1, byte 1)")]
    [InlineData("<case/>", "", "< (line 1, byte 1)")]
    [InlineData("{\"host\":'tomato'}", "/host", "' (line 1, byte 9)")]
    [InlineData("{\"host\":\"tomato\",}", "", "} (line 1, byte 18)")]
    [InlineData("{\"host\":\"tomato\"} {}", "", "{ (line 1, byte 19)")]
    [InlineData("{\"host\":\"tomato\" // so\n}", "", "/ (line 1, byte 18)")]
    [InlineData("{\"looks\":[1,2", "/looks/1", "the end of the text (line 1, byte 14)")]
    [InlineData("{\"host\":nul, ", "/host", "nul (line 1, byte 9)")]
    [InlineData("{\"looks\":[1,\n2.5.1]}", "/looks/1", "2.5.1 (line 2, byte 1)")]
    [InlineData("{\"looks\":[{\"values\":[28.1,NaN]}]}", "/looks/0/values/1", "NaN (line 1, byte 27)")]
    [InlineData("{\"looks\":[{\"values\":[Infinity]}]}", "/looks/0/values/0", "Infinity (line 1, byte 22)")]
    [InlineData("{\"looks\":[{\"values\":[-Infinity]}]}", "/looks/0/values/0", "-Infinity (line 1, byte 22)")]
    [InlineData("{\"looks\":[{\"values\":[01]}]}", "/looks/0/values/0", "01 (line 1, byte 22)")]
    [InlineData("{\"note\":\"a\tb\"}", "/note", "byte 0x09 (line 1, byte 11)")]
    public void What_is_not_JSON_is_refused_where_it_stops_being_so(string text, string at, string found)
    {
        var problem = CaseText.TheProblem(text);
        Assert.Equal((at, found), (problem.At, problem.Found));
        Assert.Equal(["JSON"], problem.Accepted);
    }

    [Fact]
    public void Every_cut_of_a_case_is_refused()
    {
        byte[] whole = Encoding.UTF8.GetBytes(CaseText.Example);
        for (int length = 0; length < whole.Length; length++)
        {
            var reading = CaseText.Read(whole[..length]);
            Assert.True(reading.IsRefused, $"cut to {length} bytes");
            Assert.Equal(["JSON"], Assert.Single(reading.Problems).Accepted);
        }
    }

    [Fact]
    public void A_byte_order_mark_is_refused()
    {
        var problem = Assert.Single(CaseText.Read([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(CaseText.Example)]).Problems);
        Assert.Equal(("", "a byte order mark"), (problem.At, problem.Found));
    }

    [Theory]
    [InlineData(new byte[] { 0xFF }, "byte 0xFF")]
    [InlineData(new byte[] { 0x61, 0xC3 }, "byte 0xC3")]
    [InlineData(new byte[] { 0xC0, 0xAF }, "byte 0xC0")]
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 }, "byte 0xED")]
    [InlineData(new byte[] { 0xF4, 0x90, 0x80, 0x80 }, "byte 0xF4")]
    public void Bytes_that_are_not_UTF8_are_refused_in_text_and_names(byte[] bytes, string found)
    {
        byte[] inText = [.. Encoding.UTF8.GetBytes(Frame + "{\"note\":\""), .. bytes, .. "\"}]}"u8];
        var problem = Assert.Single(CaseText.Read(inText).Problems);
        Assert.Equal(("/looks/0/note", found), (problem.At, problem.Found));
        Assert.Equal(["UTF-8"], problem.Accepted);

        byte[] inName = [.. Encoding.UTF8.GetBytes(Frame + "{\""), .. bytes, .. "\":1}]}"u8];
        problem = Assert.Single(CaseText.Read(inName).Problems);
        Assert.Equal(("/looks/0", found), (problem.At, problem.Found));
    }

    [Theory]
    [InlineData(@"\ud83c", @"\ud83c")]
    [InlineData(@"x\udf45", @"\udf45")]
    [InlineData(@"\ud83c\ud83c\udf45", @"\ud83c")]
    [InlineData(@"\ud83cx\udf45", @"\ud83c")]
    [InlineData(@"\ud83c\n", @"\ud83c")]
    [InlineData(@"\\\ud83c", @"\ud83c")]
    public void Half_a_surrogate_pair_is_refused_in_text_and_names(string text, string found)
    {
        var problem = CaseText.TheProblem(CaseText.WithLooks($$"""{"note":"{{text}}"}"""));
        Assert.Equal(("/looks/0/note", found), (problem.At, problem.Found));
        Assert.Equal(("/looks/0", found), (CaseText.TheProblem(CaseText.WithLooks($$"""{"{{text}}":1}""")).At, CaseText.TheProblem(CaseText.WithLooks($$"""{"{{text}}":1}""")).Found));
    }

    [Theory]
    [InlineData("[", "/0")]
    [InlineData("{\"a\":", "/a")]
    public void Ten_thousand_levels_are_refused_at_the_first_too_many(string opening, string step)
    {
        var problem = CaseText.TheProblem(string.Concat(Enumerable.Repeat(opening, 10_000)));
        Assert.Equal((string.Concat(Enumerable.Repeat(step, 32)), "level 33"), (problem.At, problem.Found));
        Assert.Equal(["at most 32 levels of objects and arrays"], problem.Accepted);
    }

    [Fact]
    public void Thirty_two_levels_are_not_too_many()
    {
        string nested = new string('[', 31) + new string(']', 31);
        Assert.Equal("/deep", CaseText.TheProblem(CaseText.With($"\"looks\":[],\"deep\":{nested}")).At);
    }

    [Fact]
    public void A_case_is_at_most_one_mebibyte()
    {
        string text = CaseText.With("\"looks\":[]");
        Assert.False(CaseText.Read(text + new string(' ', CaseLimits.Bytes - text.Length)).IsRefused);
        var problem = CaseText.TheProblem(text + new string(' ', CaseLimits.Bytes - text.Length + 1));
        Assert.Equal(("", "more than 1048576 bytes"), (problem.At, problem.Found));
    }

    [Fact]
    public void A_case_has_at_most_a_thousand_looks()
    {
        string[] looks = [.. Enumerable.Repeat("""{"character":"pycnidia","state":"absent","how":"photo"}""", 1000)];
        Assert.Equal(1000, CaseText.Accepted(CaseText.WithLooks(looks)).Looks.Length);
        var problem = CaseText.TheProblem(CaseText.WithLooks([.. looks, looks[0]]));
        Assert.Equal(("/looks", "1001 looks"), (problem.At, problem.Found));
    }

    [Fact]
    public void A_refusal_names_at_most_fifty_problems()
    {
        var problems = CaseText.Read(CaseText.WithLooks([.. Enumerable.Repeat("{}", 900)])).Problems;
        Assert.Equal(50, problems.Length);
        Assert.Equal("/looks/24/how", problems[^1].At);
    }

    [Fact]
    public void What_was_found_is_shortened_to_a_hundred_characters()
    {
        var problem = CaseText.TheProblem(CaseText.With($"\"looks\":[],\"system\":\"{new string('x', 5000)}\""));
        Assert.Equal(new string('x', 99) + "…", problem.Found);
        Assert.Equal(new string('x', 100), CaseText.TheProblem(CaseText.With($"\"looks\":[],\"system\":\"{new string('x', 100)}\"")).Found);
        Assert.Equal(string.Concat(Enumerable.Repeat("🍅", 49)) + "…", CaseText.TheProblem(CaseText.With($"\"looks\":[],\"system\":\"{string.Concat(Enumerable.Repeat("🍅", 51))}\"")).Found);
    }

    [Fact]
    public void What_was_found_can_be_printed_without_harm() =>
        Assert.Equal(@"\u001b[2J \u202ex", CaseText.TheProblem(CaseText.With("\"looks\":[],\"system\":\"\\u001b[2J\\n\u202ex\"")).Found);

    [Fact]
    public void A_name_too_long_for_a_pointer_is_named_by_what_holds_it()
    {
        string name = new('~', 600);
        var problem = CaseText.TheProblem(CaseText.With($"\"looks\":[],\"place\":{{\"latitude\":1,\"longitude\":1,\"{name}\":1}}"));
        Assert.Equal("/place", problem.At);
        problem = Assert.Single(CaseText.Read($"{{\"{name}\":{{\"a\":1,\"a\":2}}").Problems, found => found.Accepted.Contains("each name once in an object"));
        Assert.Equal("", problem.At);
    }

    [Fact]
    public void A_mebibyte_of_names_is_refused_without_copying_it_about()
    {
        string names = CaseText.With(string.Join(',', Enumerable.Range(0, 60_000).Select(i => $"\"{i}\":{{\"a\":0}}")));
        Assert.InRange(names.Length, 800_000, CaseLimits.Bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(50, CaseText.Read(names).Problems.Length);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64 << 20);
    }
}
