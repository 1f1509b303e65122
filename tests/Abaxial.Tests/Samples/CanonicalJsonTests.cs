using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Abaxial.Samples;
using CsCheck;

namespace Abaxial.Tests.Samples;

/// <summary>RFC 8785 (JSON Canonicalization Scheme): its own samples, and the number sequence that its authors publish hashes of.</summary>
public sealed class CanonicalJsonTests
{
    /// <summary>RFC 8785, appendix B: "Number Serialization Samples".</summary>
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0xffefffffffffffff, "-1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0xc340000000000000, "-9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void A_number_is_written_as_the_standard_shows(ulong bits, string expected) =>
        Assert.Equal(expected, CanonicalJson.Of(BitConverter.UInt64BitsToDouble(bits)));

    /// <summary>RFC 8785, appendix B: these have no form.</summary>
    [Theory]
    [InlineData(0x7fffffffffffffff)]
    [InlineData(0x7ff0000000000000)]
    public void What_is_no_number_has_no_form(ulong bits) => Assert.Throws<ArgumentException>(() => CanonicalJson.Of(BitConverter.UInt64BitsToDouble(bits)));

    /// <summary>
    /// The authors of RFC 8785 publish the SHA-256 of the first lines of a sequence of numbers that everybody can make anew: edge cases, subnormal neighbours, then numbers drawn
    /// by hashing (github.com/cyberphone/json-canonicalization, testdata/README.md).
    /// </summary>
    [Theory]
    [InlineData(1_000, "be18b62b6f69cdab33a7e0dae0d9cfa869fda80ddc712221570f9f40a5878687")]
    [InlineData(10_000, "b9f7a8e75ef22a835685a52ccba7f7d6bdc99e34b010992cbc5864cd12be6892")]
    [InlineData(100_000, "22776e6d4b49fa294a0d0f349268e5c28808fe7e0cb2bcbe28f63894e494d4c7")]
    public void The_published_sequence_of_numbers_has_the_published_hash(int lines, string expected)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (double number in NumberSequence.Take(lines))
        {
            ulong bits = BitConverter.DoubleToUInt64Bits(number);
            hash.AppendData(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{bits:x},{CanonicalJson.Of(number)}\n")));
        }

        Assert.Equal(expected, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>RFC 8785, 3.2.2 and 3.2.4: the example of primitive types.</summary>
    [Fact]
    public void Texts_numbers_and_literals_are_written_as_the_standard_shows() => Assert.Equal(
        "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
        Canonical("""
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """));

    /// <summary>RFC 8785, 3.2.3: members are sorted by UTF-16 code units, so the smiley (two surrogates) comes before U+FB33.</summary>
    [Fact]
    public void Members_are_sorted_as_the_standard_shows() => Assert.Equal(
        "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"ö\":\"Latin Small Letter O With Diaeresis\",\"€\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
        Canonical("""
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """));

    [Fact]
    public void A_member_that_stands_twice_is_refused() => Assert.Throws<ArgumentException>(() => Canonical("""{"a":1,"b":2,"a":3}"""));

    [Fact]
    public void Any_number_reads_back_as_itself() => Gen.Double.Where(double.IsFinite).Sample(number =>
        BitConverter.DoubleToUInt64Bits(double.Parse(CanonicalJson.Of(number), CultureInfo.InvariantCulture)) == BitConverter.DoubleToUInt64Bits(number == 0 ? 0.0 : number), iter: 20_000);

    [Fact]
    public void A_canonical_text_is_its_own_canonical_form() => Gen.Dictionary(Gen.String, Gen.Double.Where(double.IsFinite)).Sample(members =>
    {
        string json = JsonSerializer.Serialize(members);
        string once = Canonical(json);
        Assert.Equal(once, Canonical(once));
    }, iter: 2_000);

    private static string Canonical(string json)
    {
        using var document = JsonDocument.Parse(json);
        return CanonicalJson.Of(document.RootElement);
    }
}
