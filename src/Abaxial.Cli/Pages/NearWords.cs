namespace Abaxial.Cli.Pages;

/// <summary>Orders words by how near they are to one that was typed.</summary>
internal static class NearWords
{
    /// <summary>The words, nearest first: by the letters that would have to be typed, taken out or changed; those that hold what was typed before all others.</summary>
    public static IEnumerable<string> Order(string typed, IEnumerable<string> words) => words
        .OrderBy(word => typed.Length > 2 && word.Contains(typed, StringComparison.OrdinalIgnoreCase) ? 0 : 1)
        .ThenBy(word => Distance(typed, word));

    /// <summary>The words of which one may have been meant: those that a third of the letters or less would make of it, or that hold it.</summary>
    public static IEnumerable<string> Near(string typed, IEnumerable<string> words) =>
        Order(typed, words.Where(word => (typed.Length > 2 && word.Contains(typed, StringComparison.OrdinalIgnoreCase)) || Distance(typed, word) <= Math.Max(typed.Length, word.Length) / 3));

    /// <summary>Levenshtein's distance, upper and lower case alike.</summary>
    internal static int Distance(string one, string other)
    {
        int[] row = [.. Enumerable.Range(0, other.Length + 1)];
        for (int i = 1; i <= one.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= other.Length; j++)
            {
                int changed = diagonal + (char.ToUpperInvariant(one[i - 1]) == char.ToUpperInvariant(other[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
