using System.Net;
using Microsoft.AspNetCore.Http;

namespace Abaxial.Web.People;

/// <summary>Counts tries that failed by the address they came from. It is forgotten when the program ends; accounts are locked in the store.</summary>
internal sealed class AddressTries(TimeProvider clock)
{
    /// <summary>So many failed tries are taken from one address.</summary>
    public const int Most = 50;

    /// <summary>And so long they count.</summary>
    public static readonly TimeSpan Counts = TimeSpan.FromMinutes(15);

    private const int MostAddresses = 10_000;

    private readonly Lock gate = new();
    private readonly Dictionary<string, (int Failed, DateTimeOffset Until)> failures = new(StringComparer.Ordinal);

    /// <summary>Whether nothing is taken from the address for now.</summary>
    public bool IsShut(HttpContext http)
    {
        lock (gate) return failures.TryGetValue(KeyOf(http), out var known) && known.Failed >= Most && clock.GetUtcNow() < known.Until;
    }

    public void Fail(HttpContext http)
    {
        var now = clock.GetUtcNow();
        lock (gate)
        {
            if (failures.Count >= MostAddresses)
            {
                foreach (string over in failures.Where(failure => failure.Value.Until <= now).Select(failure => failure.Key).ToList()) failures.Remove(over);
                if (failures.Count >= MostAddresses) failures.Clear();
            }

            string key = KeyOf(http);
            int before = failures.TryGetValue(key, out var known) && now < known.Until ? known.Failed : 0;
            failures[key] = (before + 1, now + Counts);
        }
    }

    /// <summary>Of an IPv6 address the first half: the second one is the asker's to choose.</summary>
    private static string KeyOf(HttpContext http)
    {
        var address = http.Connection.RemoteIpAddress ?? IPAddress.None;
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        byte[] bytes = address.GetAddressBytes();
        return Convert.ToHexString(bytes.AsSpan(0, Math.Min(bytes.Length, 8)));
    }
}
