using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Abaxial.Weighing;
using CsCheck;

namespace Abaxial.Tests.Weighing;

/// <summary>Case files that were damaged, by bytes and by structure: whatever comes, the reader gives a case or says why not.</summary>
public sealed partial class CaseMutationTests
{
    private static readonly Gen<byte[]> Written = GenCase.Of(4).Select(CaseWriter.ToUtf8);

    [Fact]
    public void Damaged_bytes_give_a_case_or_problems() =>
        Gen.Select(Written, CaseDamage.Bytewise.Array[1, 6]).Sample((bytes, damages) => AssertAnswered(CaseDamage.Apply(bytes, damages)), iter: 12_000);

    [Fact]
    public void Damaged_structures_give_a_case_or_problems_at_places_that_exist() =>
        Gen.Select(Written, CaseDamage.Structural.Array[1, 4]).Sample((bytes, damages) =>
        {
            byte[] damaged = CaseDamage.Apply(bytes, damages);
            foreach (var problem in AssertAnswered(damaged).Problems) AssertExists(JsonNode.Parse(damaged, documentOptions: new JsonDocumentOptions { MaxDepth = 1_000 })!, problem);
        }, iter: 12_000);

    [Fact]
    public void Arbitrary_bytes_give_problems() => Gen.Byte.Array[0, 64].Sample(bytes => AssertAnswered(bytes).IsRefused, iter: 10_000);

    private static CaseReading AssertAnswered(byte[] utf8)
    {
        var reading = CaseText.Read(utf8);
        Assert.Equal(reading.Case is null, !reading.Problems.IsEmpty);
        Assert.InRange(reading.Problems.Length, 0, CaseLimits.Problems);
        foreach (var problem in reading.Problems)
        {
            Assert.Matches(Pointer(), problem.At);
            Assert.InRange(problem.Found.Length, 1, 100);
            Assert.NotEmpty(problem.Accepted);
        }

        if (reading.Case is not null) Assert.False(CaseText.Read(CaseWriter.ToUtf8(reading.Case)).IsRefused);
        return reading;
    }

    /// <summary>The place exists, or its parent does where something is missing.</summary>
    private static void AssertExists(JsonNode root, CaseProblem problem)
    {
        string[] steps = [.. problem.At.Split('/').Skip(1).Select(step => step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];
        if (problem.Found == "(missing)") steps = steps[..^1];
        JsonNode? at = root;
        foreach (string step in steps)
        {
            Assert.True(at is JsonObject fields ? fields.ContainsKey(step) : at is JsonArray items && int.Parse(step, CultureInfo.InvariantCulture) < items.Count, problem.ToString());
            at = at is JsonObject found ? found[step] : at![int.Parse(step, CultureInfo.InvariantCulture)];
        }
    }

    [GeneratedRegex(@"\A(/([^~/]|~[01])*)*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Pointer();
}
