using System.Globalization;

namespace Abaxial.Load.Http;

/// <summary>A load on a clinic that listens on this machine.</summary>
/// <param name="Address">Where the clinic is; loopback.</param>
/// <param name="Users">People at once, 1 to 500.</param>
/// <param name="Seconds">How long, 1 to 600; the first fifth warms up and is not counted.</param>
/// <param name="ThinkMilliseconds">How long a person looks at an answer before asking again, in the mean; 0 for not at all.</param>
/// <param name="Seed">The same seed makes each person ask for the same.</param>
internal sealed record HttpPlan(Uri Address, int Users, int Seconds, int ThinkMilliseconds, int Seed)
{
    /// <summary>Reads ADDRESS [--users N] [--seconds N] [--think MILLISECONDS] [--seed N]; null where it is something else.</summary>
    public static HttpPlan? Read(ReadOnlySpan<string> words)
    {
        // Never another machine: a load is an attack there.
        if (words.Length % 2 == 0 || !Uri.TryCreate(words[0], UriKind.Absolute, out var address) || !address.IsLoopback) return null;
        var plan = new HttpPlan(address, 50, 30, 0, 1);
        for (int i = 1; i < words.Length; i += 2)
        {
            if (!int.TryParse(words[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out int number)) return null;
            if (words[i] == "--users") plan = plan with { Users = number };
            else if (words[i] == "--seconds") plan = plan with { Seconds = number };
            else if (words[i] == "--think") plan = plan with { ThinkMilliseconds = number };
            else if (words[i] == "--seed") plan = plan with { Seed = number };
            else return null;
        }

        return plan is { Users: >= 1 and <= 500, Seconds: >= 1 and <= 600, ThinkMilliseconds: <= 60_000 } ? plan : null;
    }
}
