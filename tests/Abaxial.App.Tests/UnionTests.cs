using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Tests.Samples;

namespace Abaxial.App.Tests;

/// <summary>A hundred devices write to one sample; stores of both kinds hear of it shuffled, repeated and late. The library's own test of the fold is MergeTests.</summary>
public sealed class UnionTests
{
    private const int Devices = 100;
    private const int Steps = 300;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Stores_that_hear_of_a_hundred_devices_in_any_order_come_to_the_same_fold(int seed)
    {
        var random = new Random(seed);
        var all = Write(random);
        string told = Told(all);
        List<string> texts = [.. all.Select(entry => entry.Canonical()).Order(StringComparer.Ordinal)];
        foreach (var kind in (StoreKind[])[StoreKind.Sqlite, StoreKind.Postgres])
        {
            await using var store = new TestStore(kind);
            var ledger = await store.OpenAsync();
            var arriving = all.Concat(all.Where(_ => random.Next(3) == 0)).OrderBy(_ => random.Next()).ToList();
            while (arriving.Count > 0)
            {
                int together = random.Next(1, 40);
                Assert.Empty((await TestStore.MergeAsync(ledger, arriving.Take(together).Select(entry => entry.Canonical()))).Refused);
                arriving.RemoveRange(0, Math.Min(together, arriving.Count));
            }

            Assert.Equal(texts, await TestStore.TextsAsync(ledger));
            Assert.Equal(told, Told(await ledger.EntriesOfAsync(all[0].Sample, TestContext.Current.CancellationToken)));
            Assert.Empty((await TestStore.CheckAsync(ledger)).Faults);
        }
    }

    private static string Told(IEnumerable<Entry> entries) => PaperDevice.Told(SampleFold.Of(entries.First().Sample, entries, BuiltIn.Solanum()));

    /// <summary>Each device writes from what it has heard so far, which is little of what the others wrote; some clocks are days slow.</summary>
    private static List<Entry> Write(Random random)
    {
        var devices = Enumerable.Range(0, Devices).Select(number => new PaperDevice($"device-{number}") { Slow = TimeSpan.FromHours(number % 5 == 0 ? number : 0) }).ToArray();
        var first = devices[0].Write(PaperDevice.Tomato);
        var heard = devices.Select(_ => new List<Entry> { first }).ToArray();
        List<Entry> all = [first];
        for (int step = 0; step < Steps; step++)
        {
            int device = random.Next(Devices);
            if (random.Next(3) == 0) heard[device] = [.. heard[device].Union(heard[random.Next(Devices)])];
            Payload said = random.Next(3) switch
            {
                0 => PaperDevice.Look("pycnidia", step % 2 == 0 ? "present" : "absent"),
                1 when heard[device][^1] is { Kind: EntryKind.Look } look => Correction.Striking(look.Id, look.Kind, "wrong sample"),
                _ => new HandedOver($"d-{step % 7}"),
            };
            var entry = devices[device].Write(said, first.Id, SampleOrder.HeadsOf(heard[device]), step / 3);
            heard[device].Add(entry);
            all.Add(entry);
        }

        return all;
    }
}
