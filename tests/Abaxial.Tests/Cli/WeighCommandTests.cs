using System.Text;
using System.Text.Json;
using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Cli;

public sealed class WeighCommandTests
{
    [Fact]
    public void A_case_that_is_answered_exits_with_0_and_shows_late_blight_before_all_else()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("case.json", ExampleCases.Septoria));
        Assert.Equal(0, result.ExitCode);
        Assert.Empty(result.Error);
        Assert.Equal("case.json", result.Lines[0]);
        Assert.StartsWith("Late blight:", result.Lines[1], StringComparison.Ordinal);
        Assert.Contains("Septoria leaf spot", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void In_Spanish_people_read_Spanish_and_the_JSON_is_the_same()
    {
        using var cli = new CliRun();
        string file = cli.Write("case.json", ExampleCases.Septoria);
        var result = cli.Run("weigh", file, "--language", "es");
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith("Tizón tardío:", result.Lines[1], StringComparison.Ordinal);
        Assert.Equal(cli.Run("weigh", file, "--json").Out, cli.Run("weigh", file, "--json", "--language", "es").Out);
        Assert.Contains("rechazado", cli.Run("weigh", cli.Write("ringed.json", ExampleCases.Ringed), "--language", "es").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_language_that_the_knowledge_does_not_speak_is_told_with_those_it_does()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("case.json", ExampleCases.Septoria), "--language", "xx");
        Assert.Equal(64, result.ExitCode);
        Assert.Contains("there is no language 'xx'; accepted: en, es.", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void With_json_a_single_file_prints_the_bytes_of_the_answer_and_a_line_end()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("case.json", ExampleCases.Septoria), "--json");
        Assert.Equal(AnswerOf(ExampleCases.Septoria) + "\n", result.Out);
    }

    [Fact]
    public void A_refused_case_exits_with_2_and_people_read_place_found_and_accepted_on_standard_error()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("case.json", ExampleCases.Ringed));
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Out);
        Assert.Contains("case.json", result.Error, StringComparison.Ordinal);
        Assert.Contains("/looks/0/state", result.Error, StringComparison.Ordinal);
        Assert.Contains("ringed", result.Error, StringComparison.Ordinal);
        Assert.Contains("present, absent", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void In_a_stream_a_refusal_stands_in_its_place_and_the_rest_are_answered()
    {
        using var cli = new CliRun();
        var result = cli.RunWith($"{ExampleCases.Septoria}\n\n  \n{ExampleCases.Ringed}\r\n{ExampleCases.Blackleg}", "weigh", "-", "--json");
        Assert.Equal(2, result.ExitCode);
        Assert.Equal(
            [
                AnswerOf(ExampleCases.Septoria),
                """{"format":"abaxial-refusal/1","case":2,"problems":[{"at":"/looks/0/state","found":"ringed","accepted":["present","absent"]}]}""",
                AnswerOf(ExampleCases.Blackleg),
            ],
            result.Lines);
        Assert.Empty(result.Error);
    }

    [Fact]
    public void A_long_stream_is_answered_in_its_order()
    {
        string[] kinds = [ExampleCases.Septoria, ExampleCases.Blackleg, ExampleCases.Nothing, ExampleCases.Ringed];
        var order = Enumerable.Range(0, 200).Select(i => i * i % 7 % kinds.Length).ToList();
        using var cli = new CliRun();
        var result = cli.RunWith(string.Join('\n', order.Select(kind => kinds[kind])), "weigh", "-", "--json");
        var answers = kinds[..3].Select(AnswerOf).ToList();
        Assert.Equal(order.Select(kind => kind < 3 ? answers[kind] : "refused"), result.Lines.Select(line => line.StartsWith("""{"format":"abaxial-refusal""", StringComparison.Ordinal) ? "refused" : line));
    }

    [Fact]
    public void Files_and_a_stream_are_counted_and_answered_in_the_order_given()
    {
        using var cli = new CliRun();
        var result = cli.RunWith($"{ExampleCases.Blackleg}\n{ExampleCases.Ringed}\n", "weigh", cli.Write("a.json", ExampleCases.Septoria), "-", cli.Write("b.json", ExampleCases.Ringed), "--json");
        Assert.Equal(4, result.Lines.Length);
        Assert.Equal(AnswerOf(ExampleCases.Septoria), result.Lines[0]);
        Assert.Equal(AnswerOf(ExampleCases.Blackleg), result.Lines[1]);
        Assert.Equal(3, JsonDocument.Parse(result.Lines[2]).RootElement.GetProperty("case").GetInt32());
        Assert.Equal(4, JsonDocument.Parse(result.Lines[3]).RootElement.GetProperty("case").GetInt32());
    }

    [Fact]
    public void Several_files_for_people_are_parted_by_an_empty_line()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("a.json", ExampleCases.Septoria), cli.Write("b.json", ExampleCases.Blackleg));
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("\n\nb.json\n", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_stream_is_answered_by_nothing()
    {
        using var cli = new CliRun();
        Assert.Equal(new CliResult(0, "", ""), cli.RunWith("\n\n", "weigh", "-", "--json"));
    }

    [Fact]
    public void A_flat_prior_changes_the_answer_and_says_so()
    {
        using var cli = new CliRun();
        string file = cli.Write("case.json", ExampleCases.Septoria);
        Assert.NotEqual(cli.Run("weigh", file, "--json").Out, cli.Run("weigh", file, "--json", "--flat-prior").Out);
        Assert.Contains("Weighed as if every cause were equally common", cli.Run("weigh", file, "--flat-prior").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Knowledge_of_a_folder_answers_as_the_built_in_does_where_it_is_the_same()
    {
        using var cli = new CliRun();
        string file = cli.Write("case.json", ExampleCases.Septoria);
        Assert.Equal(cli.Run("weigh", file, "--json").Out, cli.Run("weigh", file, "--json", "--knowledge", Repository.PathOf("knowledge", "solanum")).Out);
    }

    [Theory]
    [InlineData("weigh")]
    [InlineData("weigh", "missing.json")]
    [InlineData("weigh", ".")]
    [InlineData("weigh", "-", "-")]
    [InlineData("weigh", "case.json", "missing.json", "--json")]
    [InlineData("weigh", "case.json", "--jsno")]
    [InlineData("weigh", "case.json", "--knowledge", "nowhere")]
    [InlineData("weigh", "@case.json")]
    public void What_cannot_be_done_exits_with_64_says_why_and_prints_nothing(params string[] args)
    {
        using var cli = new CliRun();
        cli.Write("case.json", ExampleCases.Septoria);
        var result = cli.Run(args);
        Assert.Equal(64, result.ExitCode);
        Assert.Empty(result.Out);
        Assert.StartsWith("abaxial: ", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not JSON")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("""{"format":"abaxial-case/1","format":"abaxial-case/1","host":"tomato","looks":[]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"spore-length","of":"lemon-shaped-sporangia","values":[1e999],"how":"microscope"}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"spore-length","of":"lemon-shaped-sporangia","values":[NaN],"how":"microscope"}]}""")]
    public void Nonsense_is_refused_without_a_stack_trace(string text)
    {
        using var cli = new CliRun();
        string file = cli.Write("case.json", text);
        foreach (var result in new[] { cli.Run("weigh", file), cli.Run("weigh", file, "--json") })
        {
            Assert.Equal(2, result.ExitCode);
            Assert.DoesNotContain("   at ", result.Out + result.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", result.Out + result.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused()
    {
        using var cli = new CliRun();
        Assert.Equal(2, cli.Run("weigh", cli.Write("case.json", [0xFF, 0xFE, 0x00, 0xC3, 0x28]), "--json").ExitCode);
    }

    [Fact]
    public void A_file_of_more_than_a_mebibyte_is_refused()
    {
        using var cli = new CliRun();
        var result = cli.Run("weigh", cli.Write("case.json", ExampleCases.Septoria + new string(' ', CaseLimits.Bytes)), "--json");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("abaxial-refusal/1", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stream_that_breaks_is_reported_and_what_came_before_it_is_answered()
    {
        using var cli = new CliRun();
        var result = cli.RunWith(new BrokenStream(Encoding.UTF8.GetBytes(ExampleCases.Septoria + "\n")), "weigh", "-", "--json");
        Assert.Equal(64, result.ExitCode);
        Assert.Equal([AnswerOf(ExampleCases.Septoria)], result.Lines);
        Assert.Contains("standard input", result.Error, StringComparison.Ordinal);
    }

    private static string AnswerOf(string text)
    {
        var knowledge = BuiltIn.Solanum();
        var reading = CaseReader.Read(Encoding.UTF8.GetBytes(text), knowledge);
        return Encoding.UTF8.GetString(AnswerWriter.ToUtf8(new Weigher(knowledge).Weigh(reading.Case!)));
    }

    /// <summary>Gives its bytes, then fails as a disk or a connection does.</summary>
    private sealed class BrokenStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) => Position < Length ? base.Read(buffer, offset, count) : throw new IOException("The device is gone.");
    }
}
