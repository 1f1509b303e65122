namespace Abaxial.Web.People;

/// <summary>What is held in memory for a few minutes and taken out once: a secret that a page shows after a form, the challenge of a passkey.</summary>
internal sealed class OneTime(TimeProvider clock)
{
    public static readonly TimeSpan Holds = TimeSpan.FromMinutes(5);

    private const int Most = 10_000;

    private readonly Lock gate = new();
    private readonly Dictionary<string, (string Text, string? Owner, DateTimeOffset Until)> held = new(StringComparer.Ordinal);

    /// <summary>Holds a text for somebody, or for whoever has the key where there is no owner.</summary>
    /// <returns>The key under which it is taken out.</returns>
    public string Put(string text, string? owner)
    {
        var now = clock.GetUtcNow();
        string key = Secrets.NewToken();
        lock (gate)
        {
            foreach (string over in held.Where(kept => kept.Value.Until <= now).Select(kept => kept.Key).ToList()) held.Remove(over);
            if (held.Count >= Most) held.Clear();
            held[key] = (text, owner, now + Holds);
        }

        return key;
    }

    /// <summary>Takes a text out; null where it is not there any more, or is somebody else's.</summary>
    public string? Take(string key, string? owner)
    {
        lock (gate)
        {
            if (!held.TryGetValue(key, out var kept) || kept.Owner != owner || !held.Remove(key)) return null;
            return clock.GetUtcNow() < kept.Until ? kept.Text : null;
        }
    }
}
