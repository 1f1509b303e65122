namespace Abaxial.Tests.Knowledge;

/// <summary>Each thing that may not stand in the knowledge is refused, with file and line.</summary>
public sealed class KnowledgeLintTests
{
    private const string Septoria = "causes/septoria-leaf-spot.yaml";

    [Fact]
    public void The_folder_as_it_is_has_no_problem()
    {
        using var folder = new BrokenFolder();
        var compiled = folder.Compile();
        Assert.Empty(compiled.Problems);
        Assert.NotNull(compiled.Knowledge);
    }

    [Theory]
    [InlineData(Septoria, "  pycnidia:", "  pycnidias:", "There is no character 'pycnidias'.")]
    [InlineData(Septoria, "is: {present: .9, absent: .1}", "is: {presents: .9}", "'presents' is no state of pycnidia")]
    [InlineData(Septoria, "is: {present: .9, absent: .1}", "is: {present: 1, absent: .5}", "The chance 1 of 'present' is not over 0 and under 1.")]
    [InlineData(Septoria, "is: {present: .9, absent: .1}", "is: {present: 0, absent: .5}", "The chance 0 of 'present' is not over 0 and under 1.")]
    [InlineData(Septoria, "is: {present: .9, absent: .1}", "is: {present: mostly}", "'mostly' is no word for a chance; accepted: always")]
    [InlineData(Septoria, "hosts: [tomato]", "hosts: [pepper]", "'pepper' is no host.")]
    [InlineData(Septoria, "kind: fungus", "kind: mould", "'mould' is no kind of cause; accepted: bacterium")]
    [InlineData("knowledge.yaml", "causes: [pink-rot, bacterial-soft-rot]", "causes: [pink-rott, bacterial-soft-rot]", "There is no cause 'pink-rott'.")]
    [InlineData("knowledge.yaml", "context: [recent-weather,", "context: [recent-wether,", "There is no character 'recent-wether'.")]
    [InlineData("knowledge.yaml", "not-yet: {seedling: [flower,", "not-yet: {seedling: [flour,", "'flour' is no state of organs-affected.")]
    [InlineData("characters.yaml", "when: {tuber-flesh:", "when: {tuber-flash:", "There is no character 'tuber-flash'.")]
    [InlineData("characters.yaml", "organ: leaf, sign: true", "organ: leaves, sign: true", "'leaves' is no organ.")]
    public void A_wrong_word_or_number(string file, string old, string now, string found)
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace(file, old, now);
        AssertRefused(folder, file, found, line);
    }

    [Fact]
    public void A_state_that_nothing_can_reach()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace("characters.yaml", "states: [clear, faint, absent]", "states: [clear, faint, faded, absent]");
        AssertRefused(folder, "characters.yaml", "State 'faded' has no chance: nothing can reach it.", line + 1); // where the background stands
    }

    [Fact]
    public void A_cause_that_nothing_can_reach()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace(Septoria, "  weight: {tomato:", "  weight: {potato: 3, tomatoes:");
        AssertRefused(folder, Septoria, "No weight over 0 for tomato: nothing can reach the cause.", line);
    }

    [Fact]
    public void A_row_whose_source_is_of_no_kind()
    {
        using var folder = new BrokenFolder();
        int row = folder.Replace(Septoria, "  pycnidia:", "  pycnidia:");
        string text = folder.Read(Septoria);
        int at = text.IndexOf("    source:", text.IndexOf("  pycnidia:", StringComparison.Ordinal), StringComparison.Ordinal);
        folder.Write(Septoria, text.Remove(at, text.IndexOf('\n', at) - at + 1));
        AssertRefused(folder, Septoria, "No source kind.", row);
    }

    [Fact]
    public void A_source_that_is_not_listed()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace(Septoria, "    source: [", "    source: [somebody-said, ");
        AssertRefused(folder, Septoria, "There is no source 'somebody-said'; accepted: a publication of sources.yaml, common practice, judgement.", line - 2, line);
    }

    [Fact]
    public void An_empty_state_written_in_a_row_of_many()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace("causes/late-blight.yaml", "is: {white-down: .97,", "is: {none: .02, white-down: .97,");
        AssertRefused(folder, "causes/late-blight.yaml", "'none' is never written: its chance is that of all others staying away.", line);
    }

    [Fact]
    public void A_key_that_stands_twice()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace(Septoria, "kind: fungus", "kind: fungus\nkind: fungus");
        AssertRefused(folder, Septoria, "Duplicate key", line, line + 1);
    }

    [Fact]
    public void A_file_that_is_not_named_for_its_cause()
    {
        using var folder = new BrokenFolder();
        folder.Replace(Septoria, "id: septoria-leaf-spot", "id: septoria-spot");
        AssertRefused(folder, Septoria, "The file's name and the id 'septoria-spot' differ.", 1);
    }

    [Fact]
    public void A_cause_that_no_character_tells_from_late_blight()
    {
        using var folder = new BrokenFolder();
        folder.Write("causes/later-blight.yaml", folder.Read("causes/late-blight.yaml").Replace("id: late-blight", "id: later-blight", StringComparison.Ordinal));
        AssertRefused(folder, "causes/later-blight.yaml", "On tomato no character tells it from late-blight.", 1);
    }

    [Fact]
    public void Two_causes_with_the_same_tables()
    {
        using var folder = new BrokenFolder();
        folder.Write("causes/septoria-twin.yaml", folder.Read(Septoria).Replace("id: septoria-leaf-spot", "id: septoria-twin", StringComparison.Ordinal));
        AssertRefused(folder, "causes/septoria-twin.yaml", "On tomato it has the same tables as septoria-leaf-spot.", 1);
    }

    [Fact]
    public void A_publication_without_a_publisher()
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace("sources.yaml", "  publisher: ", "  publisher: \"\" #");
        AssertRefused(folder, "sources.yaml", "A publication needs authors, year, title and publisher.", [.. Enumerable.Range(Math.Max(1, line - 6), 6)]);
    }

    [Theory]
    [InlineData("sentences", "  head.against: ", "  # ", "'head.against' is missing; English has it.")]
    [InlineData("words", "  standing.open: ", "  # ", "'standing.open' is missing; English has it.")]
    [InlineData("states", "  smell:\n", "  smells:\n", "'smell' is missing; English has it.")]
    [InlineData("characters", "  smell: ", "  # ", "'smell' is missing; English has it.")]
    public void A_key_that_a_second_language_lacks(string section, string old, string now, string found)
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace("texts/es.yaml", $"\n{section}:", $"\n{section}:") + 1;
        folder.Replace("texts/es.yaml", old, now);
        AssertRefused(folder, "texts/es.yaml", found, line, line + 1); // where the section stands
    }

    [Theory]
    [InlineData("  smell:\n    none: ", "  smell:\n    nothing: x\n    none: ", 1, "'nothing' is no key of the English texts.")]
    [InlineData("  head.against: ", "  head.behind: x\n  head.against: ", 0, "'head.behind' is no key of the English texts.")]
    [InlineData("  care.heater: \"", "  care.heater: \"{0} ", 0, "The places to fill are {0}; accepted: none, as in English.")]
    [InlineData("{0} µm en promedio, medidas: {1}", "{0} µm en promedio", 0, "The places to fill are {0}; accepted: {0} {1}, as in English.")]
    [InlineData("  care.chamber: ", "  care.chamber: \"\" # ", 0, "The text is empty.")]
    public void A_text_of_a_second_language_that_does_not_agree_with_the_English(string old, string now, int below, string found)
    {
        using var folder = new BrokenFolder();
        int line = folder.Replace("texts/es.yaml", old, now);
        AssertRefused(folder, "texts/es.yaml", found, line + below);
    }

    [Fact]
    public void Text_that_is_no_yaml()
    {
        using var folder = new BrokenFolder();
        folder.Write(Septoria, "id: [septoria-leaf-spot\nname: {");
        var problem = folder.Compile().Problems[0];
        Assert.Equal(Septoria, problem.File);
        Assert.InRange(problem.Line, 0, 3);
        Assert.NotEmpty(problem.Found);
    }

    private static void AssertRefused(BrokenFolder folder, string file, string found, params int[] lines)
    {
        var compiled = folder.Compile();
        Assert.Null(compiled.Knowledge);
        var problem = compiled.Problems.FirstOrDefault(problem => problem.Found.Contains(found, StringComparison.Ordinal));
        Assert.True(problem is not null, $"Not found: '{found}' among: {string.Join(" | ", compiled.Problems.Take(5).Select(other => $"{other.File}({other.Line}): {other.Found}"))}");
        Assert.Equal(file, problem.File);
        Assert.True(lines.Contains(problem.Line), $"Line {problem.Line} given, not {string.Join(" or ", lines)}.");
    }
}
