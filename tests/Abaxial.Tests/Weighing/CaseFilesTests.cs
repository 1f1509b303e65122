using System.Text;
using Abaxial.Files.Cases;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

public sealed class CaseFilesTests
{
    private static readonly string Good = CaseText.With("\"looks\":[]");

    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData("\r\n \t \r\n\n")]
    public void A_stream_without_cases_gives_none(string text) => Assert.Empty(Read(text));

    [Theory]
    [InlineData("\n", "\n")]
    [InlineData("\n", "")]
    [InlineData("\r\n", "\r\n")]
    [InlineData("\r\n", "")]
    [InlineData("\n\n  \n", "\n\n")]
    public void Lines_end_in_every_usual_way_and_blank_ones_do_not_count(string between, string last)
    {
        var cases = Read($"{Good}{between}{Good}{between}{Good}{last}");
        Assert.Equal([1, 2, 3], cases.Select(read => read.Number));
        Assert.All(cases, read => Assert.False(read.Reading.IsRefused));
    }

    [Fact]
    public void A_refused_line_does_not_touch_the_others()
    {
        var cases = Read([.. Encoding.UTF8.GetBytes(Good), .. "\n{\"a\xFF\":\n"u8, 0xFF, 0xC3, (byte)'\n', .. "\n{}\n"u8, .. Encoding.UTF8.GetBytes(Good)]);
        Assert.Equal([1, 2, 3, 4, 5], cases.Select(read => read.Number));
        Assert.Equal([false, true, true, true, false], cases.Select(read => read.Reading.IsRefused));
    }

    [Fact]
    public void A_stream_that_breaks_off_refuses_its_last_case()
    {
        var cases = Read($"{Good}\n{Good[..^3]}");
        Assert.Equal([false, true], cases.Select(read => read.Reading.IsRefused));
        Assert.StartsWith("the end of the text", cases[1].Reading.Problems[0].Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void A_line_may_be_one_mebibyte_long_without_its_end(string ending)
    {
        string longest = Good + new string(' ', CaseLimits.Bytes - Good.Length);
        var cases = Read($"{longest}{ending}{longest} {ending}{longest}");
        Assert.Equal([false, true, false], cases.Select(read => read.Reading.IsRefused));
        Assert.Same(CaseLimits.TooLong, cases[1].Reading);
    }

    [Fact]
    public void Blanks_without_end_are_a_blank_line()
    {
        var cases = Read($"{new string(' ', 3 * CaseLimits.Bytes)}\n{Good}\n{new string(' ', 3 * CaseLimits.Bytes)}x\n{new string(' ', 2 * CaseLimits.Bytes)}");
        Assert.Equal([(1, false), (2, true)], cases.Select(read => (read.Number, read.Reading.IsRefused)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(4096)]
    public void How_a_stream_is_cut_into_reads_does_not_matter(int most)
    {
        byte[] text = Encoding.UTF8.GetBytes($"{Good}\r\n\n{Good}\n{{\n{CaseText.Example.ReplaceLineEndings(" ")}");
        var cases = CaseFiles.ReadLines(new PatternStream(text, text.Length, most), CaseText.Knowledge);
        Assert.Equal([(1, false), (2, false), (3, true), (4, false)], cases.Select(read => (read.Number, read.Reading.IsRefused)));
    }

    [Fact]
    public void Two_hundred_megabytes_in_one_file_are_refused_in_little_memory()
    {
        using var stream = new PatternStream("{\"looks\":[0,"u8.ToArray(), 200_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var reading = CaseFiles.ReadWhole(stream, CaseText.Knowledge);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 8 << 20);
        Assert.Same(CaseLimits.TooLong, reading);
        Assert.InRange(stream.Position, CaseLimits.Bytes + 1, 2 * CaseLimits.Bytes);
    }

    [Fact]
    public void Two_hundred_megabytes_in_one_line_are_refused_in_little_memory()
    {
        using var stream = new PatternStream("{\"looks\":[0,"u8.ToArray(), 200_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var cases = CaseFiles.ReadLines(stream, CaseText.Knowledge).ToList();
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 8 << 20);
        Assert.Same(CaseLimits.TooLong, Assert.Single(cases).Reading);
        Assert.Equal(200_000_000, stream.Position);
    }

    [Fact]
    public void A_whole_file_is_read_to_its_last_byte()
    {
        string longest = Good + new string('\n', CaseLimits.Bytes - Good.Length);
        Assert.False(CaseFiles.ReadWhole(new MemoryStream(Encoding.UTF8.GetBytes(longest)), CaseText.Knowledge).IsRefused);
        Assert.Same(CaseLimits.TooLong, CaseFiles.ReadWhole(new MemoryStream(Encoding.UTF8.GetBytes(longest + "\n")), CaseText.Knowledge));
        Assert.False(CaseFiles.ReadWhole(new PatternStream(Encoding.UTF8.GetBytes(CaseText.Example), CaseText.Example.Length, 5), CaseText.Knowledge).IsRefused);
    }

    [Fact]
    public void The_stream_is_left_open()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(Good));
        Assert.Single(CaseFiles.ReadLines(stream, CaseText.Knowledge));
        Assert.True(stream.CanRead);
    }

    private static List<NumberedCase> Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static List<NumberedCase> Read(byte[] utf8) => [.. CaseFiles.ReadLines(new MemoryStream(utf8), CaseText.Knowledge)];
}
