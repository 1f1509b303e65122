using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Samples;

namespace Abaxial.Load;

/// <summary>Writes entries and photographs as fast as it can, and says of each on standard output that it is there once the ledger said so, until it is killed.</summary>
internal static class WriteStorm
{
    private const int Writers = 4;
    private const int EntriesPerSample = 20;

    public static async Task<int> RunAsync(string folder)
    {
        using var ledger = await Ledger.OpenAsync(StorePlace.Of(folder, Environment.GetEnvironmentVariable(StorePlace.Variable)), TimeProvider.System);
        await Task.WhenAll(Enumerable.Range(0, Writers).Select(writer => Task.Run(() => WriteAsync(ledger, writer))));
        return 0;
    }

    private static async Task WriteAsync(Ledger ledger, int writer)
    {
        string author = $"w-{writer}";
        while (true)
        {
            var taken = await ledger.TakeInAsync(new EntryDraft { Author = author, Payload = new TakenIn { Host = "tomato" } }, [new HandedOver(author)]);
            Acknowledge("entry", taken.Entry!.Id.ToString());
            for (int i = 0; i < EntriesPerSample; i++)
            {
                Payload next = i % 3 == 0 ? await PhotographAsync(ledger) : new HandedOver(author);
                var appended = await ledger.AppendAsync(new EntryDraft { Sample = taken.Entry.Id, Author = author, Payload = next });
                Acknowledge("entry", appended.Entry!.Id.ToString());
            }
        }
    }

    private static async Task<Payload> PhotographAsync(Ledger ledger)
    {
        using var bytes = new MemoryStream(RandomNumberGenerator.GetBytes(RandomNumberGenerator.GetInt32(1, 200_000)));
        var added = await ledger.AddPhotographAsync(bytes);
        Acknowledge("photograph", added.Sha256!);
        return new PhotographAdded(added.Sha256!, "image/jpeg", added.Bytes);
    }

    private static void Acknowledge(string what, string id)
    {
        lock (Console.Out)
        {
            Console.Out.WriteLine($"{what} {id}");
            Console.Out.Flush();
        }
    }
}
