using System.Diagnostics;
using System.Globalization;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.Load;

/// <summary>
/// Measures how many entries a second a store takes from one writer and from fifty, each write with a commit of its own and those that wait sharing one, by turns in one run.
/// </summary>
internal static class WriteRate
{
    private const int Rounds = 4;
    private static readonly TimeSpan Turn = TimeSpan.FromSeconds(3);

    public static async Task<int> RunAsync(string folder)
    {
        using var ledger = await Ledger.OpenAsync(StorePlace.Of(folder, Environment.GetEnvironmentVariable(StorePlace.Variable)), TimeProvider.System);
        int together = ledger.Writers.MostTogether;
        await TurnAsync(ledger, 1); // warms up
        foreach (int writers in (int[])[1, 50])
        {
            double alone = 0, shared = 0;
            for (int round = 0; round < Rounds; round++)
            {
                ledger.Writers.MostTogether = 1;
                alone += await TurnAsync(ledger, writers) / Rounds;
                ledger.Writers.MostTogether = together;
                shared += await TurnAsync(ledger, writers) / Rounds;
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{writers} writers: {alone:0} entries a second with a commit each, {shared:0} with commits shared: {shared / alone:0.00} times"));
        }

        return 0;
    }

    /// <summary>Entries a second; each writer writes to a sample of its own, a new one in each turn, as an append reads its sample.</summary>
    private static async Task<double> TurnAsync(Ledger ledger, int writers)
    {
        var samples = new EntryId[writers];
        for (int i = 0; i < writers; i++) samples[i] = (await ledger.TakeInAsync(new EntryDraft { Author = $"w-{i}", Payload = new TakenIn { Host = "tomato" } }, [])).Entry!.Id;
        var since = Stopwatch.StartNew();
        int[] written = await Task.WhenAll(samples.Select(sample => Task.Run(() => WriteAsync(ledger, sample, since))));
        return written.Sum() / since.Elapsed.TotalSeconds;
    }

    private static async Task<int> WriteAsync(Ledger ledger, EntryId sample, Stopwatch since)
    {
        for (int written = 0; ; written++)
        {
            if (since.Elapsed >= Turn) return written;
            if (written % 20 == 19) sample = (await ledger.TakeInAsync(new EntryDraft { Author = "w-0", Payload = new TakenIn { Host = "tomato" } }, [])).Entry!.Id;
            else await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = "w-0", Payload = new HandedOver("d-01") });
        }
    }
}
