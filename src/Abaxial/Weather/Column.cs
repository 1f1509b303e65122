namespace Abaxial.Weather;

/// <summary>What a station measures each hour. The unit is part of the meaning.</summary>
public enum Column
{
    /// <summary>Air, °C, mean or momentary.</summary>
    Temperature,

    /// <summary>Relative, over water, percent.</summary>
    Humidity,

    /// <summary>Dew point, °C.</summary>
    DewPoint,

    /// <summary>Millimetres, sum over the hour.</summary>
    Rain,

    /// <summary>Minutes wet in the hour, 0 to 60.</summary>
    Wetness,

    /// <summary>Global, watts per square metre, mean.</summary>
    Radiation,

    /// <summary>Metres per second, mean.</summary>
    Wind,

    /// <summary>Millimetres of water given from above, sum over the hour.</summary>
    Irrigation,
}

/// <summary>The words of the columns, as records and answers write them.</summary>
public static class Columns
{
    private static readonly string[] Words = ["temperature", "humidity", "dewpoint", "rain", "wetness", "radiation", "wind", "irrigation"];

    /// <summary>How many columns there are.</summary>
    public static int Count => Words.Length;

    /// <summary>Every column in its fixed order.</summary>
    public static IEnumerable<Column> All => Enumerable.Range(0, Words.Length).Select(column => (Column)column);

    /// <summary>The word of a column.</summary>
    public static string Word(this Column column) => Words[(int)column];

    /// <summary>The column of a word, in any case of letters; null where there is none.</summary>
    public static Column? Find(ReadOnlySpan<char> word)
    {
        for (int i = 0; i < Words.Length; i++)
        {
            if (word.Equals(Words[i], StringComparison.OrdinalIgnoreCase)) return (Column)i;
        }

        return null;
    }

    /// <summary>Whether an hour's value is a sum over its readings; the others are means.</summary>
    public static bool IsSum(this Column column) => column is Column.Rain or Column.Irrigation;
}
