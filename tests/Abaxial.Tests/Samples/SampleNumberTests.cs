using Abaxial.Samples;

namespace Abaxial.Tests.Samples;

public sealed class SampleNumberTests
{
    [Fact]
    public void A_number_is_written_with_year_running_number_and_letter()
    {
        var number = SampleNumber.From(26, 142);
        Assert.Equal("26-0142-", number.ToString()[..8]);
        Assert.True(SampleNumber.TryParse(number.ToString(), out var read));
        Assert.Equal(number, read);
        Assert.True(SampleNumber.TryParse(number.ToString().ToLowerInvariant(), out read));
        Assert.Equal(number, read);
        Assert.True(SampleNumber.TryParse(SampleNumber.From(7, 9_999_999).ToString(), out _));
    }

    /// <summary>
    /// Every wrong digit at every place, and every two neighbours swapped, of every number from 0001 to 9999 of every year: a number is six digits, and what is wrong with it
    /// would have to give the same letter.
    /// </summary>
    [Fact]
    public void Every_single_wrong_digit_and_every_swap_of_neighbours_changes_the_letter()
    {
        char[] letters = new char[1_000_000];
        for (int year = 0; year < 100; year++)
        {
            for (int running = 1; running < 10_000; running++) letters[(year * 10_000) + running] = SampleNumber.From(year, running).Check;
        }

        int missed = 0;
        int[] powers = [1, 10, 100, 1_000, 10_000, 100_000];
        for (int number = 0; number < letters.Length; number++)
        {
            if (letters[number] == '\0') continue;
            for (int place = 0; place < powers.Length; place++)
            {
                int digit = number / powers[place] % 10;
                for (int wrong = 0; wrong < 10; wrong++)
                {
                    if (wrong != digit && letters[number + ((wrong - digit) * powers[place])] == letters[number]) missed++;
                }

                if (place == powers.Length - 1) continue;
                int next = number / powers[place + 1] % 10;
                if (next != digit && letters[number + ((next - digit) * powers[place]) + ((digit - next) * powers[place + 1])] == letters[number]) missed++;
            }
        }

        Assert.Equal(0, missed);
    }

    [Fact]
    public void Each_number_is_accepted_with_one_letter_only()
    {
        for (int running = 1; running < 10_000; running += 37)
        {
            string stem = SampleNumber.From(26, running).ToString()[..^1];
            Assert.Single("ABCDEFGHIJKLMNOPQRSTUVWXYZ", letter => SampleNumber.TryParse(stem + letter, out _));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("26-142-K")]
    [InlineData("26-00142-K")]
    [InlineData("26-0000-A")]
    [InlineData("6-0142-K")]
    [InlineData("26 0142 K")]
    [InlineData("+6-0142-K")]
    [InlineData("26-12345678-K")]
    public void What_is_no_number_is_refused(string text)
    {
        foreach (char letter in "ABCDEFGHJKLMNPQRSTVWXYZ") Assert.False(SampleNumber.TryParse(text.Length == 0 ? text : text[..^1] + letter, out _));
    }

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(100, 1)]
    [InlineData(26, 0)]
    [InlineData(26, 10_000_000)]
    public void A_year_or_running_number_out_of_range_is_refused(int year, int running) => Assert.Throws<ArgumentOutOfRangeException>(() => SampleNumber.From(year, running));
}
