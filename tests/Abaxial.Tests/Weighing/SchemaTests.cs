using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Abaxial.Weighing;
using CsCheck;
using Json.Schema;
using Vocabulary = Abaxial.Knowledge.Vocabulary;

namespace Abaxial.Tests.Weighing;

public sealed class SchemaTests
{
    private static readonly JsonSchema CaseSchema = Load("case");
    private static readonly JsonSchema AnswerSchema = Load("answer");
    private static readonly JsonSchema RefusalSchema = Load("refusal");

    [Fact]
    public void The_example_conforms() => AssertConforms(CaseSchema, Encoding.UTF8.GetBytes(CaseText.Example));

    [Fact]
    public void Whatever_case_is_written_conforms() => GenCase.Of(6).Sample(written => AssertConforms(CaseSchema, CaseWriter.ToUtf8(written)), iter: 300);

    [Fact]
    public void What_does_not_conform_is_refused() =>
        Gen.Select(GenCase.Of(3).Select(CaseWriter.ToUtf8), CaseDamage.Structural.Array[1, 2]).Sample((bytes, damages) =>
        {
            byte[] damaged = CaseDamage.Apply(bytes, damages);
            if (!CaseText.Read(damaged).IsRefused) AssertConforms(CaseSchema, damaged);
        }, iter: 1_000);

    [Theory]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato"}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[],"farm":"x"}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"pycnidia","how":"photo"}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"fruit-growth","state":"none","states":["none"],"how":"photo"}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"fruit-growth","states":["none","white-down"],"how":"photo"}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"fruit-growth","state":"none","how":"moist-chamber","surface":"dry-day"}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"fruit-growth","state":"none","how":"photo","hours":3}]}""")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"spore-length","values":[0],"how":"microscope"}]}""")]
    public void The_schema_sees_what_a_schema_can_see(string text)
    {
        using var document = JsonDocument.Parse(text);
        Assert.False(CaseSchema.Evaluate(document.RootElement).IsValid);
        Assert.True(CaseText.Read(text).IsRefused);
    }

    [Fact]
    public void Answers_conform()
    {
        AssertConforms(AnswerSchema, AnswerWriter.ToUtf8(AnswerWriterTests.Sample));
        var weigher = new Weigher(CaseText.Knowledge);
        AssertConforms(AnswerSchema, AnswerWriter.ToUtf8(weigher.Weigh(CaseText.Accepted(CaseText.Example))));
        GenCase.Any.Sample(weighed => AssertConforms(AnswerSchema, AnswerWriter.ToUtf8(weigher.Weigh(weighed))), iter: 100, threads: 1);
    }

    [Fact]
    public void Refusals_conform()
    {
        AssertConforms(RefusalSchema, RefusalWriter.ToUtf8(1, CaseLimits.TooLong.Problems));
        Gen.Select(GenCase.Of(3).Select(CaseWriter.ToUtf8), CaseDamage.Structural.Array[1, 4], Gen.Int[1, int.MaxValue]).Sample((bytes, damages, number) =>
        {
            var reading = CaseText.Read(CaseDamage.Apply(bytes, damages));
            if (reading.IsRefused) AssertConforms(RefusalSchema, RefusalWriter.ToUtf8(number, reading.Problems));
        }, iter: 500);
    }

    [Fact]
    public void The_schema_of_a_case_lists_the_words_of_the_knowledge()
    {
        var schema = JsonNode.Parse(Text("case"))!;
        var rules = CaseText.Knowledge.Document;
        var look = schema["$defs"]!["look"]!["properties"]!;
        Assert.Equal(rules.Hosts, Words(schema["properties"]!["host"]));
        Assert.Equal(rules.Systems, Words(schema["properties"]!["system"]));
        Assert.Equal(rules.Stages, Words(schema["properties"]!["stage"]));
        Assert.Equal(rules.Purposes, Words(schema["properties"]!["purpose"]));
        Assert.Equal(Vocabulary.Ways, Words(look["how"]));
        Assert.Equal(Vocabulary.Surfaces, Words(look["surface"]));
        Assert.Equal(Vocabulary.Observers, Words(look["by"]));
        var factor = schema["properties"]!["priorFactors"]!["items"]!["properties"]!["factor"]!;
        Assert.Equal((rules.PriorFactors.Each.From, rules.PriorFactors.Each.To), ((double)factor["minimum"]!, (double)factor["maximum"]!));
        string[] alone = [.. CaseText.Knowledge.Characters.Where(character => character.IsMany && character.EmptyState >= 0).Select(character => character.States[character.EmptyState]).Append("unsure")];
        Assert.Superset(alone.ToHashSet(), Words(look["states"]!["if"]!["contains"]).ToHashSet());
    }

    [Fact]
    public void The_schema_of_an_answer_lists_the_words_of_answers()
    {
        var properties = JsonNode.Parse(Text("answer"))!["properties"]!;
        Assert.Equal(AnswerWords.Standings, Words(properties["standing"]));
        Assert.Equal(AnswerWords.StandingReasons, Words(properties["standingBecause"]));
        Assert.Equal(AnswerWords.Advices, Words(properties["advice"]));
        Assert.Equal(AnswerWords.ConflictReasons, Words(properties["conflicts"]!["items"]!["properties"]!["why"]));
        Assert.Equal(Vocabulary.Ways, Words(properties["nextLooks"]!["items"]!["properties"]!["how"]));
    }

    private static string[] Words(JsonNode? schema) => [.. schema!["enum"]!.AsArray().Select(word => (string)word!)];

    private static string Text(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schema", $"{name}.schema.json"));

    private static JsonSchema Load(string name) => JsonSchema.FromText(Text(name));

    private static void AssertConforms(JsonSchema schema, byte[] utf8)
    {
        using var document = JsonDocument.Parse(utf8);
        var results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, $"{Encoding.UTF8.GetString(utf8)}\n{JsonSerializer.Serialize(results)}");
    }
}
