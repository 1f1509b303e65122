using System.Security.Cryptography;
using Abaxial.Data;
using Abaxial.Knowledge;
using Abaxial.Samples;
using Abaxial.Weighing;

namespace Abaxial.Web.Hosting.Demo;

/// <summary>The store of the demo clinic: the cases of the island, taken in over its season.</summary>
public static class DemoStore
{
    /// <summary>Stands beside a demo's ledger. In the store of a clinic a demo would let everybody in.</summary>
    private const string Mark = "demo";

    private static readonly string Cases = Path.Combine(AppContext.BaseDirectory, "demo");

    /// <summary>Whether the store of a clinic lies there, in which nothing is invented.</summary>
    /// <exception cref="InvalidDataException">The connection string cannot be read.</exception>
    /// <exception cref="IOException">The database cannot be reached.</exception>
    public static async Task<bool> IsOfClinicAsync(StorePlace place, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        return await Ledger.IsAtAsync(place, cancel) && !File.Exists(Path.Combine(place.Folder, Mark));
    }

    /// <summary>Fills a place; one that holds a demo already stays as it is.</summary>
    /// <exception cref="InvalidOperationException">It holds the store of a clinic.</exception>
    public static async Task FillAsync(StorePlace place, CancellationToken cancel = default)
    {
        if (await IsOfClinicAsync(place, cancel)) throw new InvalidOperationException($"The store of a clinic lies in {place}.");
        if (await Ledger.IsAtAsync(place, cancel)) return;
        Directory.CreateDirectory(place.Folder);
        await File.WriteAllTextAsync(Path.Combine(place.Folder, Mark), "The store of a demonstration: everything in it is invented.\n", cancel);
        var clock = new SeasonClock();
        using var ledger = await Ledger.OpenAsync(place, clock, cancel);
        var knowledge = BuiltIn.Solanum();
        var weigher = new Weigher(knowledge);
        foreach (var sample in DemoCase.Season) await AddAsync(ledger, clock, knowledge, weigher, sample, cancel);
    }

    private static async Task AddAsync(Ledger ledger, SeasonClock clock, KnowledgeBase knowledge, Weigher weigher, DemoCase sample, CancellationToken cancel)
    {
        var reading = CaseReader.Read(await File.ReadAllBytesAsync(Path.Combine(Cases, $"{sample.File}.json"), cancel), knowledge);
        if (reading.IsRefused) throw new InvalidDataException($"The demo's case {sample.File} does not fit the knowledge: {reading.Problems[0]}");
        clock.Moment = SeasonClock.Parse(sample.TakenIn);
        SealedText place = Sealed(sample.Sender, reading.Case.Place is { } exact ? CaseIntake.TextOf(exact) : sample.Place), says = Sealed(sample.Sender, $"{sample.Place}: {sample.Says}");
        var (takenIn, seen) = CaseIntake.Of(reading.Case, place.Seal());
        var taken = Kept(await ledger.TakeInAsync(new EntryDraft { Author = sample.By, Payload = takenIn with { Says = says.Seal() }, Texts = [place, says] }, seen, cancel));

        if (sample.With is { } with) await SayAsync(ledger, clock, taken.Sample, sample.By, new HandedOver(with), cancel);
        if (sample.Signed is { } signed) await SayAsync(ledger, clock, taken.Sample, "d-01", SignedOf(weigher, reading.Case, signed.Cause, signed.ProvenBy), cancel);
        if (sample.Closed is { } why) await SayAsync(ledger, clock, taken.Sample, "d-01", new Closed(why), cancel);
    }

    private static async Task SayAsync(Ledger ledger, SeasonClock clock, EntryId sample, string author, Payload payload, CancellationToken cancel)
    {
        clock.Moment += TimeSpan.FromMinutes(47);
        Kept(await ledger.AppendAsync(new EntryDraft { Sample = sample, Author = author, Payload = payload }, cancel));
    }

    private static DiagnosisSigned SignedOf(Weigher weigher, Case weighed, string cause, string provenBy)
    {
        var answer = weigher.Weigh(weighed);
        return new DiagnosisSigned { Case = 1, Primary = [cause], ProvenBy = provenBy, Engine = new EngineSaid(answer.Knowledge, answer.Standing.Word(), answer.Causes[0].Cause.Id) };
    }

    private static SealedText Sealed(string person, string text) => new(person, RandomNumberGenerator.GetBytes(SealedText.SaltLength), text);

    private static Entry Kept(Appended appended) => appended.Entry ?? throw new InvalidDataException($"The demo's entry was refused: {appended.Problems[0]}");
}
