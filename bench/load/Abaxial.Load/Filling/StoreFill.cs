using System.Diagnostics;
using System.Globalization;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Load.Filling;

/// <summary>Makes a store of many samples in bulk: the chains, hashes, seals, numbers and rows are those that the ledger would have written one by one.</summary>
internal sealed class StoreFill
{
    private const int SamplesAtOnce = 500;
    private const int Photographs = 200;

    private static readonly DateTimeOffset First = new(2021, 1, 4, 6, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset Last = new(2026, 11, 20, 18, 0, 0, TimeSpan.Zero);

    private readonly FillPlan plan;
    private readonly Ledger ledger;
    private readonly Random chance;
    private readonly Dictionary<int, int> running = [];

    private StoreFill(FillPlan plan, Ledger ledger)
    {
        this.plan = plan;
        this.ledger = ledger;
        chance = new Random(plan.Seed);
    }

    public static async Task<int> RunAsync(FillPlan plan)
    {
        var place = new StorePlace(plan.Folder, plan.Postgres);
        if (await Ledger.IsAtAsync(place))
        {
            Console.Error.WriteLine("There is a store already.");
            return 64;
        }

        var watch = Stopwatch.StartNew();
        using var ledger = await Ledger.OpenAsync(place, TimeProvider.System);
        await new StoreFill(plan, ledger).FillAsync(watch);
        await ledger.RebuildAsync(SamplesAtOnce, new Line(watch));
        Tell(watch, "done");
        return 0;
    }

    private async Task FillAsync(Stopwatch watch)
    {
        string device = string.Create(CultureInfo.InvariantCulture, $"store-{plan.Seed:x20}");
        var photographs = await PhotographsAsync();
        var knowledge = BuiltIn.Solanum();
        var island = new Island(chance);
        var story = new SampleStory(chance, island, new Sightings(knowledge, chance, island), knowledge, photographs);
        var chains = new Chains(device, chance);
        for (int sample = 0; sample < plan.Samples; sample += SamplesAtOnce)
        {
            await using var context = ledger.Ask();
            context.ChangeTracker.AutoDetectChangesEnabled = false;
            await using var transaction = await context.Database.BeginTransactionAsync();
            for (int i = sample; i < Math.Min(sample + SamplesAtOnce, plan.Samples); i++) Add(context, story, chains, i);
            await context.SaveChangesAsync();
            await transaction.CommitAsync();
            if (sample / SamplesAtOnce % 20 == 0) Tell(watch, $"{sample:N0} samples");
        }

        await using var last = ledger.Ask();
        last.Chains.AddRange(chains.Ends);
        (await last.Store.SingleAsync()).Device = device;
        await last.SaveChangesAsync();
    }

    private void Add(LedgerContext context, SampleStory story, Chains chains, int index)
    {
        var made = MomentOf(index);
        int year = made.Year % 100, next = running[year] = running.GetValueOrDefault(year) + 1;
        var number = SampleNumber.From(year, next);
        bool isClosed = chance.NextDouble() > (Last - made < TimeSpan.FromDays(45) ? 0.6 : 0.01);
        string sample = "";
        foreach (var (row, deed, payload) in chains.Write(story.Of(number, plan.EntriesOf(index), isClosed), made, Last))
        {
            context.Entries.Add(row);
            sample = row.Sample;
            foreach (var text in deed.Texts) context.SealedTexts.Add(new SealedRow { Sha256 = text.Seal().Sha256, Person = text.Person, Salt = text.Salt.ToArray(), Text = text.Text });
        }

        context.Numbers.Add(new NumberRow { Number = number.ToString(), Sample = sample, Year = number.Year, Running = number.Running });
    }

    /// <summary>Samples come in the order of their moments, most of them in summer.</summary>
    private DateTimeOffset MomentOf(int index)
    {
        double years = (Last - First).TotalDays / 365 * index / plan.Samples, part = years - Math.Floor(years);
        double day = 365 * (Math.Floor(years) + part + (0.13 * Math.Sin(2 * Math.PI * part)));
        return First.AddTicks((long)(day * TimeSpan.TicksPerDay)) is var moment && moment < Last ? moment : Last;
    }

    /// <summary>A pool of small files that entries name over and over: what is measured is the ledger, not the disk.</summary>
    private async Task<string[]> PhotographsAsync()
    {
        string[] hashes = new string[Photographs];
        for (int i = 0; i < Photographs; i++)
        {
            byte[] bytes = new byte[SampleStory.PhotographBytes];
            chance.NextBytes(bytes);
            hashes[i] = (await ledger.AddPhotographAsync(new MemoryStream(bytes))).Sha256!;
        }

        return hashes;
    }

    private static void Tell(Stopwatch watch, string what) => Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{watch.Elapsed.TotalSeconds,6:0} s  {what}"));

    private sealed class Line(Stopwatch watch) : IProgress<StoreProgress>
    {
        public void Report(StoreProgress value)
        {
            if (value.Done % (20L * SamplesAtOnce) == 0) Tell(watch, $"{value.Done:N0} of {value.Total:N0} rows");
        }
    }
}
