using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace Abaxial.Load.Http;

/// <summary>Lets people work with a clinic at once: they list, search, open one sample and add a look, and the time of each is taken.</summary>
internal static class HttpLoad
{
    /// <summary>Words that a filled store holds in some of its samples, and one that it does not.</summary>
    private static readonly string[] Searched = ["tomato", "potato", "late blight", "late-blight", "septoria", "tunnel", "field", "d-01", "s-02", "quince"];

    private static readonly string[] Looks =
    [
        """{"character":"leaf-underside-growth","states":["white-down"],"how":"hand-lens","by":"scout"}""",
        """{"character":"concentric-rings","state":"absent","how":"hand-lens","by":"scout"}""",
        """{"character":"leaf-lesion-shape","states":["irregular"],"how":"naked-eye","by":"scout"}""",
    ];

    public static async Task<int> RunAsync(HttpPlan plan)
    {
        using var client = new HttpClient(new SocketsHttpHandler { MaxConnectionsPerServer = plan.Users, UseCookies = false }) { BaseAddress = plan.Address, Timeout = TimeSpan.FromSeconds(60) };
        var samples = await SamplesAsync(client);
        if (samples.Count == 0)
        {
            await Console.Error.WriteLineAsync("The clinic lists no samples: fill its store first.");
            return 2;
        }

        var times = new ConcurrentBag<Taken>();
        long start = Stopwatch.GetTimestamp(), counted = start + (Stopwatch.Frequency * plan.Seconds / 5), end = start + (Stopwatch.Frequency * plan.Seconds);
        await Task.WhenAll(Enumerable.Range(0, plan.Users).Select(user => WorkAsync(client, plan, user, samples, counted, end, times)));
        return LoadTable.Write(Console.Out, plan, times, plan.Seconds - (plan.Seconds / 5.0));
    }

    /// <summary>Samples from all over the list, not the newest alone.</summary>
    private static async Task<List<string>> SamplesAsync(HttpClient client)
    {
        var samples = new List<string>();
        string? after = null;
        for (int page = 0; page < 20; page++)
        {
            string text = await client.GetStringAsync($"/api/samples?limit=200{(after is null ? "" : $"&after={Uri.EscapeDataString(after)}")}");
            using var read = JsonDocument.Parse(text);
            samples.AddRange(read.RootElement.GetProperty("samples").EnumerateArray().Select(sample => sample.GetProperty("sample").GetString()!));
            after = read.RootElement.TryGetProperty("next", out var next) ? next.GetString() : null;
            if (after is null) break;
        }

        return samples;
    }

    private static async Task WorkAsync(HttpClient client, HttpPlan plan, int user, List<string> samples, long counted, long end, ConcurrentBag<Taken> times)
    {
#pragma warning disable CA5394 // Who asks for what needs no secret; the same seed asks for the same.
        var chance = new Random(HashCode.Combine(plan.Seed, user));
        while (Stopwatch.GetTimestamp() < end)
        {
            if (plan.ThinkMilliseconds > 0) await Task.Delay(chance.Next(2 * plan.ThinkMilliseconds) + 1);
            string sample = samples[chance.Next(samples.Count)];
            var (what, request) = chance.Next(10) switch
            {
                < 3 => ("list", Get("/api/samples?limit=50&order=waiting&open=true")),
                < 5 => ("search", Get($"/api/samples?limit=50&q={Uri.EscapeDataString(Searched[chance.Next(Searched.Length)])}")),
                < 8 => ("one sample", Get($"/api/samples/{sample}")),
                _ => ("add a look", LookAt(sample, Looks[chance.Next(Looks.Length)])),
            };
#pragma warning restore CA5394
            long asked = Stopwatch.GetTimestamp();
            bool isWell = await AskAsync(client, request);
            if (asked >= counted) times.Add(new Taken(what, Stopwatch.GetElapsedTime(asked).TotalMilliseconds, isWell));
        }
    }

    private static async Task<bool> AskAsync(HttpClient client, HttpRequestMessage request)
    {
        using (request)
        {
            try
            {
                using var answer = await client.SendAsync(request);
                await answer.Content.LoadIntoBufferAsync();
                return answer.IsSuccessStatusCode;
            }
            catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
            {
                return false;
            }
        }
    }

    private static HttpRequestMessage Get(string path) => new(HttpMethod.Get, path);

    private static HttpRequestMessage LookAt(string sample, string observation) => new(HttpMethod.Post, $"/api/samples/{sample}/entries")
    {
        Content = new StringContent("""{"kind":"look","version":1,"payload":{"case":1,"observation":""" + observation + "}}", Encoding.UTF8, "application/json"),
    };
}
