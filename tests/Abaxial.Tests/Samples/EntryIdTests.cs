using Abaxial.Samples;
using CsCheck;

namespace Abaxial.Tests.Samples;

/// <summary>ULIDs as github.com/ulid/spec describes them.</summary>
public sealed class EntryIdTests
{
    private static readonly Gen<EntryId> Any = Gen.Select(Gen.Long[0, DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()], Gen.Byte.Array[10], (milliseconds, random) => EntryId.From(DateTimeOffset.UnixEpoch.AddTicks(milliseconds * TimeSpan.TicksPerMillisecond), random));

    /// <summary>The specification's first example.</summary>
    [Fact]
    public void The_example_of_the_specification_is_read_and_written_back()
    {
        var id = EntryId.Parse("01ARZ3NDEKTSV4RRFFQ69G5FAV");
        Assert.Equal("01ARZ3NDEKTSV4RRFFQ69G5FAV", id.ToString());
        Assert.Equal(Milliseconds("01ARZ3NDEK"), id.UnixMilliseconds);
    }

    /// <summary>"The largest valid ULID encoded in Base32 is 7ZZZZZZZZZZZZZZZZZZZZZZZZZ, which corresponds to an epoch time of 281474976710655."</summary>
    [Fact]
    public void The_largest_id_is_the_specification_s()
    {
        Assert.Equal(281474976710655, EntryId.Parse("7ZZZZZZZZZZZZZZZZZZZZZZZZZ").UnixMilliseconds);
        Assert.False(EntryId.TryParse("8ZZZZZZZZZZZZZZZZZZZZZZZZZ", out _));
    }

    [Theory]
    [InlineData("")]
    [InlineData("01ARZ3NDEKTSV4RRFFQ69G5FA")]
    [InlineData("01ARZ3NDEKTSV4RRFFQ69G5FAVV")]
    [InlineData("01ARZ3NDEKTSV4RRFFQ69G5FAU")]
    [InlineData("01ARZ3NDEKTSV4RRFFQ69G5FAI")]
    [InlineData("01ARZ3NDEKTSV4RRFFQ69G5FA-")]
    [InlineData("01ARZ3NDEKTſV4RRFFQ69G5FAV")]
    public void What_is_no_id_is_refused(string text)
    {
        Assert.False(EntryId.TryParse(text, out _));
        Assert.Throws<FormatException>(() => EntryId.Parse(text));
    }

    [Fact]
    public void Small_letters_are_read_as_large_ones() => Any.Sample(id => EntryId.Parse(id.ToString().ToLowerInvariant()) == id);

    [Fact]
    public void Ids_sort_as_text_as_they_sort_as_numbers_and_by_their_moments() => Gen.Select(Any, Any).Sample((a, b) =>
    {
        Assert.Equal(Math.Sign(a.CompareTo(b)), Math.Sign(string.CompareOrdinal(a.ToString(), b.ToString())));
        if (a.UnixMilliseconds < b.UnixMilliseconds) Assert.True(a < b);
    });

    [Fact]
    public void A_moment_before_1970_and_a_wrong_number_of_random_bytes_are_refused()
    {
        Assert.Throws<ArgumentException>(() => EntryId.From(DateTimeOffset.UnixEpoch.AddMilliseconds(-1), new byte[10]));
        Assert.Throws<ArgumentException>(() => EntryId.From(DateTimeOffset.UnixEpoch, new byte[9]));
    }

    /// <summary>A second way of reading the first ten digits.</summary>
    private static long Milliseconds(string digits) => digits.Aggregate(0L, (value, digit) => (value * 32) + "0123456789ABCDEFGHJKMNPQRSTVWXYZ".IndexOf(digit, StringComparison.Ordinal));
}
