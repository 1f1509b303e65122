using System.Text;
using Abaxial.Samples;
using CsCheck;

namespace Abaxial.Tests.Samples;

public sealed class EntryTests
{
    private static readonly Entry Taken = new PaperDevice("bench").Write(PaperDevice.Tomato);

    public static TheoryData<string> EveryKind => [.. EntryKind.All];

    [Fact]
    public void An_entry_reads_back_from_its_canonical_text()
    {
        var device = new PaperDevice("bench");
        var taken = device.Write(PaperDevice.Tomato);
        var look = device.Write(PaperDevice.Look("pycnidia", "present"), taken.Id, [taken.Id], 3) with { EnteredLater = taken.Made.AddHours(5).AddTicks(1) };
        foreach (var entry in new[] { taken, look })
        {
            var reading = PaperDevice.Read(entry.Canonical());
            Assert.Empty(reading.Problems);
            Assert.Equal(entry, reading.Entry);
            Assert.Equal(entry.ComputeHash(), reading.Entry!.ComputeHash());
            Assert.Equal(entry.Made, reading.Entry.Made);
        }
    }

    [Theory]
    [InlineData("\"author\":\"d-01\"", "\"author\":\"Hesper Dunnick\"", "/author")]
    [InlineData("\"author\":\"d-01\",", "", "/author")]
    [InlineData("\"place\":1", "\"place\":0", "/place")]
    [InlineData("\"place\":1", "\"place\":1.5", "/place")]
    [InlineData("\"place\":1", "\"place\":2", "/previous")]
    [InlineData("\"kind\":\"taken-in\"", "\"kind\":\"look\"", "/sample")]
    [InlineData("\"kind\":\"taken-in\"", "\"kind\":\"Taken in\"", "/kind")]
    [InlineData("\"version\":1", "\"version\":\"1\"", "/version")]
    [InlineData("\"heads\":[]", "\"heads\":[\"x\"]", "/heads/0")]
    [InlineData("\"heads\":[]", "\"heads\":[\"01ARZ3NDEKTSV4RRFFQ69G5FAV\",\"01ARZ3NDEKTSV4RRFFQ69G5FAV\"]", "/heads/1")]
    [InlineData("\"made\":\"2026-07-14T06:00:00.0000000Z\"", "\"made\":\"2026-07-14T06:00:00Z\"", "/made")]
    [InlineData("\"version\":1", "\"version\":1,\"weather\":1", "/weather")]
    [InlineData("\"host\":\"tomato\"", "\"host\":1e999", "/payload")]
    [InlineData("\"author\":\"d-01\"", "\"author\": \"d-01\"", "")]
    [InlineData("\"latitude\":44", "\"latitude\":44.0", "")]
    public void What_is_wrong_is_refused_with_its_place(string stands, string instead, string at)
    {
        string text = Taken.Canonical();
        Assert.Contains(stands, text, StringComparison.Ordinal);
        var reading = PaperDevice.Read(text.Replace(stands, instead, StringComparison.Ordinal));
        Assert.True(reading.IsRefused);
        Assert.Equal(at, reading.Problems[0].At);
        Assert.NotEmpty(reading.Problems[0].Accepted);
    }

    [Fact]
    public void A_long_entry_is_refused()
    {
        string text = Taken.Canonical().Replace("\"host\":\"tomato\"", $"\"host\":\"{new string('t', EntryReader.Bytes)}\"", StringComparison.Ordinal);
        Assert.Contains("bytes", Assert.Single(PaperDevice.Read(text).Problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Damaged_entries_are_refused_or_have_another_hash()
    {
        byte[] text = Encoding.UTF8.GetBytes(Taken.Canonical());
        string hash = Taken.ComputeHash();
        Gen.Select(Gen.Int[0, text.Length - 1], Gen.Byte).Sample((at, value) =>
        {
            byte[] damaged = [.. text];
            damaged[at] = value;
            var reading = EntryReader.Read(damaged);
            if (value == text[at]) Assert.Equal(hash, reading.Entry?.ComputeHash());
            else if (reading.IsRefused) Assert.NotEmpty(reading.Problems);
            else Assert.NotEqual(hash, reading.Entry.ComputeHash());
        }, iter: 5_000);
    }

    [Fact]
    public void Arbitrary_bytes_are_refused() => Gen.Byte.Array[0, 80].Sample(bytes => EntryReader.Read(bytes).IsRefused, iter: 5_000);

    [Theory]
    [MemberData(nameof(EveryKind))]
    public void Every_kind_of_payload_reads_back_from_its_text(string kind)
    {
        var payload = Assert.Single(PayloadExamples.All, example => example.Kind == kind);
        var reading = PayloadReader.Read(kind, payload.Version, payload.ToJson());
        Assert.Empty(reading.Problems);
        Assert.Equal(payload.ToJson(), reading.Payload!.ToJson());
        Assert.Equal(payload.Seals, reading.Payload.Seals);
        Assert.Equal(payload.GetType(), reading.Payload.GetType());
    }

    [Theory]
    [MemberData(nameof(EveryKind))]
    public void Every_kind_of_payload_refuses_a_member_that_it_does_not_know(string kind)
    {
        var reading = PayloadReader.Read(kind, 1, """{"weather":"wet"}""");
        Assert.Null(reading.Payload);
        Assert.Contains(reading.Problems, problem => problem.At == "/weather");
    }

    [Fact]
    public void A_diagnosis_that_is_not_the_engine_s_needs_a_reason()
    {
        var signed = PaperDevice.Diagnosis("septoria-leaf-spot") with { Engine = new EngineSaid("solanum 2026.1 00000000", "open", "late-blight") };
        Assert.Equal("/disagreement", Assert.Single(PayloadReader.Read(signed.Kind, 1, signed.ToJson()).Problems).At);
        signed = signed with { Disagreement = "Pycnidia under the lens." };
        Assert.Empty(PayloadReader.Read(signed.Kind, 1, signed.ToJson()).Problems);
    }

    [Fact]
    public void A_seal_says_nothing_without_its_salt_and_all_with_it()
    {
        var text = new SealedText("g-11", new byte[SealedText.SaltLength], "Ansel Crakeby, Kestle Bight");
        Assert.Equal(text.Seal(), (text with { }).Seal());
        Assert.NotEqual(text.Seal(), (text with { Text = "Ansel Crakeby, Kestle Bight." }).Seal());
        Assert.NotEqual(text.Seal().Sha256, (text with { Person = "g-12" }).Seal().Sha256);
        Assert.NotEqual(text.Seal(), (text with { Salt = Enumerable.Repeat((byte)1, SealedText.SaltLength).ToArray() }).Seal());
        Assert.Throws<InvalidOperationException>(() => (text with { Salt = new byte[8] }).Seal());
    }

    [Fact]
    public void A_chain_tells_what_does_not_follow()
    {
        var device = new PaperDevice("bench");
        Entry first = device.Write(PaperDevice.Tomato), second = device.Write(PaperDevice.Tomato), third = device.Write(PaperDevice.Tomato);
        Assert.Null(EntryChain.Misfit(first, 0, Entry.NothingBefore));
        Assert.Null(EntryChain.Misfit(second, 1, first.ComputeHash()));
        Assert.Contains("Entry 2", EntryChain.Misfit(third, 1, first.ComputeHash()), StringComparison.Ordinal);
        Assert.Contains("changed", EntryChain.Misfit(second, 1, (first with { Author = "d-02" }).ComputeHash()), StringComparison.Ordinal);
    }
}
