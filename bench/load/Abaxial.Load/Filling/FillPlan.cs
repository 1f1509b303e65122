using System.Globalization;

namespace Abaxial.Load.Filling;

/// <summary>What a store is filled with.</summary>
/// <param name="Folder">Where the store is made; there must be none.</param>
/// <param name="Postgres">How a PostgreSQL database is reached; null for SQLite.</param>
/// <param name="Samples">How many samples.</param>
/// <param name="Entries">How many entries in all; at least eight a sample.</param>
/// <param name="Seed">The same seed makes the same entries.</param>
internal sealed record FillPlan(string Folder, string? Postgres, int Samples, int Entries, int Seed)
{
    /// <summary>Least entries of a sample: what every closed one has.</summary>
    public const int Least = 8;

    /// <summary>Reads FOLDER [--samples N] [--entries N] [--seed N] [--postgres CONNECTION]; null where it is something else.</summary>
    public static FillPlan? Read(ReadOnlySpan<string> words)
    {
        if (words.Length == 0 || words.Length % 2 == 0) return null;
        var plan = new FillPlan(words[0], null, 100_000, 1_000_000, 1);
        for (int i = 1; i < words.Length; i += 2)
        {
            if (words[i] == "--postgres") plan = plan with { Postgres = words[i + 1] };
            else if (!int.TryParse(words[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out int number)) return null;
            else if (words[i] == "--samples") plan = plan with { Samples = number };
            else if (words[i] == "--entries") plan = plan with { Entries = number };
            else if (words[i] == "--seed") plan = plan with { Seed = number };
            else return null;
        }

        return plan.Samples > 0 && plan.Entries >= (long)plan.Samples * Least ? plan : null;
    }

    /// <summary>Entries of a sample: the mean for most, now and then some more that its neighbor has less.</summary>
    public int EntriesOf(int sample)
    {
        int mean = (int)(((long)Entries * (sample + 1) / Samples) - ((long)Entries * sample / Samples));
        int more = sample / 2 % 7;
        if ((sample | 1) >= Samples || mean - more < Least) return mean;
        return sample % 2 == 0 ? mean + more : mean - more;
    }
}
