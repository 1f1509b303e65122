using Abaxial.Knowledge;

namespace Abaxial.Tests.Cli;

public sealed class KnowledgeCommandTests
{
    private static readonly string Solanum = Repository.PathOf("knowledge", "solanum");

    [Fact]
    public void Check_counts_causes_characters_and_rows_by_kind_of_source()
    {
        using var cli = new CliRun();
        var result = cli.Run("knowledge", "check");
        var knowledge = BuiltIn.Solanum();
        var counts = SourceCounts.Of(knowledge.Causes.SelectMany(cause => cause.Rows));
        Assert.Equal(0, result.ExitCode);
        Assert.Equal(result.Out, cli.Run("knowledge", "check", Solanum).Out);
        Assert.Contains($"{knowledge.Causes.Length} causes, {knowledge.Characters.Length} characters", result.Out, StringComparison.Ordinal);
        string line = Assert.Single(result.Lines, line => line.StartsWith("  All causes", StringComparison.Ordinal));
        Assert.Equal([$"{counts.Rows}", $"{counts.Publication}", $"{counts.CommonPractice}", $"{counts.Judgement}"], line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[2..6]);
    }

    [Fact]
    public void Check_names_file_and_line_of_what_is_wrong()
    {
        using var cli = new CliRun();
        Copy(cli);
        string file = Path.Combine(cli.Folder, "copy", "causes", "late-blight.yaml");
        string[] lines = File.ReadAllLines(file);
        int line = Array.FindIndex(lines, text => text.Contains("  pycnidia:", StringComparison.Ordinal));
        lines[line] = "  picnidia:";
        File.WriteAllLines(file, lines);
        var result = cli.Run("knowledge", "check", "copy");
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Out);
        Assert.Contains($"{Path.Combine("copy", "causes/late-blight.yaml")}({line + 1}): ", result.Error, StringComparison.Ordinal);
        Assert.Contains("There is no character 'picnidia'.", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Show_gives_a_cause_with_the_sentence_and_the_source_of_every_row()
    {
        using var cli = new CliRun();
        var result = cli.Run("knowledge", "show", "blackleg");
        string flowing = string.Join(' ', result.Lines.Select(line => line.Trim()));
        Assert.Equal(0, result.ExitCode);
        var cause = BuiltIn.Solanum().FindCause("blackleg")!;
        Assert.All(cause.Rows, row => Assert.Contains(row.Say["en"], flowing, StringComparison.Ordinal));
        Assert.All(cause.Rows.SelectMany(row => row.Sources), source => Assert.Contains(source.Title, flowing, StringComparison.Ordinal));
    }

    [Fact]
    public void Show_gives_a_character_with_a_line_for_every_cause_that_speaks_of_it()
    {
        using var cli = new CliRun();
        var result = cli.Run("knowledge", "show", "pycnidia", "--host", "tomato");
        var knowledge = BuiltIn.Solanum();
        var speaking = knowledge.Causes.Where(cause => cause.Hosts.Contains("tomato") && cause.Rows.Any(row => row.Character.Id == "pycnidia" && row.Host is null or "tomato")).ToList();
        Assert.NotEmpty(speaking);
        Assert.Equal(speaking.Count, result.Lines.Count(line => line.EndsWith("  P", StringComparison.Ordinal) || line.EndsWith("  C", StringComparison.Ordinal) || line.EndsWith("  J", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("of these: late-blight, early-blight", "knowledge", "show", "blight")]
    [InlineData("accepted: tomato, potato", "knowledge", "show", "late-blight", "--host", "maize")]
    [InlineData("of these: septoria-leaf-spot", "knowledge", "show", "septria-leaf-spt")]
    [InlineData("an empty name", "weigh", "")]
    [InlineData("nowhere", "knowledge", "check", "nowhere")]
    [InlineData("nowhere", "knowledge", "trial", "nowhere")]
    [InlineData("nowhere", "knowledge", "diff", "built-in", "nowhere", "--cases", ".")]
    [InlineData("--cases", "knowledge", "diff", "built-in", "built-in")]
    public void What_is_not_there_exits_with_64_and_says_so(string said, params string[] args)
    {
        using var cli = new CliRun();
        var result = cli.Run(args);
        Assert.Equal(64, result.ExitCode);
        Assert.Contains(said, result.Error, StringComparison.Ordinal);
        Assert.Empty(result.Out);
    }

    [Fact]
    public void A_file_in_the_place_of_a_knowledge_folder_is_told_as_one()
    {
        using var cli = new CliRun();
        cli.Write("knowledge.yaml", "name: solanum");
        var result = cli.Run("knowledge", "check", "knowledge.yaml");
        Assert.Equal(64, result.ExitCode);
        Assert.Contains("'knowledge.yaml' is a file; accepted: a folder of knowledge", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Diff_of_a_version_with_itself_finds_nothing()
    {
        using var cli = new CliRun();
        cli.Write("cases/a.json", ExampleCases.Septoria);
        var result = cli.Run("knowledge", "diff", "built-in", Solanum, "--cases", "cases");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("0 of 1 cases change", result.Out, StringComparison.Ordinal);
        Assert.Contains("0 rows differ", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Diff_names_the_row_that_changed_and_the_case_that_changes_with_it()
    {
        using var cli = new CliRun();
        Copy(cli);
        string file = Path.Combine(cli.Folder, "copy", "causes", "septoria-leaf-spot.yaml");
        string text = File.ReadAllText(file);
        int row = text.IndexOf("\n  pycnidia:\n    is: ", StringComparison.Ordinal), end = text.IndexOf('\n', text.IndexOf("is:", row, StringComparison.Ordinal));
        File.WriteAllText(file, $"{text[..row]}\n  pycnidia:\n    is: {{absent: .999, present: .001}}{text[end..]}");
        cli.Write("cases/a.json", ExampleCases.Septoria);
        cli.Write("cases/b.json", ExampleCases.Blackleg);
        var result = cli.Run("knowledge", "diff", "built-in", "copy", "--cases", "cases");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("1 of 2 cases change", result.Out, StringComparison.Ordinal);
        Assert.Contains("before: Septoria leaf spot leads", result.Out, StringComparison.Ordinal);
        Assert.Contains("1 rows differ", result.Out, StringComparison.Ordinal);
        Assert.Contains("septoria-leaf-spot: pycnidia", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Trial_exits_with_0_where_all_come_out_and_with_2_where_one_does_not_and_shows_it()
    {
        using var cli = new CliRun();
        cli.Write("good/a.yaml", TrialOf("lens", "septoria-leaf-spot"));
        cli.Write("bad/a.yaml", TrialOf("lens", "septoria-leaf-spot") + TrialOf("wrong", "early-blight"));
        Assert.Equal(0, cli.Run("knowledge", "trial", "good").ExitCode);
        foreach (var result in new[] { cli.Run("knowledge", "trial", "bad"), cli.Run("knowledge", "trial", "bad", "--markdown") })
        {
            Assert.Equal(2, result.ExitCode);
            Assert.Contains("2 cases, 1 come out as they should, 1 do not", result.Out, StringComparison.Ordinal);
            Assert.Contains("wrong", result.Out, StringComparison.Ordinal);
            Assert.Contains("Early blight should lead; Septoria leaf spot does.", result.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("- {id: a, case: {}, leeds: late-blight}", "a.yaml(1): 'leeds' is no member")]
    [InlineData("- {id: a}", "a.yaml(1): a trial needs")]
    [InlineData("id: a", "not a list")]
    [InlineData("- {id: a, case: {}}\n- {id: a, case: {}}", "a.yaml(2): the id 'a' stands in a.yaml too")]
    [InlineData("- {id: a, late-blight: {at-most: 3}, case: {}}", "'3' is no probability")]
    [InlineData("- [", "a.yaml(")]
    public void A_file_of_trials_that_cannot_be_read_exits_with_64_and_names_file_and_line(string text, string said)
    {
        using var cli = new CliRun();
        cli.Write("trials/a.yaml", text);
        var result = cli.Run("knowledge", "trial");
        Assert.Equal(64, result.ExitCode);
        Assert.Contains(said, result.Error, StringComparison.Ordinal);
    }

    private static string TrialOf(string id, string leads) => $"- id: {id}\n  story: Black dots under the lens.\n  source: judgement\n  leads: {leads}\n  case: {ExampleCases.Septoria}\n";

    private static void Copy(CliRun cli)
    {
        foreach (string path in Directory.EnumerateFiles(Solanum, "*.yaml", SearchOption.AllDirectories))
        {
            cli.Write(Path.Combine("copy", Path.GetRelativePath(Solanum, path)), File.ReadAllBytes(path));
        }
    }
}
