using System.Collections.Immutable;
using Abaxial.Knowledge;
using Abaxial.Samples;
using CsCheck;

namespace Abaxial.Tests.Samples;

/// <summary>Devices that write to one sample without seeing each other, and hear of each other late, twice and in any order.</summary>
public sealed class MergeTests
{
    private const int Devices = 100;

    private static readonly KnowledgeBase Knowledge = BuiltIn.Solanum();

    /// <summary>What happens: a device writes, or hears what another has.</summary>
    private static readonly Gen<(int Device, int Other, int What)[]> Story = Gen.Select(Gen.Int[0, Devices - 1], Gen.Int[0, Devices - 1], Gen.Int[0, 9]).Array[50, 400];

    [Fact]
    public void A_hundred_devices_come_to_the_same_fold() => Gen.Select(Story, Gen.Int).Sample((story, seed) =>
    {
        var all = Play(story);
        var shuffle = new Random(seed);
        string? told = null;
        for (int device = 0; device < Devices; device++)
        {
            var heard = Arrivals(all, shuffle);
            string here = PaperDevice.Told(SampleFold.Of(all[0].Sample, heard, Knowledge));
            told ??= here;
            Assert.Equal(told, here);
        }
    }, iter: 6);

    [Fact]
    public void An_entry_stands_after_all_that_its_author_had_seen_and_after_its_device_s_own() => Story.Sample(story =>
    {
        var ordered = SampleOrder.Of(Play(story));
        var place = ordered.Select((entry, index) => (entry, index)).ToDictionary(pair => pair.entry.Id, pair => pair.index);
        foreach (var entry in ordered)
        {
            Assert.All(entry.Heads, head => Assert.True(place[head] < place[entry.Id]));
            Assert.All(ordered.Where(other => other.Device == entry.Device && other.Place < entry.Place), other => Assert.True(place[other.Id] < place[entry.Id]));
        }
    }, iter: 15);

    [Fact]
    public void What_arrives_late_changes_nothing_once_it_is_there() => Gen.Select(Story, Gen.Int).Sample((story, seed) =>
    {
        var all = Play(story);
        var some = all.Where((_, index) => index == 0 || ((index * 7) + seed) % 3 != 0);
        _ = SampleFold.Of(all[0].Sample, some, Knowledge);      // a fold of part of it is possible
        Assert.Equal(
            PaperDevice.Told(SampleFold.Of(all[0].Sample, all, Knowledge)),
            PaperDevice.Told(SampleFold.Of(all[0].Sample, some.Concat(all), Knowledge)));
    }, iter: 15);

    /// <summary>Every device writes to the sample from what it has heard; some clocks are days wrong.</summary>
    private static ImmutableArray<Entry> Play((int Device, int Other, int What)[] story)
    {
        var devices = Enumerable.Range(0, Devices).Select(number => new PaperDevice($"device-{number}") { Slow = TimeSpan.FromHours(number % 5 == 0 ? 50 - number : 0) }).ToArray();
        var first = devices[0].Write(PaperDevice.Tomato);
        var known = devices.Select(_ => new List<Entry> { first }).ToArray();
        var all = ImmutableArray.CreateBuilder<Entry>();
        all.Add(first);
        for (int step = 0; step < story.Length; step++)
        {
            var (device, other, what) = story[step];
            if (what < 4)
            {
                known[device] = [.. known[device].Union(known[other])];
                continue;
            }

            var entry = devices[device].Write(Say(what, step, known[device]), first.Id, SampleOrder.HeadsOf(known[device]), step / 3);
            known[device].Add(entry);
            all.Add(entry);
        }

        return all.ToImmutable();
    }

    private static Payload Say(int what, int step, List<Entry> known)
    {
        var seen = known[step % known.Count];
        return what switch
        {
            4 => PaperDevice.Look("pycnidia", step % 2 == 0 ? "present" : "absent"),
            5 => new HandedOver($"d-{step % 7}"),
            6 => step % 2 == 0 ? new Closed($"{step}") : new Reopened($"{step}"),
            7 when seen.Kind == EntryKind.Look => Correction.With(seen.Id, "looked again", PaperDevice.Look("concentric-rings", "clear")),
            8 when seen.Kind is EntryKind.Look or EntryKind.Closed => Correction.Striking(seen.Id, seen.Kind, "wrong sample"),
            9 when seen.Kind == EntryKind.Correction && PayloadReader.Read(seen).Payload is Correction correction => Correction.Striking(seen.Id, correction.Of, "it was right"),
            _ => PaperDevice.Diagnosis(step % 2 == 0 ? "late-blight" : "early-blight"),
        };
    }

    /// <summary>Everything, in any order, some of it several times.</summary>
    private static List<Entry> Arrivals(ImmutableArray<Entry> all, Random shuffle)
    {
        List<Entry> arrivals = [.. all, .. all.Where(_ => shuffle.Next(3) == 0)];
        for (int i = arrivals.Count - 1; i > 0; i--)
        {
            int other = shuffle.Next(i + 1);
            (arrivals[i], arrivals[other]) = (arrivals[other], arrivals[i]);
        }

        return arrivals;
    }
}
