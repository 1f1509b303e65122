namespace Abaxial.Tests.Weather;

/// <summary>A row of a table as it is printed: classes of whole numbers such as "0-6", "7", "21+", "-" for none, for the values 0, 1, 2 and on.</summary>
internal static class PrintedTable
{
    /// <summary>Every number up to a limit, with the value of its class.</summary>
    public static IEnumerable<(int Number, int Value)> Cells(string row, int last)
    {
        string[] classes = row.Split('|', StringSplitOptions.TrimEntries);
        for (int number = 0; number <= last; number++)
        {
            yield return (number, Array.FindIndex(classes, one => Holds(one, number)));
        }
    }

    private static bool Holds(string one, int number)
    {
        if (one is "" or "-") return false;
        if (one.EndsWith('+')) return number >= int.Parse(one[..^1]);
        if (one.StartsWith('<')) return number < int.Parse(one[1..]);
        if (one.StartsWith('>')) return number > int.Parse(one[1..]);
        string[] ends = one.Split('-');
        return number >= int.Parse(ends[0]) && number <= int.Parse(ends[^1]);
    }
}
