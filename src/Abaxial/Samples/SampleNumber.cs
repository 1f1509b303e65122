using System.Globalization;

namespace Abaxial.Samples;

/// <summary>
/// The number that people call a sample by: year, running number and a check letter, as <c>26-0142-D</c>. The letter catches every single wrong digit and every two digits that
/// changed places (docs/decisions/0013).
/// </summary>
public readonly record struct SampleNumber
{
    /// <summary>23 letters, a prime number of them: without I, O and U, which are read as other signs.</summary>
    private const string Letters = "ABCDEFGHJKLMNPQRSTVWXYZ";
    private const int Weight = 5; // its powers meet all 22 remainders before one comes back

    private SampleNumber(int year, int running)
    {
        Year = year;
        Running = running;
    }

    /// <summary>The last two digits of the year.</summary>
    public int Year { get; }

    /// <summary>The running number in that year, from 1.</summary>
    public int Running { get; }

    /// <summary>The check letter.</summary>
    public char Check => Letters[Remainder(Year, Running)];

    /// <summary>Makes a number.</summary>
    /// <param name="year">The last two digits of the year, 0 to 99.</param>
    /// <param name="running">The running number in that year, 1 to 9,999,999.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static SampleNumber From(int year, int running)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(year);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(year, 99);
        ArgumentOutOfRangeException.ThrowIfLessThan(running, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(running, 9_999_999);
        return new SampleNumber(year, running);
    }

    /// <summary>Reads a number as it is written; the letter may be a small one. A number whose letter does not fit is no number.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out SampleNumber number)
    {
        number = default;
        if (text.Length is < 9 or > 12 || text[2] != '-' || text[^2] != '-') return false;
        var running = text[3..^2];
        if (!int.TryParse(text[..2], NumberStyles.None, CultureInfo.InvariantCulture, out int year) || !int.TryParse(running, NumberStyles.None, CultureInfo.InvariantCulture, out int count)) return false;
        if (count == 0 || (running.Length > 4 && running[0] == '0')) return false;
        var read = new SampleNumber(year, count);
        char letter = text[^1] is >= 'a' and <= 'z' ? (char)(text[^1] - 'a' + 'A') : text[^1];
        if (read.Check != letter) return false;
        number = read;
        return true;
    }

    public override string ToString() => Running == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{Year:00}-{Running:0000}-{Check}");

    /// <summary>The sum of the digits, each times a power of the weight that grows from the right, modulo the number of letters.</summary>
    private static int Remainder(int year, int running)
    {
        int sum = 0, power = Weight, places = 0, rest = running;
        while (rest > 0 || places < 4)
        {
            Add(rest % 10);
            rest /= 10;
        }

        Add(year % 10);
        Add(year / 10);
        return sum;

        void Add(int digit)
        {
            sum = (sum + (digit * power)) % Letters.Length;
            power = power * Weight % Letters.Length;
            places++;
        }
    }
}
